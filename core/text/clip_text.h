#pragma once
// Machines by clipboard.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template clip_nothing{"clip-nothing", "choose the machines to copy first"};
inline constexpr Template clip_foreign{
    "clip-foreign", "the clipboard holds no machines of a lab: choose machines in a lab and copy them first"};
inline constexpr Template clip_empty{"clip-empty", "there is no machine in what was copied"};
inline constexpr Template clip_paste{"clip-paste", "Paste {0}"};
inline constexpr Template clip_cut{"clip-cut", "Cut {0}"};
inline constexpr Template clip_more{"clip-more", "and {0} more of these", "and {0} more of these"};
inline constexpr Template clip_renamed{"clip-renamed", "{0} is here already: it became {1}"};
inline constexpr Template clip_moved{"clip-moved", "{0} on {1} is held by {2}: {3} has {4} now"};
inline constexpr Template clip_dropped{"clip-dropped",
                                       "{0} on {1} is held by {2}: {3} has no address there now"};
inline constexpr Template clip_segment{"clip-segment", "{0} is not in this lab: it came along"};
inline constexpr Template clip_dhcp{"clip-dhcp", "{0} already answers DHCP on {1}: {2} no longer does"};

inline constexpr Template act_copy{"act-copy", "&Copy"};
inline constexpr Template act_cut{"act-cut", "Cu&t"};
inline constexpr Template act_paste_here{"act-paste-here", "&Paste"};
inline constexpr Template notice_copy_help{"notice-copy-help",
                                           "Ctrl+C copies what is marked, else all of it"};
inline constexpr Template act_copy_notice{"act-copy-notice", "Copy what the bar sa&ys"};
inline constexpr Template act_copy_table{"act-copy-table", "Copy as ta&ble"};
inline constexpr Template copied_table{"copied-table", "The address table is on the clipboard"};

// Several addresses at once
inline constexpr Template paste_line{"paste-line", "line {0}, for {1}: {2}. Nothing was pasted"};
inline constexpr Template paste_none{"paste-none",
                                     "there is no address among what was copied: copy one on each line"};
inline constexpr Template paste_more{
    "paste-more", "{0} lines were copied and {1} fit into the table from here on: the rest was left out"};
inline constexpr Template number_on_first{
    "number-on-first", "give the first of them an address: the others are numbered on from there"};
inline constexpr Template number_on_end{
    "number-on-end", "from {0} on only {1} addresses fit into the segment: begin with a lower one"};
inline constexpr Template menu_address_cells{"menu-address-cells", "In the addre&ss table"};
inline constexpr Template act_paste_addresses{"act-paste-addresses", "&Paste addresses from here"};
inline constexpr Template act_number_on{"act-number-on", "&Number on from the first"};
inline constexpr Template act_suggest_again{"act-suggest-again", "&Suggest these anew"};
inline constexpr Template addresses_free{"addresses-free", "Free on {0}: {1}"};
inline constexpr Template addresses_free_more{"addresses-free-more", "Free on {0}: {1} and more"};
inline constexpr Template addresses_none_free{"addresses-none-free", "Nothing is free on {0}"};
inline constexpr Template addresses_span{"addresses-span", "{0} to {1}"};

} // namespace snug::text
