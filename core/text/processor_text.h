#pragma once
// Sentences of the findings about processors and hardware virtualization.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template processors_carrier{"processors-carrier", "{1} has {0} processors; {2} has only {3}",
                                             "{1} has {0} processor; {2} has only {3}"};
inline constexpr Template processors_carrier_pc{"processors-carrier-pc",
                                                "{1} has {0} processors; {2} has only {3} threads",
                                                "{1} has {0} processor; {2} has only {3} threads"};
inline constexpr Template processors_carrier_why{
    "processors-carrier-why", "It is refused, or its processors wait for each other all the time."};
inline constexpr Template processors_ratio{
    "processors-ratio", "{0}: {1} virtual processors run on {2} cores in \"{5}\": {3} to 1, above {4}"};
inline constexpr Template processors_ratio_all{
    "processors-ratio-all",
    "{0}: {1} virtual processors run on {2} cores with everything on: {3} to 1, above {4}"};
inline constexpr Template processors_ratio_why{
    "processors-ratio-why", "Guests wait for a core, and times drift; a second thread counts as a part of a "
                            "core, an efficiency core as well."};
inline constexpr Template processors_ratio_inner{"processors-ratio-inner",
                                                 "{0}: {1} virtual processors run on its {2} in \"{6}\": {3} "
                                                 "to 1, above {4}; with what is below, {5} to 1"};
inline constexpr Template processors_ratio_inner_all{
    "processors-ratio-inner-all", "{0}: {1} virtual processors run on its {2} with everything on: {3} to 1, "
                                  "above {4}; with what is below, {5} to 1"};
inline constexpr Template processors_ratio_inner_why{
    "processors-ratio-inner-why", "Inner guests wait twice: for a processor of {0}, and {0} for a core."};
inline constexpr Template hypervisor_one_processor{"hypervisor-one-processor", "{0} has one processor"};
inline constexpr Template hypervisor_one_processor_why{
    "hypervisor-one-processor-why", "A hypervisor's installer wants two, and its guests would stop it."};
inline constexpr Template efficiency_cores{"efficiency-cores",
                                           "{0} has {1} efficiency cores of only {2} cores",
                                           "{0} has {1} efficiency core of only {2} cores"};
inline constexpr Template efficiency_cores_why{"efficiency-cores-why",
                                               "Efficiency cores are a part of the cores."};
inline constexpr Template threads_cores{"threads-cores", "{0} has {1} threads on {2} cores",
                                        "{0} has {1} thread on {2} cores"};
inline constexpr Template threads_cores_why{"threads-cores-why", "Every core has at least one thread."};

inline constexpr Template virtualization_off{"virtualization-off",
                                             "hardware virtualization of {0} is switched off"};
inline constexpr Template virtualization_off_why{
    "virtualization-off-why",
    "No 64-bit guest starts: switch it on in the firmware, under processor features."};
inline constexpr Template virtualization_unknown{
    "virtualization-unknown", "it is not known whether hardware virtualization of {0} is switched on"};
inline constexpr Template virtualization_unknown_why{
    "virtualization-unknown-why",
    "Look in the firmware under processor features, or run \"snuglab-cli pc\" on "
    "that PC, and enter what you find."};
inline constexpr Template virtualization_occupied{
    "virtualization-occupied", "the own system of {0} uses hardware virtualization itself"};
inline constexpr Template virtualization_occupied_why{
    "virtualization-occupied-why",
    "Guests may be slow or refused: a security feature that isolates parts of "
    "the system runs a hypervisor; switch it off only if your rules allow it."};
inline constexpr Template virtualization_occupied_nested_why{
    "virtualization-occupied-nested-why",
    "Nested hypervisors do not start beside it: a security feature that isolates parts of the system runs a "
    "hypervisor; switch it off only if your rules allow it."};
inline constexpr Template occupied_unknown{
    "occupied-unknown", "it is not known whether the own system of {0} uses hardware virtualization itself"};
inline constexpr Template occupied_unknown_why{
    "occupied-unknown-why", "Nested hypervisors may not start beside it: look in the system's summary for a "
                            "hypervisor that was detected or a security feature based on virtualization."};
inline constexpr Template nested_off{"nested-off", "nested virtualization of {0} is switched off"};
inline constexpr Template nested_off_why{
    "nested-off-why", "No hypervisor runs as a guest: switch it on in the virtualization program or in the "
                      "settings of its kernel module."};
inline constexpr Template nested_unknown{"nested-unknown",
                                         "it is not known whether {0} can run hypervisors as guests"};
inline constexpr Template nested_unknown_why{
    "nested-unknown-why",
    "Look for nested virtualization in the virtualization program, or run \"snuglab-cli "
    "pc\" on that PC."};
inline constexpr Template second_level_off{"second-level-off", "{0} has no second-level address translation"};
inline constexpr Template second_level_off_why{
    "second-level-off-why",
    "Nested hypervisors refuse to run or crawl without it; only another processor helps."};
inline constexpr Template second_level_unknown{
    "second-level-unknown", "it is not known whether {0} has second-level address translation"};
inline constexpr Template second_level_unknown_why{
    "second-level-unknown-why", "Nested hypervisors need it: look at the processor's data sheet, or run "
                                "\"snuglab-cli pc\" on that PC."};
inline constexpr Template not_exposed{
    "not-exposed", "{0} is a hypervisor, but hardware virtualization is not passed on to it"};
inline constexpr Template not_exposed_why{
    "not-exposed-why", "Its guests will not start: it is a setting of this guest in what carries it."};
inline constexpr Template pc_32_bit{"pc-32-bit", "{0} is no 64-bit PC, and {1} guests are 64-bit",
                                    "{0} is no 64-bit PC, and {1} guest is 64-bit"};
inline constexpr Template pc_32_bit_why{"pc-32-bit-why", "64-bit guests do not start on it."};
inline constexpr Template pc_bits_unknown{"pc-bits-unknown", "it is not known whether {0} is a 64-bit PC"};
inline constexpr Template pc_bits_unknown_why{
    "pc-bits-unknown-why",
    "64-bit guests need one: run \"snuglab-cli pc\" on it, or look in its system summary."};
inline constexpr Template nesting_deep{"nesting-deep", "{0} is hypervisor number {1} inside each other"};
inline constexpr Template nesting_deep_why{
    "nesting-deep-why",
    "More than {0} deep is slow and rarely supported: every level slows what is inside it."};
inline constexpr Template carrier_role{"carrier-role", "{1} carries {0} guests, but a {2} is no hypervisor",
                                       "{1} carries {0} guest, but a {2} is no hypervisor"};
inline constexpr Template carrier_role_why{
    "carrier-role-why", "Nothing in it can run a guest: move the guests, or give it a hypervisor's role."};

inline constexpr Template fix_processors{"fix-processors", "Give {1} {0} processors",
                                         "Give {1} {0} processor"};
inline constexpr Template fix_threads{"fix-threads", "Enter {0} threads", "Enter {0} thread"};
inline constexpr Template fix_efficiency{"fix-efficiency", "Enter {0} efficiency cores",
                                         "Enter {0} efficiency core"};
inline constexpr Template fix_expose{"fix-expose", "Pass it on to {0}"};

} // namespace snug::text
