#pragma once
// Sentences of the findings about the plan itself: exercises, names of machines, limits, notes.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template exercise_empty{"exercise-empty", "nothing is on in \"{0}\""};
inline constexpr Template exercise_empty_why{"exercise-empty-why",
                                             "Its budgets say nothing: switch on what the learner needs."};
inline constexpr Template exercise_twice{"exercise-twice", "\"{0}\" lists {1} more than once"};
inline constexpr Template exercise_twice_why{"exercise-twice-why", "A machine is on or off; once is enough."};
inline constexpr Template machine_no_role{"machine-no-role", "{0} machines have no role: {1}",
                                          "{0} machine has no role: {1}"};
inline constexpr Template machine_no_role_more{"machine-no-role-more",
                                               "{0} machines have no role, among them {1}"};
inline constexpr Template machine_no_role_why{"machine-no-role-why",
                                              "Usual sizes, services and start-up times come from the role."};
inline constexpr Template machine_no_name{"machine-no-name", "machine {0} has no name"};
inline constexpr Template machine_no_name_why{"machine-no-name-why",
                                              "Tables, sheets and the picture call it by its name."};
inline constexpr Template machine_name_twice{"machine-name-twice", "{1} machines are called {0}"};
inline constexpr Template machine_name_twice_why{"machine-name-twice-why",
                                                 "Nobody can tell them apart in a table or on a sheet."};
inline constexpr Template secret_notes{"secret-notes",
                                       "the notes of {0} look like they hold a password or a key"};
inline constexpr Template secret_task{"secret-task",
                                      "the task of {0} looks like it holds a password or a key"};
inline constexpr Template secret_reason{
    "secret-reason", "the reason why {0} is accepted looks like it holds a password or a key"};
inline constexpr Template secret_why{
    "secret-why", "The plan is handed out and copied: write where it is kept, not what it is."};
inline constexpr Template accepted_gone{"accepted-gone", "the accepted finding {0} does not occur any more"};
inline constexpr Template accepted_gone_why{"accepted-gone-why",
                                            "What it accepted is mended: it can be removed."};

inline constexpr Template accepted_elsewhere{
    "accepted-elsewhere", "the accepted finding {0} names other places than where it occurs: {1}"};
inline constexpr Template accepted_elsewhere_why{
    "accepted-elsewhere-why", "It accepts nothing: its places must be exactly those of one finding."};

inline constexpr Template limit_cards{"limit-cards", "{1} has {0} cards; the program allows {2} for a guest",
                                      "{1} has {0} card; the program allows {2} for a guest"};
inline constexpr Template limit_why{
    "limit-why", "The virtualization program refuses more; the limit is the one you entered for {0}."};
inline constexpr Template limit_segments{"limit-segments", "the lab has {0} segments; the program allows {1}",
                                         "the lab has {0} segment; the program allows {1}"};
inline constexpr Template limit_nat{"limit-nat", "the lab has {0} NAT segments; the program allows {1}",
                                    "the lab has {0} NAT segment; the program allows {1}"};
inline constexpr Template limit_macs{"limit-macs", "{0} has a MAC of the plan; the program chooses its own"};

inline constexpr Template fix_list_once{"fix-list-once", "List it once"};
inline constexpr Template fix_name{"fix-name", "Call it {0}"};
inline constexpr Template fix_names{"fix-names", "Number the others"};
inline constexpr Template fix_remove_accepted{"fix-remove-accepted", "Remove it"};
inline constexpr Template fix_mac{"fix-mac", "Read it back later"};

} // namespace snug::text
