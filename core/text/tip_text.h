#pragma once
// What a control is for, said beside the pointer.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template tip_this_pc{
    "tip-this-pc", "A new lab with the memory, the processors and the disks of this computer"};
inline constexpr Template tip_blank{"tip-blank", "A new lab on a PC that you describe yourself"};
inline constexpr Template tip_open{"tip-open", "Opens a lab from a file (*.snuglab)"};
inline constexpr Template tip_recent{"tip-recent", "Opens it again"};
inline constexpr Template tip_forget{"tip-forget", "Empties this list; the files stay"};
inline constexpr Template tip_find{"tip-find",
                                   "Type part of a name, of an address or of what you want to do"};
inline constexpr Template tip_sizes{"tip-sizes", "What is on now, on PCs with as much memory:"};
inline constexpr Template tip_size{"tip-size", "{0} GiB: {1}"};
inline constexpr Template tip_size_over{"tip-size-over",
                                        "Where it is over, switch machines off or give them less memory."};
inline constexpr Template tip_filter{"tip-filter", "Shows only lines that have these words"};
inline constexpr Template tip_group{"tip-group", "Hides these, or shows them again"};
inline constexpr Template tip_accepted{"tip-accepted", "Also shows what somebody accepted, with the reason"};
inline constexpr Template tip_findings{"tip-findings",
                                       "What is wrong or worth knowing, and how to repair it"};
inline constexpr Template tip_addresses{"tip-addresses", "Every address of the lab, to be read and typed"};
inline constexpr Template tip_reach{"tip-reach", "Who reaches whom, and what must stay so"};
inline constexpr Template tip_table{"tip-table", "Type into a cell to change it; a heading sorts"};
inline constexpr Template tip_outline{"tip-outline",
                                      "Everything in this lab; F2 changes a name, an address or a size"};
inline constexpr Template tip_fix_alike{
    "tip-fix-alike",
    "Repairs these {0} findings of one kind one after the other: one step, which can be undone"};
inline constexpr Template fix_all{"fix-all", "All {0}"};
inline constexpr Template fixed_alike{"fixed-alike", "{0} findings of one kind are repaired.",
                                      "{0} finding is repaired."};
inline constexpr Template fixed_some{"fixed-some",
                                     "{0} of {1} findings are repaired; for the others choose what is right.",
                                     "{0} of {1} findings is repaired; for the others choose what is right."};
inline constexpr Template tip_fix{"tip-fix", "{0}: one step, which can be undone"};
inline constexpr Template tip_reason{"tip-reason", "Enter accepts it for this reason, Esc leaves it"};
inline constexpr Template tip_to_promise{"tip-to-promise", "Shows the promise that this is about"};
inline constexpr Template tip_to_finding{"tip-to-finding", "Shows what was found about this promise"};
inline constexpr Template tip_in_place{"tip-in-place", "Enter takes what is typed, Esc leaves it as it was"};
inline constexpr Template tip_go{"tip-go", "Shows the place on the picture"};
inline constexpr Template tip_promise_row{"tip-promise-row", "Shows what decides whether it is kept"};
inline constexpr Template tip_take_back{"tip-take-back", "Removes the promise, which can be undone"};
inline constexpr Template tip_promise_answer{"tip-promise-answer",
                                             "From now on a change that breaks it is found"};
inline constexpr Template tip_add_promise{"tip-add-promise",
                                          "Something that the lab must keep, to be changed there"};
inline constexpr Template tip_show_way{"tip-show-way", "Marks all that the packet passes"};
inline constexpr Template tip_ask_from{"tip-ask-from", "Who sends"};
inline constexpr Template tip_ask_to{"tip-ask-to", "Who is to answer"};
inline constexpr Template tip_roles{"tip-roles", "Shows every role, or only those that most labs need"};
inline constexpr Template tip_add{"tip-add", "Adds one with usual values, which can be undone"};
inline constexpr Template tip_remove{"tip-remove", "Takes {0} away, which can be undone"};
inline constexpr Template tip_remove_line{"tip-remove-line", "Takes this line away, which can be undone"};
inline constexpr Template tip_close{"tip-close", "Closes it; nothing else happens"};
inline constexpr Template tip_paper{"tip-paper", "What is handed out"};
inline constexpr Template tip_paper_colours{"tip-paper-colours",
                                            "For a screen, or for a printer without colours"};
inline constexpr Template tip_paper_exercise{"tip-paper-exercise", "The exercise whose machines are on"};
inline constexpr Template tip_preview{"tip-preview", "As it will stand in the file"};
inline constexpr Template tip_save_paper{"tip-save-paper", "Asks where, and writes the file"};
inline constexpr Template tip_help_words{"tip-help-words", "What the words on the screen mean"};
inline constexpr Template tip_help_keys{"tip-help-keys", "What can be done by keyboard and pointer"};
inline constexpr Template tip_help_about{"tip-help-about", "What this program is and which files it writes"};

} // namespace snug::text
