#pragma once
// Sentences of the command line.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template cli_no_exercise{"cli-no-exercise",
                                          "there is no exercise \"{0}\" in this lab; it has: {1}"};
inline constexpr Template cli_no_exercises{"cli-no-exercises",
                                           "there is no exercise \"{0}\": this lab has none"};
inline constexpr Template cli_no_sample{"cli-no-sample", "there is no sample \"{0}\"; there are: {1}"};
inline constexpr Template cli_exists{"cli-exists",
                                     "\"{0}\" is there already; give another name or --replace"};
inline constexpr Template cli_picture{
    "cli-picture", "\"{0}\" does not say what picture to make; end it in .svg, .png or .pdf"};
inline constexpr Template cli_no_paint{"cli-no-paint",
                                       "this build draws SVG only; PNG and PDF need the full program"};
inline constexpr Template cli_no_rule{"cli-no-rule",
                                      "there is no rule \"{0}\"; \"snuglab-cli rules\" lists them all"};
inline constexpr Template cli_no_role{"cli-no-role",
                                      "there is no role \"{0}\"; \"snuglab-cli roles\" lists them all"};
inline constexpr Template cli_nothing_to_fix{"cli-nothing-to-fix",
                                             "there is nothing to repair by the rule {0}"};
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
inline constexpr Template cli_no_input{"cli-no-input", "there is no input to read from"};
inline constexpr Template cli_stream{"cli-stream", "the output cannot be written"};

} // namespace snug::text
