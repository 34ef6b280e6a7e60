#pragma once
// Sentences of the findings about memory.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template memory_over{
    "memory-over", "{0} is over by {1} in \"{4}\": what runs takes {2}, and there are {3}"};
inline constexpr Template memory_over_all{
    "memory-over-all", "{0} is over by {1} with everything on: what runs takes {2}, and there are {3}"};
inline constexpr Template memory_over_nothing{
    "memory-over-nothing",
    "{0} is over by {1} in \"{3}\": what runs takes {2}, and its own part leaves nothing"};
inline constexpr Template memory_over_nothing_all{
    "memory-over-nothing-all",
    "{0} is over by {1} with everything on: what runs takes {2}, and its own part leaves nothing"};
inline constexpr Template memory_over_why{
    "memory-over-why", "The last guest will not start, or {0} swaps and all of them crawl: leave some off, "
                       "make some smaller, or give it more memory."};
inline constexpr Template memory_over_why_lean{"memory-over-why-lean",
                                               "The last guest will not start, or {0} swaps and all of them "
                                               "crawl: leave some off, make some smaller (their "
                                               "roles have lean sizes too), or give it more memory."};
inline constexpr Template memory_over_beside_why{
    "memory-over-beside-why", "Only what an exercise switches on has to fit: choose an exercise to see it."};
inline constexpr Template memory_tight{
    "memory-tight", "{0} has {1} of headroom left in \"{3}\", less than the {2} that are kept free"};
inline constexpr Template memory_tight_all{
    "memory-tight-all",
    "{0} has {1} of headroom left with everything on, less than the {2} that are kept free"};
inline constexpr Template memory_tight_why{
    "memory-tight-why", "A browser or an update beside the lab may be enough to make it swap."};
inline constexpr Template memory_expected_fits{
    "memory-expected-fits",
    "{0} runs \"{3}\" until the guests use what they were given: {1} are expected to be used of {2}"};
inline constexpr Template memory_expected_fits_all{
    "memory-expected-fits-all",
    "{0} runs everything until the guests use what they were given: {1} are expected to be used of {2}"};
inline constexpr Template memory_expected_fits_why{
    "memory-expected-fits-why", "After that it swaps; expected use is an estimate of yours, not a promise."};
inline constexpr Template memory_refused{"memory-refused",
                                         "{0} has {1}; the installer of a {2} refuses below {3}"};
inline constexpr Template memory_refused_why{"memory-refused-why",
                                             "It cannot be installed with so little: give it at least {0}."};
inline constexpr Template memory_least{"memory-least", "{0} has {1}; a {2} wants at least {3}"};
inline constexpr Template memory_least_why{
    "memory-least-why", "It starts, but it is slow and may stop working under load; {0} are usual."};
inline constexpr Template memory_footprint{
    "memory-footprint", "{0} has {1} and needs {2} for itself: nothing is left for guests"};
inline constexpr Template memory_footprint_why{
    "memory-footprint-why", "A hypervisor's own part comes off its memory before any guest inside starts."};
inline constexpr Template memory_limit{
    "memory-limit", "the guests on {0} have {1} in \"{3}\", more than the {2} the program allows"};
inline constexpr Template memory_limit_all{
    "memory-limit-all",
    "the guests on {0} have {1} with everything on, more than the {2} the program allows"};
inline constexpr Template memory_limit_why{
    "memory-limit-why", "The virtualization program refuses to start the one that goes over its limit."};
inline constexpr Template memory_usable{"memory-usable",
                                        "{0} cannot use {1} of memory: only {2} are installed"};
inline constexpr Template memory_usable_why{
    "memory-usable-why", "Every budget would be too large; usable memory is what is installed, less what "
                         "graphics takes."};
inline constexpr Template memory_reserve{
    "memory-reserve", "{0} keeps {1} for its own system and can use {2}: nothing is left for guests"};
inline constexpr Template memory_reserve_why{"memory-reserve-why",
                                             "No guest fits; for a PC of this size {0} are usual."};
inline constexpr Template carrier_off{"carrier-off",
                                      "{0} is on in \"{2}\", but {1}, which carries it, is off"};
inline constexpr Template carrier_off_why{"carrier-off-why",
                                          "An inner guest runs only while its hypervisor runs."};

inline constexpr Template fix_memory{"fix-memory", "Give {0} {1}"};
inline constexpr Template fix_usable{"fix-usable", "Use all that is installed"};
inline constexpr Template fix_reserve{"fix-reserve", "Keep the usual {0}"};
inline constexpr Template fix_switch_on{"fix-switch-on", "Switch {0} on"};

} // namespace snug::text
