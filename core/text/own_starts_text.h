#pragma once
// Words about labs that a person keeps to start from.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template act_keep_start{"act-keep-start", "&Keep as a starting lab…"};
inline constexpr Template starts_own{"starts-own", "Start from a lab of your own"};
inline constexpr Template own_start_help{"own-start-help", "{0}: opens a copy; {1} stays as it is"};
inline constexpr Template own_start_name{"own-start-name", "Name of the starting lab"};
inline constexpr Template own_start_name_help{"own-start-name-help", "Enter keeps it, Esc leaves it"};
inline constexpr Template own_start_ask{"own-start-ask", "Keep this lab among those to start from, as:"};
inline constexpr Template own_start_keep{"own-start-keep", "Keep"};
inline constexpr Template own_start_kept{"own-start-kept", "{0} stands on the start page now, as {1}"};
inline constexpr Template own_start_taken{
    "own-start-taken", "There is a starting lab called {0} already, of {1}. Put this lab in its place?"};
inline constexpr Template own_start_replace{"own-start-replace", "Replace it"};
inline constexpr Template own_start_other_name{"own-start-other-name", "Another name…"};

inline constexpr Template own_start_no_name{"own-start-no-name", "a starting lab needs a name"};
inline constexpr Template own_start_same_name{
    "own-start-same-name", "there is a starting lab called {0} already: give this one another name"};
inline constexpr Template own_start_no_folder{
    "own-start-no-folder", "starting labs have no place on this computer: it names no folder for templates"};
inline constexpr Template own_start_folder{"own-start-folder",
                                           "the folder {0} for starting labs cannot be made"};
inline constexpr Template own_start_unreadable{"own-start-unreadable",
                                               "Left out, its file stays as it is: {0}"};

} // namespace snug::text
