#pragma once
// Words about the lab itself and what it has beside machines and segments.

#include "core/base/message.h"

namespace snug::text {

// Names of new ones.
inline constexpr Template extras_exercise{"extras-exercise", "Exercise {0}"};
inline constexpr Template extras_lan{"extras-lan", "LAN {0}"};
inline constexpr Template extras_volume{"extras-volume", "Volume {0}"};
inline constexpr Template extras_place{"extras-place", "Place {0}"};

inline constexpr Template menu_add{"menu-add", "A&dd to the plan"};
inline constexpr Template act_add_exercise{"act-add-exercise", "&Exercise"};
inline constexpr Template act_add_lan{"act-add-lan", "Physical &LAN outside"};
inline constexpr Template act_add_volume{"act-add-volume", "&Volume of the PC"};
inline constexpr Template act_add_place{"act-add-place", "&Place the PC is taken to"};
inline constexpr Template act_about_lab{"act-about-lab", "Title, do&main and sizes…"};
inline constexpr Template exercise_add_help{
    "exercise-add-help",
    "Add an exercise: the machines that are on now are on in it, until you switch some off"};
inline constexpr Template document_help{
    "document-help", "Title, author, domain and sizes of this lab: click to read and change them"};
inline constexpr Template to_lab{"to-lab", "Title, domain and sizes"};
inline constexpr Template to_numbering{"to-numbering", "Numbering scheme"};
inline constexpr Template to_rules{"to-rules", "Rules of thumb"};
inline constexpr Template extras_volumes{"extras-volumes", "Volumes"};
inline constexpr Template extras_lans{"extras-lans", "Physical LANs"};
inline constexpr Template extras_places{"extras-places", "Places"};

} // namespace snug::text
