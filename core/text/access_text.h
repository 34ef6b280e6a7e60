#pragma once
// What a screen reader says of the picture.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template access_canvas{"access-canvas", "Picture of the lab"};
inline constexpr Template access_menus{"access-menus", "Menus"};
inline constexpr Template access_sheet{"access-sheet", "Findings, addresses and reach"};
inline constexpr Template access_pc{"access-pc", "{0}, the PC"};
inline constexpr Template access_machine{"access-machine", "{0}, machine"};
inline constexpr Template access_hypervisor{"access-hypervisor", "{0}, hypervisor"};
inline constexpr Template access_segment{"access-segment", "{0}, segment"};
inline constexpr Template access_lan{"access-lan", "{0}, network outside"};
inline constexpr Template access_on{"access-on", "on {0}"};
inline constexpr Template access_carries{"access-carries", "carries {0}"};
inline constexpr Template access_not_plugged{"access-not-plugged", "not plugged"};
inline constexpr Template access_disconnected{"access-disconnected", "disconnected"};
inline constexpr Template access_edit{"access-edit", "Edit"};
inline constexpr Template access_edit_help{"access-edit-help",
                                           "Types its name, of a card its address, in place"};
inline constexpr Template act_next_region{"act-next-region", "Ne&xt region"};
inline constexpr Template act_previous_region{"act-previous-region", "Pre&vious region"};

} // namespace snug::text
