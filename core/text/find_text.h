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
inline constexpr Template find_service{"find-service", "service of {0}"};
inline constexpr Template find_offer{"find-offer", "{0} by {1}"};
inline constexpr Template find_dhcp{"find-dhcp", "DHCP"};
inline constexpr Template find_dhcp_on{"find-dhcp-on", "DHCP on {0}"};
inline constexpr Template find_relay{"find-relay", "DHCP relay"};
inline constexpr Template find_relay_on{"find-relay-on", "DHCP relay on {0}"};
inline constexpr Template find_translator{"find-translator", "service of the translator"};
inline constexpr Template find_asks{"find-asks", "{0} asks DHCP on {1}"};
inline constexpr Template find_card{"find-card", "card"};
inline constexpr Template find_word{"find-word", "what the word means"};
inline constexpr Template find_prompt{"find-prompt", "Find a machine, an address or an action"};
inline constexpr Template find_open{"find-open", "&Find…"};
inline constexpr Template find_box{"find-box", "Find a machine, an address or an action"};
inline constexpr Template find_list{"find-list", "What was found"};
inline constexpr Template find_nothing{"find-nothing", "Nothing is called “{0}”"};

} // namespace snug::text
