#pragma once
// Why one machine does not reach another: one sentence that names what to change.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template node_pc{"node-pc", "the PC"};
inline constexpr Template node_translator{"node-translator", "the translator of {0}"};
inline constexpr Template node_outside{"node-outside", "the outside"};
inline constexpr Template node_everyone{"node-everyone", "every machine"};
inline constexpr Template node_nobody{"node-nobody", "nobody"};

inline constexpr Template reach_service{
    "reach-service", "\"{0}\" is no service; write ping, tcp, udp, tcp/443 or udp/53 (ports are 1 to 65535)"};

inline constexpr Template ask_address_on{"ask-address-on", "{0} on {1}"};
inline constexpr Template ask_no_card{
    "ask-no-card", "{0} has no card \"{1}\"; say its name, id, segment or number among the machine's cards"};
inline constexpr Template ask_no_address{"ask-no-address", "{0} has no address to ask for"};
inline constexpr Template ask_nobody_has{"ask-nobody-has", "nobody in this lab has {0}"};

// Beside what a machine uses.
inline constexpr Template can_title{"can-title", "Can reach"};
inline constexpr Template can_line{"can-line", "{0} · {1}"};
inline constexpr Template can_by{"can-by", "{0}"};
inline constexpr Template can_inside{"can-inside", "itself"};
inline constexpr Template can_nobody{"can-nobody", "nobody offers it"};
inline constexpr Template can_off{"can-off", "off"};
inline constexpr Template can_ask{"can-ask", "Show hop by hop"};

// One step of a way.
inline constexpr Template step_sends{"step-sends", "{0} sends by {1} on {2} to {3}"};
inline constexpr Template step_forwards{"step-forwards", "{0} forwards by {1} on {2} to {3}"};
inline constexpr Template step_sends_on{"step-sends-on", "{0} sends to {1}"};
inline constexpr Template step_forwards_on{"step-forwards-on", "{0} forwards to {1}"};
inline constexpr Template step_translates{"step-translates", "{0} puts its own address {1} in as the sender"};
inline constexpr Template step_translates_own{"step-translates-own",
                                              "{0} puts its own address in as the sender"};
inline constexpr Template step_restores{"step-restores", "{0} puts the inside address {1} back"};
inline constexpr Template step_redirects{"step-redirects", "{0} passes what comes to port {1} on to {2}"};
inline constexpr Template step_receives{"step-receives", "{0} receives it at {1}"};
inline constexpr Template step_back{"step-back", "and back:"};
inline constexpr Template step_receives_it{"step-receives-it", "{0} receives it"};
inline constexpr Template step_ends{"step-ends", "it ends here: {0}"};

// Where a way ends: what {0} does, {1} is the address.
inline constexpr Template end_off{"end-off", "{0} is off"};
inline constexpr Template end_no_source{"end-no-source", "{0} has no address"};
inline constexpr Template end_no_route{"end-no-route", "{0} has no route to {1}"};
inline constexpr Template end_refuses{"end-refuses", "{0} does not send to {1}"};
inline constexpr Template end_not_plugged{"end-not-plugged", "{0} sends by a card that is not plugged in"};
inline constexpr Template end_nobody{"end-nobody", "{0} looks for {1} and nobody answers"};
inline constexpr Template end_unheard{"end-unheard",
                                      "{0} looks for {1}, and the switches between them are not joined"};
inline constexpr Template end_ignores{"end-ignores", "{0} looks for {1}, which does not answer"};
inline constexpr Template end_other_macs{"end-other-macs",
                                         "{0} sends to {1}, but only a hypervisor's own MAC passes"};
inline constexpr Template end_separated{"end-separated", "{0} sends to {1}, but both are on separated ports"};
inline constexpr Template end_same_mac{"end-same-mac", "{0} sends to {1}, which has the same MAC"};
inline constexpr Template end_too_big{
    "end-too-big", "{0} sends to {1}, and the packet is too long for a card or switch between them"};
inline constexpr Template end_must_fragment{"end-must-fragment",
                                            "{0} has a packet for {1} that is too long for the next card"};
inline constexpr Template end_no_forwarding{"end-no-forwarding",
                                            "{0} gets a packet for {1} and does not forward"};
inline constexpr Template end_reverse_path{"end-reverse-path",
                                           "{0} drops what comes from {1}: its way back uses another card"};
inline constexpr Template end_own_source{"end-own-source", "{0} drops what comes from {1}, its own address"};
inline constexpr Template end_hop_limit{"end-hop-limit",
                                        "{0} drops a packet for {1} that has run in a circle"};
inline constexpr Template end_link_scope{"end-link-scope", "{0} does not forward the link-local address {1}"};
inline constexpr Template end_someone_else{"end-someone-else", "{0} has {1} too and takes the packet"};
inline constexpr Template end_other_source{"end-other-source",
                                           "{0} waits for another address to answer than {1}"};
inline constexpr Template end_not_offered{"end-not-offered", "{0} offers nothing on that port"};

