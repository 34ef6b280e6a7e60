#pragma once
// Words about a person's own parts.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template act_keep_part{"act-keep-part", "Keep as a par&t of your own…"};
inline constexpr Template menu_own_parts{"menu-own-parts", "Your own pa&rts"};
inline constexpr Template parts_own{"parts-own", "Your own parts"};
inline constexpr Template own_part_place{"own-part-place", "&Place"};
inline constexpr Template own_part_rename{"own-part-rename", "&Rename…"};
inline constexpr Template own_part_remove{"own-part-remove", "Re&move"};
inline constexpr Template own_part_more{"own-part-more", "Rename or remove {0}"};
inline constexpr Template own_part_name{"own-part-name", "Name of the part"};
inline constexpr Template own_part_name_help{"own-part-name-help", "Enter keeps it, Esc leaves it"};
inline constexpr Template own_part_help{
    "own-part-help",
    "{0}: drag it onto the PC, into a hypervisor or onto a rail, or click it and then the place. "
    "F2 renames it, Delete removes it"};
inline constexpr Template own_part_size{"own-part-size", "{0} machines · {1}", "{0} machine · {1}"};
inline constexpr Template own_part_kept{"own-part-kept", "{0} is among your own parts now, in every lab"};
inline constexpr Template own_part_removed{"own-part-removed", "{0} is no longer among your own parts"};
inline constexpr Template own_part_bring_back{"own-part-bring-back", "Bring it back"};

inline constexpr Template own_part_no_machine{"own-part-no-machine",
                                              "choose the machines to be kept as a part first"};
inline constexpr Template own_part_no_name{"own-part-no-name", "a part needs a name"};
inline constexpr Template own_part_same_name{
    "own-part-same-name", "there is a part of your own called {0} already: give this one another name"};
inline constexpr Template own_part_no_folder{
    "own-part-no-folder",
    "parts of your own have no place on this computer: neither HOME nor XDG_CONFIG_HOME says "
    "where"};
inline constexpr Template own_part_folder{"own-part-folder",
                                          "the folder {0} for parts of your own cannot be made"};
inline constexpr Template own_part_stays{"own-part-stays", "{0} cannot be removed: {1}"};
inline constexpr Template own_part_unreadable{"own-part-unreadable",
                                              "A part of your own is left out, its file stays as it is: {0}"};
inline constexpr Template own_part_empty{"own-part-empty",
                                         "{0} holds no machine, so there is nothing to place"};

} // namespace snug::text
