#pragma once
// Older versions of the format. A version is migrated step by step as raw JSON and then read by the one
// reader (DECISIONS 8). To add a version: raise kFormatVersion, append a step here, keep the golden files.

#include "core/base/result.h"

#include <nlohmann/json.hpp>
#include <span>
#include <string>

namespace snug {

struct Migration {
  std::int64_t from = 0; // brings a document of this version to from + 1
  // Changes everything but "version"; adds notes for the person.
  void (*apply)(nlohmann::ordered_json& document, std::vector<Message>& notes) = nullptr;
};

// The steps of this program, in order, without gaps. Empty: version 1 is the first.
std::span<const Migration> migrations();

// The text of a well-formed document of version `from` in version `to`. Refuses when a step is missing.
Result<std::string> migrate(std::string_view bytes, std::int64_t from, std::int64_t to,
                            std::span<const Migration> steps, std::vector<Message>& notes);

} // namespace snug
