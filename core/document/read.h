#pragma once
// Reading `*.snuglab` documents: one JSON object with "format": "snuglab", "version", the singletons and the
// lists of the model by their keys (see schema.h). The two header members must be there but may stand
// anywhere; order and blanks do not matter; every other member is optional. Members that are not known are
// kept. Refused, each with file, line, column and path: what is not UTF-8 JSON (RFC 8259), duplicate keys,
// wrong types, values out of range, ids that are missing, of another kind or given twice, references to
// nothing, machines inside themselves, disks that are their own base, and more than the caps below.
// "next_id" is raised where it is not above every id in use.

#include "core/model/lab.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace snug {

inline constexpr std::int64_t kFormatVersion = 1;
inline constexpr std::size_t kMostDocumentOctets = 32 * 1024 * 1024;

struct Loaded {
  Lab lab;
  std::vector<Message> notes;     // what a person should know: members kept unknown, migration
  std::uint64_t content_hash = 0; // of the octets read; see content_hash()
};

// All or nothing. `file_name` stands in problems. Never throws; running out of memory is a Problem.
Result<Loaded> read_document(std::string_view bytes, std::string_view file_name);
Result<Lab> read_lab(std::string_view bytes, std::string_view file_name);

// A regular file of at most kMostDocumentOctets; pipes, devices and folders are refused without reading.
Result<std::string> read_file(const std::string& path, std::size_t most_octets = kMostDocumentOctets);
Result<Loaded> load_file(const std::string& path);

// To notice that a file was changed by another program since it was loaded.
std::uint64_t content_hash(std::string_view bytes);

} // namespace snug
