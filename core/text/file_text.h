#pragma once
// Sentences about files that cannot be read or written.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template file_missing{"file-missing",
                                       "there is no such file: look at its name and at the folder"};
inline constexpr Template file_folder{"file-folder", "this is a folder, not a file: name a file in it"};
inline constexpr Template file_special{
    "file-special",
    "this is a pipe or a device, and only an ordinary file can hold a document: name another one"};
inline constexpr Template file_denied{"file-denied",
                                      "you may not read this file: ask for the right to, or copy it"};
inline constexpr Template file_read{
    "file-read", "the file cannot be read ({0}): try again, or use a copy of it from elsewhere"};

inline constexpr Template save_read_only{"save-read-only",
                                         "the file is read-only: save under another name, or allow writing"};
inline constexpr Template save_no_folder{
    "save-no-folder", "the folder \"{0}\" does not exist: create it or choose another one"};
inline constexpr Template save_folder_denied{
    "save-folder-denied", "you may not write into the folder \"{0}\": choose another one, or allow writing"};
inline constexpr Template save_changed{
    "save-changed",
    "another program has changed the file since it was opened: save under another name, or open "
    "it again"};
inline constexpr Template save_links{
    "save-links",
    "its symbolic links lead round in a circle: name another file, or take one of the links away"};
inline constexpr Template save_name_empty{"save-name-empty",
                                          "a file name is missing: name the file to write"};
inline constexpr Template save_full{"save-full",
                                    "the disk is full: make room or save elsewhere; the file is as it was"};
inline constexpr Template save_too_large{
    "save-too-large",
    "the system does not allow a file of this size here: save elsewhere; the file is as it was"};
inline constexpr Template save_failed{
    "save-failed", "it cannot be saved here ({0}): choose another name or folder; the file is as it was"};
inline constexpr Template save_unconfirmed{
    "save-unconfirmed", "the new version is written, but the system did not confirm that it is on the disk "
                        "({0}): keep the work open and save again"};
inline constexpr Template lock_held{"lock-held", "{0} has this file open: close it there first"};
inline constexpr Template lock_failed{
    "lock-failed", "the file cannot be kept from other programs ({0}): use a copy of it in another folder"};

} // namespace snug::text
