#pragma once
// Sentences of the findings about disks and shares.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template disk_over{
    "disk-over", "{0} is over by {1}: what lies on it is expected to take {2}, and there is room for {3}"};
inline constexpr Template disk_over_in{
    "disk-over-in",
    "{0} is over by {1} in \"{4}\": what lies on it is expected to take {2}, and there is room for {3}"};
inline constexpr Template disk_over_why{
    "disk-over-why",
    "Guests stop or lose data when it is full: make disks smaller, move some, or free space."};
inline constexpr Template disk_worst{
    "disk-worst", "{0} could become full: what lies on it may grow to {1}, and there is room for {2}"};
inline constexpr Template disk_worst_in{
    "disk-worst-in",
    "{0} could become full in \"{3}\": what lies on it may grow to {1}, and there is room for {2}"};
inline constexpr Template disk_worst_why{
    "disk-worst-why",
    "Thin disks grow as they are filled, at the latest to their size: watch its free space."};
inline constexpr Template no_volume{"no-volume",
                                    "no volume of {0} is entered: room for {1} disks is not checked",
                                    "no volume of {0} is entered: room for {1} disk is not checked"};
inline constexpr Template no_volume_why{
    "no-volume-why", "Enter the volume that the guests' disks will lie on, with its size and free space."};
inline constexpr Template disk_no_store{"disk-no-store", "{0} lies on no store"};
inline constexpr Template disk_no_store_why{
    "disk-no-store-why", "It counts nowhere: say on which volume, share or hypervisor's disk it lies."};
inline constexpr Template disk_out_of_reach{"disk-out-of-reach", "{0} lies on {1}, where {2} cannot use it"};
inline constexpr Template disk_out_of_reach_inner{
    "disk-out-of-reach-inner",
    "an inner guest's disk lies on a disk of its own hypervisor, {0}, or on a share that {0} uses"};
inline constexpr Template disk_out_of_reach_pc{
    "disk-out-of-reach-pc", "a disk of a guest on the PC lies on a volume of the PC, or on a share"};
inline constexpr Template cow_no_base{"cow-no-base", "{0} is copy-on-write and has no base"};
inline constexpr Template cow_no_base_why{
    "cow-no-base-why", "It holds only the difference to its base and is empty without one."};
inline constexpr Template cow_base_elsewhere{"cow-base-elsewhere", "{0} lies on {1}, its base {2} on {3}"};
inline constexpr Template cow_base_elsewhere_why{
    "cow-base-elsewhere-why", "A disk and its base must stay together, or it does not open after a move."};
inline constexpr Template cow_smaller{"cow-smaller", "{0} has {1}, its base {2} has {3}"};
inline constexpr Template cow_smaller_why{"cow-smaller-why",
                                          "A copy-on-write disk is at least as large as its base."};
inline constexpr Template base_unused{"base-unused", "{0} has a base, {1}, but is not copy-on-write"};
inline constexpr Template base_unused_why{"base-unused-why", "The base has no effect on it."};
inline constexpr Template slow_store{"slow-store", "{0} lies on {1}, which is slow for a {2}"};
inline constexpr Template slow_store_why{
    "slow-store-why", "Many small reads and writes at once: starting takes very long; use flash."};
inline constexpr Template store_loop{"store-loop", "{0} lie on each other in a circle"};
inline constexpr Template store_loop_self{"store-loop-self", "{0} lies on itself"};
inline constexpr Template store_loop_why{"store-loop-why",
                                         "None of them can start first: put one of them on a volume."};
inline constexpr Template fill_below{
    "fill-below-content", "{0} is expected to be filled by {1}, but what lies on it is expected to take {2}"};
inline constexpr Template fill_below_why{"fill-below-content-why",
                                         "The store below it looks emptier than it will be."};
inline constexpr Template volume_free{"volume-free", "{0} has {1} free of only {2}"};
inline constexpr Template volume_free_why{"volume-free-why", "Its budget would be too large."};

inline constexpr Template share_over{"share-over", "{0} offer {1} together, but {2} holds {3}"};
inline constexpr Template share_over_one{"share-over-one", "{0} offers {1}, but {2} holds {3}"};
inline constexpr Template share_over_why{"share-over-why",
                                         "The share fills before it is full, and its clients' guests stop."};
