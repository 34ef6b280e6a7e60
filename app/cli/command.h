#pragma once
// What the sub-commands share.

#include "app/cli/cli.h"
#include "core/analyse/analyse.h"
#include "core/document/lock.h"
#include "core/document/read.h"

#include <CLI/CLI.hpp>

namespace snug::cli {

// Filled while the arguments are read; `action` is what to do then.
struct Plan {
  const Console& console;
  std::function<int()> action;
};

// One file a sub-command: each adds itself to the parser.
void add_check(CLI::App& root, Plan& plan);
void add_table(CLI::App& root, Plan& plan);
void add_draw(CLI::App& root, Plan& plan);
void add_addresses(CLI::App& root, Plan& plan);
void add_new(CLI::App& root, Plan& plan);
void add_pc(CLI::App& root, Plan& plan);
void add_changes(CLI::App& root, Plan& plan);
void add_roles(CLI::App& root, Plan& plan);
void add_fix(CLI::App& root, Plan& plan);
void add_rules(CLI::App& root, Plan& plan);
void add_format(CLI::App& root, Plan& plan);
void add_reach(CLI::App& root, Plan& plan);
void add_what_if(CLI::App& root, Plan& plan);
void add_version(CLI::App& root, Plan& plan);

// Writes a problem as one line and returns the exit code.
int complain(const Console& console, const Problem& problem, int code);
// Loads a lab; on failure says why and returns nothing. Notes go to `err`.
std::optional<Lab> load(const Console& console, const std::string& path);
std::optional<Loaded> load_document(const Console& console, const std::string& path);
// The exercise with this name or id; an empty text is everything on.
Result<ExerciseId> find_exercise(const Lab& lab, const std::string& text);
// The element with this id, or of the first of `kinds` in which the name occurs. Refuses with `none`, and
// where several have the name with their ids.
Result<AnyId> find_element(const Lab& lab, const std::string& text, std::initializer_list<Kind> kinds,
                           const Template& none);
// A lab that is read, changed and written. One writer: who else has it open must not lose what is written
// here, nor the other way round.
class Rewrite {
 public:
  // `output` empty: the file itself, whose previous state is kept as FILE~. "-": from the input, to the
  // output.
  static Result<Rewrite> begin(const std::string& file, const std::string& output);
  bool is_same_file() const { return target_ == file_ && target_ != "-"; }
  // Writes the lab, then the words about it: to `err` where the lab goes to `out`.
  int finish(const Console& console, const Loaded& loaded, const std::string& words) const;

 private:
  std::string file_, target_;
  std::optional<FileLock> lock_;
};
// To the file, or to `out` when `path` is empty or "-".
int deliver(const Console& console, const std::string& path, std::string_view bytes);

} // namespace snug::cli
