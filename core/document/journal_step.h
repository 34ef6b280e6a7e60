#pragma once
// What a journal holds, and its lines. A line is "CRC-32C of the rest in 8 hexadecimal digits, blank, number
// of the line, blank, JSON object, LF". Line 1 is the head, every other one a step.

#include "core/base/result.h"
#include "core/edit/edit.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace snug {

// The document that steps begin with.
struct JournalBase {
  std::string document; // its path, absolute; empty: never saved
  std::uint64_t hash = 0;
  std::uint64_t size = 0; // octets
  std::string bytes;      // all of them when it was never saved, else empty
  friend bool operator==(const JournalBase&, const JournalBase&) = default;
};
// `path` is made absolute; empty: never saved. `bytes` is what write_lab gave or what was loaded.
JournalBase journal_base(const std::string& path, std::string_view bytes);
std::string hash_text(std::uint64_t hash); // 16 hexadecimal digits

struct JournalHead {
  std::string program; // name and version of what wrote it
  std::string uid;     // of the lab
  JournalBase base;
  friend bool operator==(const JournalHead&, const JournalHead&) = default;
};

struct JournalStep {
  enum class What : std::uint8_t {
    edit,
    undo,
    redo,
    saved, // about to be written: it happened if the document has this content
  };
  What what = What::edit;
  bool joins = false; // of an edit: became part of the step before
  // Of an edit; of undo and redo only where the step was made before the journal began.
  std::optional<Edit> edit;
  JournalBase saved; // without bytes
};

namespace detail {

inline constexpr std::int64_t kJournalVersion = 1;
inline constexpr std::size_t kMostJournalOctets = 256 * 1024 * 1024;

std::string journal_line(std::uint64_t number, std::string_view json);
// The JSON of a line (without its LF) whose checksum fits; `number` is set. Nothing: damaged.
std::optional<std::string_view> open_line(std::string_view line, std::uint64_t& number);

std::string to_json(const JournalHead& head);
std::string to_json(const JournalStep& step);
Result<JournalHead> read_head(std::string_view json);
Result<JournalStep> read_step(std::string_view json);

} // namespace detail

} // namespace snug
