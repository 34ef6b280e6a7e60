#include "app/cli/command.h"

#include "core/document/save.h"
#include "core/document/write.h"
#include "core/model/store.h"
#include "core/net/host_name.h"
#include "core/text/cli_text.h"

#include <array>

namespace snug::cli {

int complain(const Console& console, const Problem& problem, int code) {
  console.err << "snuglab-cli: " << english(problem) << '\n';
  return code;
}

std::optional<Lab> load(const Console& console, const std::string& path) {
  auto loaded = load_document(console, path);
  return loaded ? std::optional(std::move(loaded->lab)) : std::nullopt;
}

namespace {

Result<Loaded> read_stream(const Console& console) {
  constexpr const char* kName = "standard input";
  if (!console.in) return fail(text::cli_no_input, kName);
  std::string bytes;
  std::array<char, 65536> part{};
  while (bytes.size() <= kMostDocumentOctets) {
    console.in->read(part.data(), part.size());
    bytes.append(part.data(), static_cast<std::size_t>(console.in->gcount()));
    if (!*console.in) break;
  }
  return read_document(bytes, kName);
}

} // namespace

std::optional<Loaded> load_document(const Console& console, const std::string& path) {
  auto loaded = path == "-" ? read_stream(console) : load_file(path);
  if (!loaded) {
    complain(console, loaded.error(), kUnreadable);
    return std::nullopt;
  }
  for (const Message& note : loaded->notes)
    console.err << "snuglab-cli: " << path << ": " << english(note) << '\n';
  return std::move(*loaded);
}

Result<ExerciseId> find_exercise(const Lab& lab, const std::string& text) {
  if (text.empty()) return ExerciseId{};
  std::vector<std::string> names;
  for (const Exercise& e : lab.exercises) {
    if (e.name == text || to_text(e.id) == text) return e.id;
    names.push_back(to_text(e.id) + " \"" + e.name + "\"");
  }
  for (const Exercise& e : lab.exercises)
    if (same_name(e.name, text)) return e.id;
  if (names.empty()) return fail(text::cli_no_exercises, text);
  return fail(text::cli_no_exercise, text, names);
}

Result<AnyId> find_element(const Lab& lab, const std::string& text, std::initializer_list<Kind> kinds,
                           const Template& none) {
  std::vector<AnyId> found;
  for (const Kind kind : kinds) {
    const Store& store = store_of(kind);
    std::vector<AnyId> named;
    for (std::size_t i = 0; i < store.count(lab); ++i) {
      const AnyId id = store.table->id(store.at(lab, i));
      if (to_text(id) == text) return id;
      if (same_name(name_of(lab, id), text)) named.push_back(id);
    }
    if (found.empty()) found = std::move(named);
  }
  if (found.empty()) return fail(none, text);
  std::vector<std::string> ids;
  for (const AnyId id : found) ids.push_back(to_text(id));
  if (found.size() > 1) return fail(text::cli_two_nodes, text, ids);
  return found.front();
}

Result<Rewrite> Rewrite::begin(const std::string& file, const std::string& output) {
  Rewrite r;
  r.file_ = file;
  r.target_ = output.empty() ? file : output;
  if (r.target_ == "-") return r;
  auto taken = FileLock::take(r.target_);
  if (!taken) return fail(taken.error());
  r.lock_ = std::move(*taken);
  return r;
}

int Rewrite::finish(const Console& console, const Loaded& loaded, const std::string& words) const {
  if (target_ == "-") {
    console.err << words;
    return deliver(console, {}, write_lab(loaded.lab));
  }
  SaveOptions how;
  how.keep_previous = is_same_file();
  if (is_same_file()) how.loaded_hash = loaded.content_hash;
  const auto saved = save_file(target_, write_lab(loaded.lab), how);
  return saved ? deliver(console, {}, words) : complain(console, saved.error(), kCannotWrite);
}

int deliver(const Console& console, const std::string& path, std::string_view bytes) {
  if (path.empty() || path == "-") {
    console.out << bytes << std::flush;
    return console.out.good() ? kFine
                              : complain(console, Problem{say(text::cli_stream), {}, 0, 0, {}}, kCannotWrite);
  }
  if (auto saved = save_file(path, bytes); !saved) return complain(console, saved.error(), kCannotWrite);
  return kFine;
}

} // namespace snug::cli