inline constexpr Template share_no_disk{"share-no-disk", "share {0} of {1} lies on no disk"};
inline constexpr Template share_no_disk_why{
    "share-no-disk-why", "Its room counts nowhere: say which disk of its machine holds it."};
inline constexpr Template share_disk_elsewhere{"share-disk-elsewhere",
                                               "share {0} of {1} lies on {2}, a disk of another machine"};
inline constexpr Template share_disk_elsewhere_why{"share-disk-elsewhere-why",
                                                   "A machine offers what lies on its own disks."};
inline constexpr Template share_card_elsewhere{
    "share-card-elsewhere", "share {0} of {1} is carried by {2}, a card of another machine"};
inline constexpr Template share_card_elsewhere_why{"share-card-elsewhere-why",
                                                   "Clients reach a share by a card of its own machine."};
inline constexpr Template share_client{"share-client",
                                       "{0} has a disk on share {1}, but {2} is not among its clients"};
inline constexpr Template share_client_why{"share-client-why",
                                           "The share refuses it, and {0} does not start."};
inline constexpr Template share_target{"share-target", "share {0} of {1} has no target or path"};
inline constexpr Template share_target_why{
    "share-target-why", "It must be typed on both sides: enter the target name (iSCSI) or the path."};
inline constexpr Template initiator_missing{"initiator-missing",
                                            "{0} uses the iSCSI share {1} and has no initiator name"};
inline constexpr Template initiator_missing_why{
    "initiator-missing-why",
    "The share lets in initiators by name: enter the one that {0} will have, like iqn.2027-01.test.lab:{0}."};
inline constexpr Template initiator_twice{"initiator-twice", "{0} have the same initiator name, {1}"};
inline constexpr Template initiator_twice_why{
    "initiator-twice-why", "The share takes them for one: connections break, and disks may be damaged."};
inline constexpr Template initiator_form{"initiator-form",
                                         "the initiator name of {0}, \"{1}\", is ill formed"};
inline constexpr Template initiator_form_why{
    "initiator-form-why", "It is iqn., a year and month, a domain name turned around and a word of yours: "
                          "iqn.2027-01.test.lab:deck-a; or eui. or naa. with hexadecimal digits."};
inline constexpr Template unit_twice{"unit-twice", "{0} have the same unit number {1} on target {2}"};
inline constexpr Template unit_twice_why{"unit-twice-why", "Clients would see only one of them."};
inline constexpr Template store_off{
    "store-off", "{0} is on in \"{3}\", but its disk lies on share {1} of {2}, which is off"};
inline constexpr Template store_off_why{"store-off-why", "It cannot start before its disk answers."};

inline constexpr Template store_unreachable{"store-unreachable",
                                            "{0} does not reach share {1} of {2}, where disks of {3} lie"};
inline constexpr Template store_unreachable_own{
    "store-unreachable-own", "{0} does not reach share {1} of {2}, where its own disks lie"};
inline constexpr Template store_chance{
    "store-chance", "{0} reaches share {1} of {2}, where disks of {3} lie, only by chance"};
inline constexpr Template store_chance_own{
    "store-chance-own", "{0} reaches share {1} of {2}, where its own disks lie, only by chance"};

inline constexpr Template fix_store{"fix-store", "Put {0} on {1}"};
inline constexpr Template fix_thin{"fix-thin", "Make {0} a thin disk"};
inline constexpr Template fix_size{"fix-size", "Give {0} {1}"};
inline constexpr Template fix_base{"fix-base", "Forget the base of {0}"};
inline constexpr Template fix_fill{"fix-fill", "Expect {0} to be filled by {1}"};
inline constexpr Template fix_free{"fix-free", "Enter {0} free"};
inline constexpr Template fix_share_disk{"fix-share-disk", "Put the share on {0}"};
inline constexpr Template fix_card{"fix-card", "Forget the card"};
inline constexpr Template fix_client{"fix-client", "Allow {0}"};
inline constexpr Template fix_initiator{"fix-initiator", "Name them apart"};
inline constexpr Template fix_unit{"fix-unit", "Number them apart"};

} // namespace snug::text
