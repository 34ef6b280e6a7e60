#pragma once
// What the words of the program mean, and the other pages of its help.

#include "core/base/message.h"

#include <array>

namespace snug::text {

inline constexpr Template menu_help{"menu-help", "&Help"};
inline constexpr Template act_help_words{"act-help-words", "&Words"};
inline constexpr Template act_help_keys{"act-help-keys", "&Keys"};
inline constexpr Template act_about{"act-about", "&About Snuglab"};
inline constexpr Template help_title{"help-title", "Help"};
inline constexpr Template help_words{"help-words", "Words"};
inline constexpr Template help_keys{"help-keys", "Keys"};
inline constexpr Template help_about{"help-about", "About"};
inline constexpr Template help_find{"help-find", "Find a word"};
inline constexpr Template help_not_found{"help-not-found",
                                         "No word like this. The list has those of the screen."};

// One way to say it by hand; the keys of the menus are read from them.
inline constexpr Template help_key_choose{"help-key-choose", "Choose what is next on the picture"};
inline constexpr Template help_key_more{"help-key-more", "Choose several"};
inline constexpr Template help_key_edit{"help-key-edit", "Type the name or address of what is chosen"};
inline constexpr Template help_key_leave{"help-key-leave", "Leave everything as it was: a drag, a field"};
inline constexpr Template help_key_menu{"help-key-menu", "What can be done with what is chosen"};
inline constexpr Template help_key_place{"help-key-place", "Aim at where a new part goes: the next, the PC"};
inline constexpr Template help_key_count{"help-key-count", "How many of a new part are placed at once"};
inline constexpr Template help_key_arrows{"help-key-arrows", "Arrows, Home; Enter puts it there"};
inline constexpr Template help_key_digits{"help-key-digits", "A number, + and -"};
inline constexpr Template help_key_tab{"help-key-tab", "Tab, arrows"};
inline constexpr Template help_key_click{"help-key-click", "Ctrl+click, a band around them"};
inline constexpr Template help_key_enter{"help-key-enter", "Enter, F2"};
inline constexpr Template help_key_escape{"help-key-escape", "Esc"};
inline constexpr Template help_key_right{"help-key-right", "Menu key, right click"};

inline constexpr Template about_name{"about-name", "Snuglab {0}"};
inline constexpr Template about_what{
    "about-what",
    "Plans a whole small data centre on one ordinary PC before anything is installed: does it fit, "
    "which address gets every card, who reaches whom, what is wrong and how to repair it."};
inline constexpr Template about_files{
    "about-files",
    "A lab is one text file (*.snuglab, format version {0}). The same answers come from the command "
    "line: snuglab-cli --help."};
inline constexpr Template about_caution{
    "about-caution",
    "It plans; it does not replace the owner of a network or of a building. Ask the network's "
    "administrator before bridging a segment, and respect the licences of what you install."};

struct HelpWord {
  Template word;
  Template means;
};

inline constexpr std::array kHelpWords{
    HelpWord{{"word-accept", "Accept"},
             {"means-accept",
              "Say why a finding is all right here. It no longer counts and stays in the plan with "
              "your reason."}},
    HelpWord{{"word-bridged", "Bridged segment"},
             {"means-bridged", "One network with a LAN outside the PC: what runs there meets real devices."}},
    HelpWord{{"word-card", "Card"},
             {"means-card",
              "A network interface of a machine, plugged into one segment, or a trunk of several "
              "VLANs. On the picture a line from the machine to the rail."}},
    HelpWord{
        {"word-carrier", "Carrier"},
        {"means-carrier", "What a machine runs in: the PC, or a hypervisor, which is itself a machine."}},
    HelpWord{{"word-carries", "Carries"},
             {"means-carries", "A hypervisor's card carries a segment to the guests inside. A card that only "
                               "carries has no address of its own (hollow pin)."}},
    HelpWord{{"word-dhcp", "DHCP"},
             {"means-dhcp",
              "Gives addresses to cards that ask. A machine answers on a card whose DHCP is \"server\", a "
              "NAT segment's translator by itself; two that answer on one segment are an error."}},
    HelpWord{{"word-exercise", "Exercise"},
             {"means-exercise", "A named set of machines that are on together. Each has its own verdict; "
                                "\"everything on\" is always there."}},
    HelpWord{{"word-expected", "Expected use"},
             {"means-expected",
              "The share of its memory that a machine really uses, your estimate beside the "
              "worst case."}},
    HelpWord{{"word-finding", "Finding"},
             {"means-finding",
              "Something the checks found: an error, a caution or a note, with the places it is "
              "about and, where it is clear, a repair."}},
    HelpWord{{"word-guest", "Guest"},
             {"means-guest",
              "A virtual machine. An inner guest runs inside a hypervisor that is itself a guest."}},
    HelpWord{{"word-headroom", "Headroom"},
             {"means-headroom",
              "Memory that is left when everything of an exercise runs: positive, tight, or over "
              "when it is not enough."}},
    HelpWord{{"word-isolated", "Isolated segment"},
             {"means-isolated",
              "A network that exists only inside the PC. Nothing leaves it but through a router."}},
    HelpWord{{"word-nat", "NAT segment"},
             {"means-nat",
              "A network whose traffic to the outside gets the PC's address on the way (translation). "
              "Its translator is the way out: the default route of its guests."}},
    HelpWord{
        {"word-need", "Need and offer"},
        {"means-need", "A service that a machine uses, and one that it provides: names, time, storage …"}},
    HelpWord{
        {"word-own-part", "Own part"},
        {"means-own-part", "Memory that a hypervisor keeps for itself. The rest is for the guests inside."}},
    HelpWord{{"word-socket", "PC socket"},
             {"means-socket", "The PC's own address on a segment, where it takes part in it."}},
    HelpWord{{"word-pin", "Pin"},
             {"means-pin",
              "Where a card meets its segment on the picture, with the end of its address. Drag it to "
              "another rail to plug the card in there."}},
    HelpWord{{"word-place", "Place"},
             {"means-place",
              "A network world the PC is taken to (home, school): prefixes that the lab must not "
              "collide with."}},
    HelpWord{{"word-promise", "Promise"},
             {"means-promise",
              "A statement the lab must keep: \"Cargo never reaches the outside\". It is watched "
              "while you change the lab."}},
    HelpWord{{"word-rail", "Rail"},
             {"means-rail", "A segment on the picture. One that crosses the frame leads outside the PC."}},
    HelpWord{{"word-role", "Role"},
             {"means-role",
              "What a machine is for; brings its usual sizes and services. Sizes come in two sets, "
              "lean and current."}},
    HelpWord{{"word-room", "Room"},
             {"means-room",
              "A hypervisor on the picture with what runs inside. \"Room for 2.8 GiB\" is the largest "
              "guest that still fits, its overhead taken off; on the PC also what is kept free."}},
    HelpWord{{"word-segment", "Segment"},
             {"means-segment", "One layer-2 network: who is on it reaches its neighbours without a router."}},
    HelpWord{{"word-separated", "Separated port"},
             {"means-separated",
              "A card that talks to no other separated port of its segment, only to the others."}},
    HelpWord{{"word-share", "Share"},
             {"means-share",
              "Storage that a machine offers to others (iSCSI, NFS). Disks of other machines can lie "
              "on it."}},
    HelpWord{{"word-start", "Starting lab"},
             {"means-start",
              "A lab of your own that others begin with: it stands on the start page, and a press "
              "opens a copy. File, \"Keep as a starting lab\"."}},
    HelpWord{{"word-suggested", "Suggested address"},
             {"means-suggested",
              "One that the plan chose. It may move when the plan changes; a typed one never "
              "does."}},
    HelpWord{{"word-takes", "Takes"},
             {"means-takes", "What a running machine takes from its carrier: its memory and an overhead."}},
};

} // namespace snug::text
