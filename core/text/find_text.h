#pragma once
// Words of the box that finds machines, addresses and actions.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template find_machine{"find-machine", "{0} on {1}"};
inline constexpr Template find_on{"find-on", "machine on {0}"};
inline constexpr Template find_segment{"find-segment", "segment"};
inline constexpr Template find_segment_prefix{"find-segment-prefix", "segment {0}"};
inline constexpr Template find_address{"find-address", "address of {0}"};
inline constexpr Template find_address_on{"find-address-on", "address of {0} on {1}"};
inline constexpr Template find_exercise{"find-exercise", "exercise"};
inline constexpr Template find_store{"find-store", "storage"};
inline constexpr Template find_lan{"find-lan", "physical LAN"};
inline constexpr Template find_finding{"find-finding", "finding"};
inline constexpr Template find_prompt{"find-prompt", "Find a machine, an address or an action"};
inline constexpr Template find_open{"find-open", "&Find…"};
inline constexpr Template find_box{"find-box", "Find a machine, an address or an action"};
inline constexpr Template find_list{"find-list", "What was found"};
inline constexpr Template find_nothing{"find-nothing", "Nothing is called “{0}”"};

} // namespace snug::text
