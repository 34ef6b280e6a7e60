#pragma once
// What the window keeps from one time to the next, and what comes in by clipboard and drop.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template settings_damaged{
    "settings-damaged",
    "What this window remembered could not be read, so it starts as new; the damaged file is kept as {0}"};
inline constexpr Template settings_unreadable{
    "settings-unreadable", "What this window remembered cannot be read, so it starts as new: {0}"};
inline constexpr Template settings_not_kept{
    "settings-not-kept", "The files opened lately cannot be remembered: {0}. Labs are not touched by this"};
inline constexpr Template settings_folder{"settings-folder", "the folder {0} cannot be made"};

inline constexpr Template drop_several{"drop-several",
                                       "{0} files were dropped: one lab at a time, so only {1} was opened"};
inline constexpr Template drop_nothing{"drop-nothing", "What was dropped is no file: drop a lab, *.snuglab"};

inline constexpr Template act_copy_picture{"act-copy-picture", "Copy as p&icture"};
inline constexpr Template copied_picture{"copied-picture", "The diagram is on the clipboard as a picture"};
inline constexpr Template clipboard_name{"clipboard-name", "clipboard"};
inline constexpr Template clipboard_no_text{
    "clipboard-no-text",
    "There are no machines and no lab on the clipboard: copy machines, the text of a lab or its file"};
inline constexpr Template clipboard_refused{
    "clipboard-refused", "The clipboard did not take it: close the program that holds it and copy again, or "
                         "use Hand out for a file"};

} // namespace snug::text
