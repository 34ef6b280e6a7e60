#include "core/document/read.h"
#include "core/document/nearest.h"

#include "core/base/quote.h"
#include "core/document/header.h"
#include "core/document/read_with.h"
#include "core/document/verify.h"
#include "core/net/mac.h"
#include "core/text/document_text.h"

#include <new>

namespace snug {

namespace {

using detail::LabReader;

// "line 2, column 29: \"memroy\" in /machines/0 is not known …", without the place where there are no
// positions.
Message unknown_note(const detail::UnknownKey& k, std::string_view bytes) {
  std::string at = k.owner;
  detail::append_pointer(at, k.key);
  const auto offset = bytes.empty() ? std::nullopt : detail::find_pointer(bytes, at, detail::Part::key);
  const detail::TextPlace place = offset ? detail::place_at(bytes, *offset) : detail::TextPlace{};
  const std::string where =
      place.line > 0 ? english(say(text::place_in_text, Count{place.line}, Count{place.column})) + ": "
                     : std::string();
  const std::string owner = k.owner.empty() ? "the document" : k.owner;
  const std::string_view meant = detail::nearest_member(k.key);
  if (meant.empty()) return say(text::kept_unknown, where, excerpt(k.key), owner);
  return say(text::kept_unknown_meant, where, excerpt(k.key), owner, meant);
}

void add_notes(const LabReader& reader, std::string_view bytes, std::vector<Message>& notes) {
  for (const detail::UnknownKey& k : reader.unknown_keys()) notes.push_back(unknown_note(k, bytes));
  const std::size_t named = reader.unknown_keys().size();
  if (reader.unknown_count() > named)
    notes.push_back(say(text::kept_more, Count{static_cast<std::int64_t>(reader.unknown_count() - named)}));
}

void raise_next_id(Loaded& loaded) {
  const std::uint32_t least = detail::largest_id(loaded.lab) + 1;
  std::uint32_t& next = loaded.lab.facts.next_id;
  if (next >= least) return;
  if (next != LabFacts{}.next_id) loaded.notes.push_back(say(text::next_id_raised, Count{least}));
  next = least;
}

// Reads a document of the current version; positions are those of `bytes`, none when `positions` is false.
Result<Loaded> read_current(std::string_view bytes, std::string_view file_name, bool positions) {
  Loaded loaded;
  const char* seen = nullptr;
  LabReader reader(bytes, seen, loaded.lab);
  const std::string_view text = positions ? bytes : std::string_view{};
  if (!detail::walk(bytes, seen, reader)) {
    if (reader.fault()) return fail(detail::located(*reader.fault(), text, file_name));
    if (reader.number_too_large())
      return fail(detail::problem_at(say(text::json_number, excerpt(reader.syntax_token())), text,
                                     reader.syntax_offset(), file_name));
    return fail(detail::syntax_problem(text, reader.syntax_offset(), reader.syntax_token(), file_name));
  }
  if (auto fault = detail::verify(loaded.lab, reader.references()))
    return fail(detail::located(std::move(*fault), text, file_name));
  add_notes(reader, text, loaded.notes);
  raise_next_id(loaded);
  return loaded;
}

Result<Loaded> read_any(std::string_view bytes, std::string_view file_name, std::span<const Migration> steps,
                        const detail::DocumentForm& form) {
  if (auto problem = detail::check_octets(bytes, file_name)) return fail(std::move(*problem));
  const std::int64_t oldest = steps.empty() ? kFormatVersion : steps.front().from;
  const auto version = detail::read_version(bytes, file_name, oldest, kFormatVersion, form);
  if (!version) return fail(version.error());
  if (*version == kFormatVersion) return read_current(bytes, file_name, true);
  if (auto problem = detail::check_json(bytes, file_name)) return fail(std::move(*problem));
  std::vector<Message> notes;
  auto migrated = migrate(bytes, *version, kFormatVersion, steps, notes);
  if (!migrated) return fail(std::move(migrated.error()));
  auto loaded = read_current(*migrated, file_name, false);
  if (loaded) loaded->notes.insert(loaded->notes.begin(), notes.begin(), notes.end());
  return loaded;
}

} // namespace

namespace detail {

Result<Loaded> read_with(std::string_view bytes, std::string_view file_name, std::span<const Migration> steps,
                         const DocumentForm& form) {
  try {
    auto loaded = read_any(bytes, file_name, steps, form);
    if (loaded) loaded->content_hash = content_hash(bytes);
    return loaded;
  } catch (const std::bad_alloc&) {
    return fail(Problem{say(text::document_memory), std::string(file_name), 0, 0, {}});
  }
}

} // namespace detail

Result<Loaded> read_document(std::string_view bytes, std::string_view file_name) {
  return detail::read_with(bytes, file_name, migrations());
}

Result<Lab> read_lab(std::string_view bytes, std::string_view file_name) {
  auto loaded = read_document(bytes, file_name);
  if (!loaded) return fail(std::move(loaded.error()));
  return std::move(loaded->lab);
}

Result<Loaded> load_file(const std::string& path) {
  const auto bytes = read_file(path);
  if (!bytes) return fail(bytes.error());
  return read_document(*bytes, path);
}

std::uint64_t content_hash(std::string_view bytes) { return stable_hash(bytes); }

} // namespace snug
