#pragma once
// Sentences about the journal: what keeps the work until it is saved.

#include "core/base/message.h"

namespace snug::text {

// Reading edits
inline constexpr Template edit_label{"edit-label", "{0}"}; // the label of an edit that was read
inline constexpr Template edit_form{"edit-form", "\"{0}\" must be {1}"};
inline constexpr Template edit_member{"edit-member", "\"{0}\" is not known to this version"};
inline constexpr Template edit_member_missing{"edit-member-missing", "\"{0}\" is missing"};
inline constexpr Template edit_known{"edit-known",
                                     "\"{0}\" is a field, so it cannot stand under \"unknown\""};
inline constexpr Template edit_long{"edit-long", "the edit has more than {0} steps"};
inline constexpr Template form_object{"form-object", "an object in braces"};
inline constexpr Template form_list{"form-list", "a list in brackets"};
inline constexpr Template form_text{"form-text", "text in quotes"};
inline constexpr Template form_number{"form-number", "a whole number, 0 or more"};
inline constexpr Template form_id{"form-id", "the id of something in a lab, like \"m12\""};

// A journal that cannot be read
inline constexpr Template journal_foreign{"journal-foreign", "this is not a journal of Snuglab"};
inline constexpr Template journal_head{"journal-head",
                                       "its first line is damaged: nothing can be read from it"};
inline constexpr Template journal_stays{"journal-stays", "it cannot be removed: {0}"};
inline constexpr Template journal_newer{
    "journal-newer", "this journal has version {0}, but this program reads version {1}: open it with the "
                     "Snuglab that wrote it ({2})"};
inline constexpr Template journal_torn{
    "journal-torn",
    "line {0} is not whole: the program ended while it was written; everything before is kept"};
inline constexpr Template journal_damaged{
    "journal-damaged",
    "line {0} is damaged: its checksum does not fit; the lines before it are kept, {1} after "
    "it are left out",
};
inline constexpr Template journal_order{
    "journal-order", "line {0} is not the one that belongs here; the lines before it are kept"};
inline constexpr Template journal_line{"journal-line",
                                       "line {0} cannot be read ({1}); the lines before it are kept"};
inline constexpr Template journal_stack{"journal-stack", "there is nothing to take back or to do again"};
inline constexpr Template journal_what{"journal-what", "it says neither what was done nor what was saved"};

// Recovering
inline constexpr Template journal_base_changed{
    "journal-base-changed",
    "the steps that were kept fit {0} only as it was then, and another program has changed it since. "
    "Both are still there: put the earlier version of the file back, and the work is offered again (it "
    "had {1} octets, content {2}; now {3}, content {4})"};
inline constexpr Template journal_base_gone{
    "journal-base-gone",
    "the steps that were kept begin with {0}, which cannot be read now ({1}): put the file back, and the "
    "work is offered again"};
inline constexpr Template journal_step{
    "journal-step", "step {0} does not fit the lab ({1}); the steps before it are done again"};

// Writing
inline constexpr Template journal_not_kept{
    "journal-not-kept", "the last changes are not kept against a crash yet: {0}. Your work is here: save it"};
inline constexpr Template journal_not_synced{
    "journal-not-synced",
    "the system did not confirm that the last changes are on the disk ({0}): save your work"};
inline constexpr Template journal_goes_on{
    "journal-goes-on", "the journal could not begin anew ({0}); it goes on as it was, and nothing is lost"};
inline constexpr Template journal_full{"journal-full", "the disk is full"};
inline constexpr Template journal_large{"journal-large",
                                        "the journal is full ({0} octets) and begins anew when you save"};
inline constexpr Template journal_folder{
    "journal-folder", "the folder \"{0}\" for work that is not saved yet cannot be used: {1}"};

} // namespace snug::text
