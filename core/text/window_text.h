#pragma once
// Words of the window.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template window_untitled{"window-untitled", "untitled lab"};
inline constexpr Template window_read_only{
    "window-read-only",
    "{0}. The lab is open for reading here; save it under another name to change it on disk"};
inline constexpr Template window_sealed_folder{
    "window-sealed-folder",
    "You may not write into the folder {0}, so the lab is open for reading: to keep what you change, choose "
    "“Save as…” and another folder"};
inline constexpr Template window_save_elsewhere{
    "window-save-elsewhere", "{0} is open for reading only: choose “Save as…” and another name"};
inline constexpr Template window_reloaded{"window-reloaded", "Read {0} again"};
inline constexpr Template part_isolated{"part-isolated", "Isolated segment"};
inline constexpr Template part_bridged{"part-bridged", "Bridged segment"};
inline constexpr Template part_nat{"part-nat", "NAT segment"};
inline constexpr Template part_isolated_help{
    "part-isolated-help",
    "A network that exists only inside this PC. Drag it onto the picture, or click it and then the picture."};
inline constexpr Template part_bridged_help{
    "part-bridged-help",
    "One network with a LAN outside: what runs there meets real devices. Ask whoever runs that LAN first."};
inline constexpr Template part_nat_help{"part-nat-help", "A network of its own with a translated way out"};

inline constexpr Template parts_segments{"parts-segments", "Segments"};
inline constexpr Template parts_machines{"parts-machines", "Machines"};
inline constexpr Template parts_more{"parts-more", "More roles"};
inline constexpr Template parts_fewer{"parts-fewer", "Fewer roles"};
inline constexpr Template parts_role_help{
    "parts-role-help",
    "{0}: drag it onto the PC, into a hypervisor or onto a rail; or click it and then the place"};

inline constexpr Template findings_filter{"findings-filter", "Filter by words"};
inline constexpr Template findings_accepted{"findings-accepted", "Show accepted"};
inline constexpr Template findings_accepted_because{"findings-accepted-because", "accepted: {0}"};
inline constexpr Template findings_none{"findings-none", "Nothing to mend."};
inline constexpr Template findings_no_match{"findings-no-match", "No finding has these words."};
inline constexpr Template findings_more{"findings-more", "{0} more findings; filter by words to see them",
                                        "{0} more finding; filter by words to see it"};
inline constexpr Template findings_errors{"findings-errors", "{0} errors", "{0} error"};
inline constexpr Template findings_cautions{"findings-cautions", "{0} cautions", "{0} caution"};
inline constexpr Template findings_notes{"findings-notes", "{0} notes", "{0} note"};
inline constexpr Template findings_accept{"findings-accept", "Accept…"};
inline constexpr Template findings_accept_help{"findings-accept-help",
                                               "It is meant to be so: say why, and it no longer counts"};
inline constexpr Template findings_reason{"findings-reason", "Why is it all right? Enter to accept"};

inline constexpr Template severity_error{"severity-error", "error"};
inline constexpr Template severity_caution{"severity-caution", "caution"};
inline constexpr Template severity_note{"severity-note", "note"};

inline constexpr Template property_none{"property-none", "none"};
inline constexpr Template property_pc{"property-pc", "{0} (directly)"};
inline constexpr Template property_more{"property-more", "{0} more fields", "{0} more field"};
inline constexpr Template property_more_tip{"property-more-tip", "Fields that few labs need"};
inline constexpr Template property_fewer{"property-fewer", "Fewer fields"};
inline constexpr Template property_mixed{"property-mixed", "they differ"};
inline constexpr Template property_unset{"property-unset", "not set"};
inline constexpr Template property_in_force{"property-in-force", "({0})"};
inline constexpr Template property_in_force_help{"property-in-force-help",
                                                 "Not entered: {0} holds, worked out"};
inline constexpr Template property_several{"property-several", "{0} chosen"};

inline constexpr Template addresses_filter{"addresses-filter", "Filter the table"};
inline constexpr Template notice_close{"notice-close", "Close"};
inline constexpr Template menu_compare{"menu-compare", "Compare &memory with"};
inline constexpr Template compare_none{"compare-none", "Nothing"};
inline constexpr Template exercise_all_on{"exercise-all-on", "Everything on"};
inline constexpr Template verdict_fits{"verdict-fits", "fits"};
inline constexpr Template verdict_tight{"verdict-tight", "tight"};
inline constexpr Template verdict_over{"verdict-over", "over"};