inline constexpr Template what_if_title{"what-if-title", "What fails without {0}"};
inline constexpr Template what_if_title_in{"what-if-title-in", "What fails without {0} in {1}"};
inline constexpr Template fails_off{"fails-off", "is off"};
inline constexpr Template fails_promise{"fails-promise", "promise"};
inline constexpr Template fails_never{"fails-never", "never {0}"};
inline constexpr Template fails_must{"fails-must", "must have"};
inline constexpr Template fails_need{"fails-need", "wants"};
inline constexpr Template fails_pair{"fails-pair", "reach"};

inline constexpr Template reach_ok{"reach-ok", "{0} reaches {1} at {2}, if no firewall stops it"};
inline constexpr Template reach_ok_silent{
    "reach-ok-silent",
    "{0} reaches {1} at {2}, but such a system does not answer ping as it comes: try a service of it"};
inline constexpr Template reach_outside{"reach-outside", "{0} reaches {1}, if no firewall stops it"};
inline constexpr Template reach_forwarded{"reach-forwarded",
                                          "{0} reaches {1} by port {2} of the PC, if no firewall stops it"};
inline constexpr Template reach_forwarded_twice{
    "reach-forwarded-twice",
    "{0} reaches {1} by port {2} of the PC, if {3} passes that port on to the PC and no firewall stops it"};
inline constexpr Template reach_unsure{
    "reach-unsure", "Several machines have {0}: chance decides who answers {1}. Give each its own address."};
inline constexpr Template reach_lease{
    "reach-lease",
    "Several DHCP servers answer, and with the addresses of one of them {0} does not reach {1}. Keep one."};
inline constexpr Template reach_off{"reach-off", "{0} is off. Switch it on."};
inline constexpr Template reach_no_address{"reach-no-address",
                                           "{0} has no address there. Give one of its cards an address."};
inline constexpr Template reach_unaddressed{
    "reach-unaddressed", "{0} has no address on {1}, where {2} is. Give its card there one."};
inline constexpr Template reach_no_card{"reach-no-card",
                                        "{0} has no card that is plugged in. Connect it to a segment."};
inline constexpr Template reach_no_lease{"reach-no-lease",
                                         "{0} asks for an address by DHCP and nobody gives it one. Give it a "
                                         "fixed address, or let a server answer on {1}."};
inline constexpr Template reach_lan_unknown{
    "reach-lan-unknown", "{0} asks for an address by DHCP on {1}, whose addresses the plan does not know. "
                         "Enter the prefix and the gateway of {1}."};
inline constexpr Template reach_range_used{
    "reach-range-used", "{0} asks for an address by DHCP, but {1} has none left on {2}. Give {0} a fixed "
                        "address, or lengthen the range of {1}."};
inline constexpr Template reach_server_off{
    "reach-server-off",
    "{0} asks for an address by DHCP, but {1}, which gives them out on {2}, is off. Switch {1} on."};
inline constexpr Template reach_misplaced{
    "reach-misplaced", "{0} has {1} on {2}, which is outside the prefix {3} of {2}. Give {0} an address of "
                       "that prefix."};
inline constexpr Template reach_behind{"reach-behind",
                                       "{0} is behind the translator of {1}, which lets nobody in. Let {0} "
                                       "begin the conversation, or forward a port to it."};
inline constexpr Template reach_both_behind{
    "reach-both-behind", "{0} and {1} are behind two translators, and neither lets anybody in. Put both on "
                         "one segment, or forward a port to {1}."};
inline constexpr Template reach_no_gateway{
    "reach-no-gateway",
    "The plan names no gateway of {0}, so {1} has no way outside. Enter the gateway of {0}."};
inline constexpr Template reach_no_exit{
    "reach-no-exit", "Nothing in the plan leads outside, so {0} does not get there. Add a NAT segment, or a "
                     "router with a card on one."};
inline constexpr Template reach_no_next_hop{
    "reach-no-next-hop",
    "{0} has no route to {1}, and nobody else on {2} passes packets on. Put a router there."};
inline constexpr Template reach_no_route{"reach-no-route",
                                         "{0} has no route to {1}. Give it a default route."};
inline constexpr Template reach_no_route_back{
    "reach-no-route-back", "{0} is asked, but has no route back to {1}. Give it a default route."};
inline constexpr Template reach_refused{
    "reach-refused",
    "{0} does not send to {1}: it is a broadcast, multicast or loopback address. Use another."};
inline constexpr Template reach_refused_of{
    "reach-refused-of",
    "{0} does not send to {1}: it is a broadcast, multicast or loopback address. Give {2} another."};
inline constexpr Template reach_not_plugged{
    "reach-not-plugged", "{0} sends by {1}, which is not plugged in. Plug it into a segment."};
inline constexpr Template reach_disconnected{
    "reach-disconnected", "{0} sends by {1}, which is not connected to {2}. Connect it again."};
inline constexpr Template reach_holder_out{"reach-holder-out",
                                           "{0} has {1} on {2}, which is not connected. Connect it again."};
