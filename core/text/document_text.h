#pragma once
// Sentences about documents that cannot be read.

#include "core/base/message.h"

namespace snug::text {

// Before anything is read
inline constexpr Template document_empty{
    "document-empty",
    "the file is empty: take its previous version, the same name with ~ at its end, or choose another file"};
inline constexpr Template document_large{"document-large",
                                         "the document has {0} octets, but at most {1} (32 MiB) are read: "
                                         "choose another file, or divide it into several"};
inline constexpr Template document_gzip{"document-gzip",
                                        "this is a gzip archive: unpack it first, a lab is plain JSON text"};
inline constexpr Template document_zip{"document-zip",
                                       "this is a zip archive: unpack it first, a lab is plain JSON text"};
inline constexpr Template document_utf16{"document-utf16", "this text is UTF-16: save it as UTF-8"};
inline constexpr Template document_bom{
    "document-bom", "the file starts with a byte order mark: save it as UTF-8 without one"};
inline constexpr Template document_nul{
    "document-nul", "there is a zero octet here, so this is not text, or it is damaged: choose another file, "
                    "or its previous version, the same name with ~ at its end"};
inline constexpr Template document_memory{
    "document-memory",
    "there is not enough memory to read this document: close other programs and try again"};

// JSON
inline constexpr Template json_utf8{"json-utf8", "{0} is not UTF-8: save the file as UTF-8"};
inline constexpr Template json_end{
    "json-end", "the text ends before the document is complete (a }, ] or \" is missing): take its previous "
                "version, the same name with ~ at its end, or write what is missing"};
inline constexpr Template json_more{
    "json-more", "{0} stands after the end of the document: take it and all that follows away"};
inline constexpr Template json_comment{
    "json-comment", "comments are not part of JSON: put the remark into a \"notes\" field"};
inline constexpr Template json_comma_extra{"json-comma-extra",
                                           "there is a comma before {0}: take it away after the last entry"};
inline constexpr Template json_comma_missing{"json-comma-missing", "a comma is missing before {0}"};
inline constexpr Template json_quote{"json-quote", "text stands in double quotes (\"), not in single ones"};
inline constexpr Template json_control{
    "json-control", "{0} may not stand inside quotes: write \\n for a line break and \\t for a tab"};
inline constexpr Template json_escape{"json-escape",
                                      "{0} does not continue the escape that the backslash begins (RFC 8259 "
                                      "section 7): write \\\\ for a backslash"};
inline constexpr Template json_number{
    "json-number", "the number {0} is larger than any that a document holds: write a smaller one"};
inline constexpr Template json_begin{
    "json-begin", "this is not JSON: a document begins with {{, not with {0}; choose a lab, *.snuglab"};
inline constexpr Template json_surrogate{"json-surrogate",
                                         "\\ud800 to \\udfff stand for a character only in pairs (RFC 8259 "
                                         "section 7): write both, or the character itself"};
inline constexpr Template json_word{"json-word", "{0} begins no value: put text into double quotes"};
inline constexpr Template json_unexpected{
    "json-unexpected", "{0} does not belong here: take it away, or complete what stands before it"};
inline constexpr Template json_deep{
    "json-deep",
    "objects and lists are nested more than {0} deep, which no lab needs: take out what is inside this one"};
inline constexpr Template json_twice{
    "json-twice", "\"{0}\" stands twice in one object, first at {1}: take one of them away"};

// Which document this is
inline constexpr Template document_not_object{
    "document-not-object",
    "this is JSON, but not a lab, which is an object in braces: choose a lab, *.snuglab"};
inline constexpr Template document_foreign{
    "document-foreign", "this is not a lab: choose a lab, *.snuglab, or, if you wrote this as one, begin it "
                        "with \"format\": \"snuglab\" and \"version\": {0}"};
inline constexpr Template document_other_format{
    "document-other-format",
    "this document has the format \"{0}\", a lab has \"format\": \"snuglab\": choose a lab, *.snuglab"};
inline constexpr Template document_no_version{"document-no-version",
                                              "the version of the format is missing: write \"version\": {0}"};
inline constexpr Template document_version_form{"document-version-form",
                                                "the version must be a whole number, like \"version\": {0}"};
inline constexpr Template document_newer{
    "document-newer",
    "this lab has format version {0}, but this program reads versions up to {1}: open it with "
    "the Snuglab that wrote it or a later one; the file is unchanged"};
inline constexpr Template document_older{
    "document-older", "this lab has format version {0}, which no step of this program migrates: save it anew "
                      "with a Snuglab between that version and this one"};
inline constexpr Template document_migrated{
    "document-migrated", "brought from format version {0} to {1}; saving keeps the new one"};

// Parts
inline constexpr Template part_object{"part-object", "\"{0}\" must be an object in braces"};
inline constexpr Template part_list{"part-list", "\"{0}\" must be a list in brackets"};
inline constexpr Template part_entry{"part-entry", "every entry of \"{0}\" must be an object in braces"};
inline constexpr Template part_many{
    "part-many", "there are more than {0} in \"{1}\": take some away, or divide the lab into several"};
inline constexpr Template id_missing{"id-missing",
                                     "this {0} has no id: give it one of its own, like \"id\": \"{1}\""};
inline constexpr Template id_kind{"id-kind", "\"{0}\" is no id of a {1}: those look like {2}"};
inline constexpr Template id_twice{"id-twice",
                                   "the id {0} was given already at {1}: give this one an id of its own"};
inline constexpr Template id_last{"id-last", "the id {0} is the last there can be: renumber it below {1}"};
inline constexpr Template reference_dangling{
    "reference-dangling",
    "{0} names {1}, but the document has no {2} with this id: correct it, or add that {2}"};
inline constexpr Template carrier_self{
    "carrier-self", "{0} runs inside itself: name another carrier, or none to let it run on the PC"};
inline constexpr Template carrier_cycle{
    "carrier-cycle",
    "{0} run inside each other in a circle: let one of them run on the PC, without \"carrier\""};
inline constexpr Template base_self{"base-self", "disk {0} is its own base: name another disk, or none"};
inline constexpr Template base_cycle{
    "base-cycle", "disks {0} are each other's base in a circle: let one of them have no base"};
inline constexpr Template place_in_text{"place-in-text", "line {0}, column {1}"};

// Notes after loading
inline constexpr Template kept_unknown{"kept-unknown",
                                       "{0}\"{1}\" in {2} is not known to this version and kept as it is"};
inline constexpr Template kept_unknown_meant{
    "kept-unknown-meant",
    "{0}\"{1}\" in {2} is not known to this version and kept as it is; perhaps \"{3}\" was meant"};
inline constexpr Template kept_more{"kept-more", "{0} more members are not known and kept",
                                    "one more member is not known and kept"};
inline constexpr Template next_id_raised{"next-id-raised",
                                         "\"next_id\" was below the ids in use and is now {0}"};

} // namespace snug::text