inline constexpr Template paper_svg{"paper-svg", "Diagram, SVG"};
inline constexpr Template paper_png{"paper-png", "Diagram, PNG"};
inline constexpr Template paper_pdf{"paper-pdf", "Diagram, PDF"};
inline constexpr Template paper_csv{"paper-csv", "Address table, CSV"};
inline constexpr Template paper_markdown{"paper-markdown", "Address table, Markdown"};
inline constexpr Template paper_html{"paper-html", "Address table, HTML"};
inline constexpr Template paper_findings{"paper-findings", "Findings and budgets, Markdown"};
inline constexpr Template theme_light{"theme-light", "Light"};
inline constexpr Template theme_dark{"theme-dark", "Dark"};
inline constexpr Template theme_print{"theme-print", "Black and white"};
inline constexpr Template hand_out_what{"hand-out-what", "Document"};
inline constexpr Template hand_out_exercise{"hand-out-exercise", "Exercise"};
inline constexpr Template hand_out_colours{"hand-out-colours", "Colours"};
inline constexpr Template hand_out_title{"hand-out-title", "Hand out"};
inline constexpr Template hand_out_lab_title{"hand-out-lab-title",
                                             "Title of the lab, as it stands on what is handed out"};
inline constexpr Template hand_out_no_title{"hand-out-no-title", "Title of the lab"};
inline constexpr Template saved_as{"saved-as", "Saved as {0}"};
inline constexpr Template hand_out_save{"hand-out-save", "Save…"};
inline constexpr Template hand_out_saved{"hand-out-saved", "Saved as {0}"};

inline constexpr Template menu_file{"menu-file", "&File"};
inline constexpr Template menu_edit{"menu-edit", "&Edit"};
inline constexpr Template menu_plan{"menu-plan", "&Plan"};
inline constexpr Template menu_view{"menu-view", "&View"};
inline constexpr Template menu_move{"menu-move", "&Move to"};
inline constexpr Template menu_connect{"menu-connect", "&Connect to"};
inline constexpr Template act_new{"act-new", "&New lab"};
inline constexpr Template act_open{"act-open", "&Open…"};
inline constexpr Template act_start{"act-start", "Start &page"};
inline constexpr Template act_save{"act-save", "&Save"};
inline constexpr Template act_save_as{"act-save-as", "Save &as…"};
inline constexpr Template act_hand_out{"act-hand-out", "&Hand out…"};
inline constexpr Template act_quit{"act-quit", "&Quit"};
inline constexpr Template act_undo{"act-undo", "&Undo"};
inline constexpr Template act_redo{"act-redo", "&Redo"};
inline constexpr Template act_rename{"act-rename", "Re&name"};
inline constexpr Template act_duplicate{"act-duplicate", "&Duplicate"};
inline constexpr Template act_remove{"act-remove", "Re&move"};
inline constexpr Template act_on{"act-on", "Switch &on"};
inline constexpr Template act_off{"act-off", "Switch o&ff"};
inline constexpr Template act_socket{"act-socket", "PC &socket"};
inline constexpr Template act_earlier{"act-earlier", "One place &earlier"};
inline constexpr Template act_later{"act-later", "One place &later"};
inline constexpr Template act_tidy{"act-tidy", "Tid&y"};
inline constexpr Template tidy_already{"tidy-already",
                                       "It is tidy already: in no other order do fewer wires cross rails."};
inline constexpr Template tidy_done{"tidy-done", "Tidied: wires cross rails {0} times instead of {1}."};
inline constexpr Template tidy_shorter{
    "tidy-shorter", "Tidied: the picture is smaller; wires cross rails {0} times, as before."};
inline constexpr Template act_hold{"act-hold", "&Keep in place"};
inline constexpr Template act_addresses{"act-addresses", "Suggest &addresses"};
inline constexpr Template act_select_all{"act-select-all", "Select a&ll"};
inline constexpr Template act_show_all{"act-show-all", "Sho&w all"};
inline constexpr Template act_larger{"act-larger", "&Larger"};
inline constexpr Template act_smaller{"act-smaller", "&Smaller"};
inline constexpr Template act_findings{"act-findings", "&Findings"};
inline constexpr Template act_table{"act-table", "&Address table"};
inline constexpr Template menu_colours{"menu-colours", "&Colours"};
inline constexpr Template colours_desktop{"colours-desktop", "As the &desktop"};
inline constexpr Template colours_light{"colours-light", "&Light"};
inline constexpr Template colours_dark{"colours-dark", "D&ark"};
inline constexpr Template rows_add{"rows-add", "Add {0}"};
inline constexpr Template rows_remove{"rows-remove", "Remove"};
inline constexpr Template rows_open{"rows-open", "Show all of it"};
inline constexpr Template rows_cards{"rows-cards", "Cards"};
inline constexpr Template rows_disks{"rows-disks", "Disks"};
inline constexpr Template rows_shares{"rows-shares", "Shares"};
inline constexpr Template property_percent{"property-percent", "{0}, %"};
inline constexpr Template hand_out_drag{
    "hand-out-drag", "Hand out the diagram and the tables. Drag this button into another program to "
                     "put the diagram there as a picture."};
inline constexpr Template rows_back{"rows-back", "Back to {0}"};
inline constexpr Template memory_least{"slider-least", "least {0}"};
inline constexpr Template memory_usual{"slider-usual", "usual {0}"};
inline constexpr Template memory_slider{"memory-slider", "Memory; the role needs at least {0}, usually {1}"};
inline constexpr Template minimap_name{"minimap-name", "The whole lab; click to go there"};
inline constexpr Template side_parts_help{"side-parts-help", "Segments and machines to put into the lab"};
inline constexpr Template side_outline_help{"side-outline-help", "The whole lab as a tree"};
inline constexpr Template side_properties{"side-properties", "Properties"};
inline constexpr Template side_properties_help{"side-properties-help",
                                               "Everything about what is chosen, to be read and changed"};
