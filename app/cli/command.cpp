#include "app/cli/command.h"

#include "core/document/save.h"
#include "core/net/host_name.h"
#include "core/text/cli_text.h"

namespace snug::cli {

int complain(const Console& console, const Problem& problem, int code) {
  console.err << "snuglab-cli: " << english(problem) << '\n';
  return code;
}

std::optional<Lab> load(const Console& console, const std::string& path) {
  auto loaded = load_document(console, path);
  return loaded ? std::optional(std::move(loaded->lab)) : std::nullopt;
}

std::optional<Loaded> load_document(const Console& console, const std::string& path) {
  auto loaded = load_file(path);
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
