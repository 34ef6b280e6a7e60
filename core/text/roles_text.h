#pragma once
// Sentences about files of roles.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template roles_not_object{
    "roles-not-object",
    "this is JSON, but not a file of roles, which is an object in braces: choose another file"};
inline constexpr Template roles_foreign{
    "roles-foreign",
    "this is not a file of roles: begin it with \"format\": \"snuglab-roles\" and \"version\": {0}"};
inline constexpr Template roles_other_format{"roles-other-format",
                                             "this document has the format \"{0}\", a file of roles has "
                                             "\"format\": \"snuglab-roles\": choose another file"};
inline constexpr Template roles_newer{
    "roles-newer",
    "these roles have format version {0}, but this program reads versions up to {1}: open the file "
    "with the Snuglab that wrote it or a later one; the file is unchanged"};
inline constexpr Template roles_only{"roles-only", "a file of roles holds no \"{0}\": take it away"};
inline constexpr Template roles_no_key{"roles-no-key", "a role needs a key, like \"web-server\""};
inline constexpr Template roles_no_title{"roles-no-title", "the role \"{0}\" needs a title"};
inline constexpr Template roles_key_twice{
    "roles-key-twice", "the key \"{0}\" was given already at {1}: give this role another one"};
inline constexpr Template roles_marks{
    "roles-marks",
    "\"{0}\" of \"{1}\" is {2}, less than \"{3}\", which is {4}: an installer refuses below the "
    "first mark, the second is the least, the third the usual memory"};
inline constexpr Template roles_footprint{"roles-footprint",
                                          "\"{0}\" of \"{1}\" is {2}: with the usual memory, {3}, nothing is "
                                          "left for guests: lower it, or raise the usual memory"};

} // namespace snug::text