inline constexpr Template act_properties{"act-properties", "P&roperties"};
inline constexpr Template sheet_hide{"sheet-hide", "Hide"};
inline constexpr Template sheet_show{"sheet-show", "Show"};
inline constexpr Template sheet_fold_help{"sheet-fold-help",
                                          "Leaves only the names of the panels, or shows them again"};
inline constexpr Template tab_findings{"tab-findings", "Findings {0}"};
inline constexpr Template tab_addresses{"tab-addresses", "Addresses"};
inline constexpr Template title_read_only{"title-read-only", " (read only)"};
inline constexpr Template file_new_folder{"file-new-folder", "New folder"};
inline constexpr Template file_filter{"file-filter", "Labs (*.snuglab);;All files (*)"};
inline constexpr Template unsaved_question{"unsaved-question", "{0} has changes that are not saved."};
inline constexpr Template unsaved_save{"unsaved-save", "Save"};
inline constexpr Template unsaved_drop{"unsaved-drop", "Discard changes"};
inline constexpr Template unsaved_back{"unsaved-back", "Stay here"};
inline constexpr Template removed_one{"removed-one", "{0} is removed."};
inline constexpr Template removed_several{"removed-several", "{0} things are removed."};
inline constexpr Template notice_undo{"notice-undo", "Undo"};
inline constexpr Template drop_not_local{
    "drop-not-local", "{0} is not a file on this computer: save it here first, then open it"};
inline constexpr Template changed_read_again{
    "changed-read-again",
    "{0} was changed by another program and has been read again; undo brings back what was here"};
inline constexpr Template changed_outside{
    "changed-outside", "{0} was changed by another program while you have changes of your own here"};
inline constexpr Template changed_take_theirs{"changed-take-theirs", "Read it again"};
inline constexpr Template changed_keep_mine{"changed-keep-mine", "Write mine over it"};
inline constexpr Template changed_save_copy{"changed-save-copy", "Save mine elsewhere…"};
inline constexpr Template start_title{"start-title",
                                      "A data centre on one PC: does it fit, who has which address?"};
inline constexpr Template start_this_pc{"start-this-pc", "Blank lab for this computer"};
inline constexpr Template start_blank{"start-blank", "Blank lab for another PC"};
inline constexpr Template start_open{"start-open", "Open a lab…"};
inline constexpr Template start_samples{"start-samples", "Start from a sample"};
inline constexpr Template start_about{"start-about", "{0} machines, {1} segments, {2} PC",
                                      "{0} machine, {1} segments, {2} PC"};
inline constexpr Template start_recent{"start-recent", "Opened lately"};
inline constexpr Template start_gone{"start-gone", "This file is no longer there"};
inline constexpr Template start_clear{"start-clear", "Forget these"};
inline constexpr Template footer_size{"footer-size", "{0} GiB PC: {1}"};
inline constexpr Template footer_machines{"footer-machines", "{0} machines", "{0} machine"};
inline constexpr Template footer_segments{"footer-segments", "{0} segments", "{0} segment"};
inline constexpr Template footer_addresses{"footer-addresses", "{0} addresses", "{0} address"};

inline constexpr Template arg_file{"arg-file", "the lab to open, *.snuglab; without it the start page"};
inline constexpr Template arg_sample{"arg-sample",
                                     "begin with a copy of a sample; snuglab-cli new --list names them"};
inline constexpr Template arg_theme{"arg-theme", "light or dark; without it as the desktop"};
inline constexpr Template arg_one{"arg-one", "one lab at a time; see snuglab --help"};
inline constexpr Template arg_no_theme{"arg-no-theme", "\"{0}\" is no theme: say light or dark"};
inline constexpr Template arg_unknown{"arg-unknown", "there is no option \"{0}\"; see snuglab --help"};
inline constexpr Template arg_unknown_meant{
    "arg-unknown-meant", "there is no option \"{0}\": perhaps \"{1}\" was meant; see snuglab --help"};
inline constexpr Template arg_parser{"arg-parser", "{0} See snuglab --help"};
inline constexpr Template arg_no_sample{"arg-no-sample",
                                        "there is no sample \"{0}\"; snuglab-cli new --list names them"};
inline constexpr Template arg_no_display{
    "arg-no-display", "there is no display for a window here: start it on a desktop, or use snuglab-cli, "
                      "which draws and checks labs without one (man snuglab-cli)"};

inline constexpr Template window_kept_again{"window-kept-again",
                                            "Every step is kept again in case the program ends."};
inline constexpr Template recover_question{"recover-question",
                                           "Work on {0} was not saved when the program ended on {1}."};
inline constexpr Template recover_take{"recover-take", "Open it as it was"};
inline constexpr Template recover_drop{"recover-drop", "Throw it away"};

} // namespace snug::text
