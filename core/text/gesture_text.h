#pragma once
// What moving, adding and plugging is called, and why it is refused.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template gesture_move{"gesture-move", "Move {0} to {1}"};
inline constexpr Template gesture_order{"gesture-order", "Move {0}"};
inline constexpr Template gesture_hold{"gesture-hold", "Keep {0} in place"};
inline constexpr Template gesture_let_go{"gesture-let-go", "No longer keep {0} in place"};
inline constexpr Template gesture_machines{"gesture-machines", "{0} machines", "{0} machine"};
inline constexpr Template gesture_inside_itself{"gesture-inside-itself", "{0} cannot run inside itself"};
inline constexpr Template gesture_no_hypervisor{
    "gesture-no-hypervisor", "{0} is no hypervisor: give it such a role first, then it takes guests"};
inline constexpr Template gesture_on{"gesture-on", "Switch {0} on in {1}"};
inline constexpr Template gesture_off{"gesture-off", "Switch {0} off in {1}"};
inline constexpr Template gesture_no_exercise{"gesture-no-exercise",
                                              "choose an exercise first: without one everything is on"};
inline constexpr Template gesture_add{"gesture-add", "Add {0}"};
inline constexpr Template gesture_count{"gesture-count", "{0} × {1}"};
inline constexpr Template gesture_count_help{"gesture-count-help", "type a number to place several"};
inline constexpr Template gesture_keys_help{"gesture-keys-help",
                                            "arrow keys aim, Enter puts it down, Esc leaves it"};
inline constexpr Template gesture_machine_place{
    "gesture-machine-place", "a machine stands inside the PC's frame, in a hypervisor or on a rail"};
inline constexpr Template gesture_machine_inside{"gesture-machine-inside",
                                                 "machines stay inside the PC's frame"};
inline constexpr Template gesture_segment_place{"gesture-segment-place",
                                                "a segment begins inside the PC's frame"};
inline constexpr Template gesture_duplicate{"gesture-duplicate", "Duplicate {0}"};
inline constexpr Template gesture_connect{"gesture-connect", "Connect {0} to {1}"};
inline constexpr Template gesture_no_more{"gesture-no-more",
                                          "{0} of {1}: nothing is left that could be added"};
inline constexpr Template gesture_add_disk{"gesture-add-disk", "Add a disk to {0}"};
inline constexpr Template gesture_add_share{"gesture-add-share", "Add a share to {0}"};
inline constexpr Template gesture_share_name{"gesture-share-name", "share {0}"};
inline constexpr Template gesture_add_card{"gesture-add-card", "Add a card to {0}"};
inline constexpr Template gesture_plug{"gesture-plug", "Plug {0} into {1}"};
inline constexpr Template gesture_plugged{"gesture-plugged", "{0} is plugged into {1} already"};
inline constexpr Template gesture_trunk{"gesture-trunk",
                                        "{0} is a trunk of several segments: change them in its rows"};
inline constexpr Template gesture_socket_in{"gesture-socket-in", "Give the PC a socket on {0}"};
inline constexpr Template gesture_socket_out{"gesture-socket-out", "Take the PC's socket off {0}"};
inline constexpr Template gesture_socket_move{"gesture-socket-move", "Move the PC's socket to {0}"};
inline constexpr Template gesture_isolate{"gesture-isolate", "Keep {0} inside the PC"};
inline constexpr Template gesture_bridge{"gesture-bridge", "Join {0} and {1}"};
inline constexpr Template gesture_translate{"gesture-translate", "Lead {0} out by translation (NAT)"};
inline constexpr Template gesture_no_lan{
    "gesture-no-lan", "the plan has no physical LAN that {0} could be joined with: add the PC's LAN first"};
inline constexpr Template gesture_isolated_is{"gesture-isolated-is", "nothing leads out of it"};
inline constexpr Template gesture_bridged_is{"gesture-bridged-is",
                                             "one network with {0}, a real one: ask whoever owns it first"};
inline constexpr Template gesture_translated_is{"gesture-translated-is",
                                                "its machines get out, nobody gets in"};
inline constexpr Template gesture_end{"gesture-end", "The end of {0}"};
inline constexpr Template gesture_gets{"gesture-gets", "gets {0}"};
inline constexpr Template gesture_pull_card{"gesture-pull-card", "A card of {0}"};
inline constexpr Template gesture_pull_card_help{
    "gesture-pull-card-help", "Pull to a rail, or click here and then the rail: {0} gets a card there"};
inline constexpr Template gesture_pull_socket{"gesture-pull-socket", "Socket of {0}"};
inline constexpr Template gesture_pull_socket_help{
    "gesture-pull-socket-help",
    "Pull to a rail, or click here and then the rail: {0} gets an address of its own there"};
inline constexpr Template gesture_rename{"gesture-rename", "Rename {0} to {1}"};
inline constexpr Template gesture_address{"gesture-address", "Set the address of {0} to {1}"};
inline constexpr Template gesture_address_off{"gesture-address-off", "Take the address off {0}"};
inline constexpr Template gesture_addresses{"gesture-addresses", "Set {0} addresses", "Set {0} address"};
inline constexpr Template gesture_no_name{"gesture-no-name", "a name has at least one letter"};
inline constexpr Template gesture_nothing{"gesture-nothing", "nothing is chosen"};
inline constexpr Template gesture_then_free{"gesture-then-free", "{0} then has {1} free"};
inline constexpr Template gesture_then_little{"gesture-then-little",
                                              "{0} then has {1} left; {2} should stay free"};
inline constexpr Template gesture_then_room{"gesture-then-room", "{0} then has room for {1}"};
inline constexpr Template gesture_then_no_room{"gesture-then-no-room", "{0} then has no room for a guest"};
inline constexpr Template gesture_then_over{"gesture-then-over", "{0} is then over by {1}"};
inline constexpr Template gesture_comes{"gesture-comes", "new: {0}"};
inline constexpr Template gesture_goes{"gesture-goes", "no longer: {0}"};
inline constexpr Template gesture_comes_more{"gesture-comes-more", "new: {0} more findings",
                                             "new: {0} more finding"};
inline constexpr Template gesture_goes_more{"gesture-goes-more", "no longer: {0} more findings",
                                            "no longer: {0} more finding"};
inline constexpr Template gesture_accept{"gesture-accept", "Accept a finding"};
inline constexpr Template gesture_no_reason{"gesture-no-reason", "say in a few words why it is all right"};

inline constexpr Template gesture_promise{"gesture-promise", "Promise that {0}"};
inline constexpr Template gesture_promise_gone{"gesture-promise-gone", "Take back the promise that {0}"};
inline constexpr Template gesture_promise_changed{"gesture-promise-changed", "Change the promise that {0}"};
inline constexpr Template gesture_promises{"gesture-promises", "{0} promises", "{0} promise"};
inline constexpr Template gesture_promised{"gesture-promised", "That is promised already."};
inline constexpr Template gesture_no_subject{
    "gesture-no-subject",
    "A promise speaks of machines, segments and the outside; not of the PC or a router."};
inline constexpr Template gesture_one_subject{"gesture-one-subject", "A promise needs two different ends."};
inline constexpr Template gesture_small_only{
    "gesture-small-only", "A promise is about packets of usual size: ask without “full-size packets” first."};

} // namespace snug::text
