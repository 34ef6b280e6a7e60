#pragma once
// Power marks on the picture: what switching one machine brings along.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template power_on{"power-on", "goes on in {0}"};
inline constexpr Template power_off{"power-off", "goes off in {0}"};
// {1}: those that go with {0}.
inline constexpr Template power_carriers{"power-carriers", "with it {1}: {0} runs inside"};
inline constexpr Template power_guests{"power-guests", "with it {1}: inside {0}"};
inline constexpr Template power_on_told{"power-on-told",
                                        "{1} went on as well in {2}, because {0} runs inside."};
inline constexpr Template power_off_told{"power-off-told",
                                         "{1} went off as well in {2}: inside {0}, which is off now."};
inline constexpr Template power_choose{
    "power-choose", "everything is on here: choose an exercise first, such as {0}, then switch in it"};
inline constexpr Template power_none{
    "power-none", "everything is on, as the plan has no exercise: add one, then switch in it"};
inline constexpr Template power_help_on{"power-help-on", "Click: {0} goes on in {1}"};
inline constexpr Template power_help_off{"power-help-off", "Click: {0} goes off in {1}"};
inline constexpr Template access_power{"access-power", "Switch on or off"};
inline constexpr Template access_power_help{"access-power-help",
                                            "In the exercise that is shown, with what that needs"};

} // namespace snug::text