inline constexpr Template reach_cut{
    "reach-cut", "{0} is not connected to {1}, so packets go another way and end at {2}. Connect it again."};
inline constexpr Template reach_nobody{
    "reach-nobody",
    "{0} looks for {1} on {2}, and nobody there has it. Correct the address, or the route that leads to it."};
inline constexpr Template reach_no_way_in{"reach-no-way-in",
                                          "{0} does not know {1}: the lab's addresses count only inside it. "
                                          "Let the inside begin the conversation."};
inline constexpr Template reach_no_socket{
    "reach-no-socket",
    "{0} has no socket on {1}, so packets for {2} leave by the LAN, where nobody knows that "
    "address. Give {0} a socket on {1}."};
inline constexpr Template reach_sent_out{
    "reach-sent-out",
    "{2} sends packets for {1} out of the lab: {0} does not know that address. Correct the routes of {2}."};
inline constexpr Template reach_answer_lost{
    "reach-answer-lost",
    "Answers to {1} end at {0}, which does not know that address. Let the router between "
    "put its own address in (\"translates\" of its outer card)."};
inline constexpr Template reach_no_lan{
    "reach-no-lan", "The plan has no physical LAN, so nothing leads outside. Add the LAN that the PC is on."};
inline constexpr Template reach_holder_off{"reach-holder-off", "{0} needs {1}, which is off. Switch {1} on."};
inline constexpr Template reach_elsewhere{"reach-elsewhere",
                                          "{0} takes {1} for a neighbour on {2}, but {3} has it on {4}. "
                                          "Correct the prefix length of {0}, or put both on one segment."};
inline constexpr Template reach_island{
    "reach-island", "{0} is in {1}, where no card carries {2}. Let a card of {1} carry {2}."};
inline constexpr Template reach_unheard{"reach-unheard",
                                        "{0} and {1} are on {2}, but not all switches between them are "
                                        "joined. Let the cards of every hypervisor between them carry {2}."};
inline constexpr Template reach_ignores{
    "reach-ignores", "Who has {1} does not answer {0}: it has no way back by that card, or the same address "
                     "as {0}. Correct its prefix length or its routes."};
inline constexpr Template reach_uplink_cut{
    "reach-uplink-cut", "{0} carries {1} out of {2}, but is not connected. Connect it again."};
inline constexpr Template reach_other_macs{
    "reach-other-macs",
    "{0} sends only its own MAC, so nothing of {1} gets out of {2}. Let {0} pass other MACs."};
inline constexpr Template reach_segment_macs{
    "reach-segment-macs", "{0} does not pass the MACs of guests inside {1}, so nothing of {2} gets through. "
                          "Let {0} pass other MACs."};
inline constexpr Template reach_wireless{
    "reach-wireless", "{0} is wireless and takes only the MAC of {1} itself, so nothing of {2}, which is "
                      "inside it, gets through. Put {2} behind a router in {1}, or use a cable."};
inline constexpr Template reach_separated{
    "reach-separated", "{0} and {1} are on separated ports. Take the separation from one of them."};
inline constexpr Template reach_same_mac{
    "reach-same-mac", "{0} has the same MAC as its neighbour {1}. Give one of them another."};
inline constexpr Template reach_too_big{"reach-too-big",
                                        "Long packets from {0} to {1} vanish: a card or switch between them "
                                        "takes less. Give all cards on the way the same MTU."};
inline constexpr Template reach_must_fragment{"reach-must-fragment",
                                              "{0} cannot pass on packets of full size: the next card takes "
                                              "less. Give all cards on the way the same MTU."};
inline constexpr Template reach_no_forwarding{
    "reach-no-forwarding",
    "{0} gets packets for {1}, but does not forward. Let {0} forward, or use another gateway."};
inline constexpr Template reach_reverse_path{"reach-reverse-path",
                                             "{0} drops what comes from {1}: its way back uses another card. "
                                             "Set its reverse-path filter to loose, or correct its routes."};
inline constexpr Template reach_own_source{
    "reach-own-source",
    "{0} drops a packet that comes from {1}, its own address. Give one of the two another address."};
inline constexpr Template reach_hop_limit{"reach-hop-limit",
                                          "Packets run in a circle at {0}. Correct its route to {1}."};
inline constexpr Template reach_link_scope{
    "reach-link-scope", "{0} does not forward link-local addresses such as {1}. Use another address."};
inline constexpr Template reach_someone_else{
    "reach-someone-else", "{0} has {1} too and takes the packets. Give it another address."};
inline constexpr Template reach_other_source{
    "reach-other-source",
    "The answer takes another way than the question and comes to {0} from {1}, where nobody was asked. Give "
    "both ways the same router."};
inline constexpr Template reach_not_offered{
    "reach-not-offered", "Packets reach {0}, but it offers nothing on that port. Add the service to {0}."};
inline constexpr Template reach_unknown{"reach-unknown", "{0} is not part of the network"};

} // namespace snug::text
