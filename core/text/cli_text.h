#pragma once
// Sentences of the command line.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template cli_no_exercise{"cli-no-exercise",
                                          "there is no exercise \"{0}\" in this lab; say one of: {1}"};
inline constexpr Template cli_no_exercises{
    "cli-no-exercises",
    "there is no exercise \"{0}\", as this lab has none: leave --exercise out, then everything is on"};
inline constexpr Template cli_no_sample{"cli-no-sample", "there is no sample \"{0}\"; say one of: {1}"};
inline constexpr Template cli_exists{"cli-exists",
                                     "\"{0}\" is there already; give another name or --replace"};
inline constexpr Template cli_picture{
    "cli-picture", "\"{0}\" does not say what picture to make; end it in .svg, .png or .pdf"};
inline constexpr Template cli_no_paint{
    "cli-no-paint",
    "this build draws SVG only: end the name in .svg, or use the full program for PNG and PDF"};
inline constexpr Template cli_no_rule{"cli-no-rule",
                                      "there is no rule \"{0}\"; \"snuglab-cli rules\" lists them all"};
inline constexpr Template cli_no_role{"cli-no-role",
                                      "there is no role \"{0}\"; \"snuglab-cli roles\" lists them all"};
inline constexpr Template cli_nothing_to_fix{
    "cli-nothing-to-fix",
    "the rule {0} has no open finding here; \"snuglab-cli check {1}\" lists what there is"};
inline constexpr Template cli_nothing_to_fix_there{
    "cli-nothing-to-fix-there",
    "the rule {0} has no open finding about {2} here; \"snuglab-cli check {1}\" lists what there is"};
inline constexpr Template cli_by_hand{"cli-by-hand", "{0}. There is no automatic repair for this: {1}"};
inline constexpr Template cli_no_node{
    "cli-no-node", "there is no \"{0}\" in this lab; say the name or id of a machine, \"pc\" or \"outside\""};
inline constexpr Template cli_two_nodes{"cli-two-nodes", "several are called \"{0}\": say one of {1}"};
inline constexpr Template cli_no_off{
    "cli-no-off", "there is no \"{0}\" in this lab; say the name or id of a machine, card or segment"};
inline constexpr Template cli_reach_ends{"cli-reach-ends",
                                         "say from whom to whom, or --all; see snuglab-cli reach --help"};
inline constexpr Template cli_from_card{"cli-from-card",
                                        "a sender takes the card and the address that its routes say; only "
                                        "the other end can be machine/card or an "
                                        "address"};
inline constexpr Template cli_nothing_fails{"cli-nothing-fails", "nothing else fails"};
inline constexpr Template cli_no_default{"cli-no-default",
                                         "{0} machines have no default route ({1}, for one) and reach "
                                         "nothing beyond their segments; \"snuglab-cli "
                                         "fix FILE default-missing\" gives them one",
                                         "{1} has no default route and reaches nothing beyond its segments; "
                                         "\"snuglab-cli fix FILE default-missing\" "
                                         "gives it one"};
inline constexpr Template cli_misuse{"cli-misuse", "{0}; see {1}"};
inline constexpr Template cli_no_command{"cli-no-command", "there is no command \"{0}\""};
inline constexpr Template cli_command_meant{"cli-command-meant",
                                            "there is no command \"{0}\": perhaps \"{1}\" was meant"};
inline constexpr Template cli_no_option{"cli-no-option", "there is no option \"{0}\" here"};
inline constexpr Template cli_option_meant{"cli-option-meant",
                                           "there is no option \"{0}\" here: perhaps \"{1}\" was meant"};
inline constexpr Template cli_word_more{"cli-word-more", "\"{0}\" is one word too many"};
inline constexpr Template cli_memory{
    "cli-memory", "there is not enough memory for this: close other programs and try again"};
inline constexpr Template cli_internal{"cli-internal",
                                       "something went wrong inside the program ({0}): please report it"};
inline constexpr Template cli_no_input{"cli-no-input",
                                       "there is no input to read from: name a file instead of -"};
inline constexpr Template cli_stream{"cli-stream",
                                     "the output cannot be written: see whether its disk is full or the "
                                     "program that reads it has ended, or write to a file with -o"};

} // namespace snug::text
