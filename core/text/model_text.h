#pragma once
// Sentences about fields, values and edits.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template line_any{"line-any", "any"};

inline constexpr Template date_form{"date-form",
                                    "\"{0}\" is not a date: write year-month-day, like 2027-02-14"};
inline constexpr Template value_type{"value-type", "{0} must be {1}"};
inline constexpr Template value_unset{"value-unset", "{0} must have a value"};
inline constexpr Template value_range{"value-range", "{0} is {1}; it must lie between {2} and {3}"};
inline constexpr Template value_choice{"value-choice", "{0} is \"{1}\"; it must be one of: {2}"};
inline constexpr Template value_long{"value-long", "{0} is longer than {1} octets: shorten it"};
inline constexpr Template value_many{"value-many", "{0} has more than {1} entries: take some away"};
inline constexpr Template value_kind{"value-kind", "{0} cannot be {1}: it must name {2}"};
inline constexpr Template value_character{"value-character",
                                          "{0} contains {1}, which cannot be shown or printed: take it out"};
inline constexpr Template value_family{"value-family", "{0} is {1}, which is not {2}"};
inline constexpr Template value_utf8{"value-utf8",
                                     "{0} contains octets that are not UTF-8: save the file as UTF-8"};

inline constexpr Template type_boolean{"type-boolean", "true or false"};
inline constexpr Template type_integer{"type-integer", "a whole number"};
inline constexpr Template type_text{"type-text", "text in quotes"};
inline constexpr Template type_date{"type-date", "a date like \"2027-02-14\""};
inline constexpr Template type_id{"type-id", "an id like \"m12\""};
inline constexpr Template type_ids{"type-ids", "a list of ids like [\"m12\", \"m13\"]"};
inline constexpr Template type_address{"type-address", "an address like \"192.0.2.10\""};
inline constexpr Template type_prefix{"type-prefix", "a prefix like \"192.0.2.0/24\""};
inline constexpr Template type_prefixes{"type-prefixes", "a list of prefixes like [\"192.0.2.0/24\"]"};
inline constexpr Template type_mac{"type-mac", "a MAC address like \"00:00:5e:00:53:01\""};
inline constexpr Template type_rows{"type-rows", "a list of objects in braces"};

inline constexpr Template line_size{"line-size", "= {0}"};
inline constexpr Template line_size_bare{"line-size-bare", "= {0}; for {1} write {2}"};
inline constexpr Template line_size_taken{"line-size-taken", "Understood as {0}. For {1} write {2}."};
inline constexpr Template line_number{"line-number", "{0} is a whole number, not \"{1}\""};
inline constexpr Template line_decimal{"line-decimal",
                                       "{0} is a number with at most two decimals, not \"{1}\""};
inline constexpr Template line_yes_no{"line-yes-no", "{0} is yes or no, not \"{1}\""};

inline constexpr Template edit_no_element{"edit-no-element", "there is no {0} any more"};
inline constexpr Template edit_no_field{"edit-no-field", "a {0} has no field \"{1}\""};
inline constexpr Template edit_stale{"edit-stale", "{0} of {1} has changed meanwhile"};
inline constexpr Template edit_twice{"edit-twice", "{0} is there already"};
inline constexpr Template edit_place{"edit-place", "{0} cannot stand at place {1}"};
inline constexpr Template edit_dangling{"edit-dangling", "{0} of {1} names {2}, which is not in the lab"};
inline constexpr Template edit_cycle{"edit-cycle", "{0} would run inside itself"};
inline constexpr Template edit_base_cycle{"edit-base-cycle", "disk {0} would be its own base"};
inline constexpr Template edit_full{"edit-full", "a lab holds at most {0} of {1}"};
inline constexpr Template edit_carrier_role{"edit-carrier",
                                            "{0} cannot carry guests: it is not a hypervisor"};

inline constexpr Template label_change{"label-change", "Change {0} of {1}"};
inline constexpr Template label_add{"label-add", "Add {0}"};
inline constexpr Template label_remove{"label-remove", "Remove {0}"};
inline constexpr Template label_move{"label-move", "Move {0} to {1}"};
inline constexpr Template label_rename{"label-rename", "Rename {0} to {1}"};
inline constexpr Template label_things{"label-things", "{0} things", "{0} thing"};
inline constexpr Template label_several{"label-several", "Change {0} things", "Change {0} thing"};

} // namespace snug::text
