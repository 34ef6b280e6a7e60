#include "core/document/own_starts.h"

#include "core/base/quote.h"
#include "core/document/lab_folder.h"
#include "core/document/read.h"
#include "core/document/save.h"
#include "core/document/write.h"
#include "core/net/host_name.h"
#include "core/text/own_starts_text.h"

#include <algorithm>
#include <filesystem>

namespace snug {

namespace fs = std::filesystem;

OwnStarts own_starts(const std::string& folder) {
  OwnStarts out;
  for (const std::string& path : lab_files(folder, kMostStarts)) {
    auto read = load_file(path);
    if (!read) {
      out.problems.push_back(std::move(read.error()));
      continue;
    }
    std::string& title = read->lab.facts.title;
    if (trimmed(title).empty()) title = fs::path(path).stem().string();
    out.starts.push_back({path, std::move(read->lab)});
  }
  std::stable_sort(out.starts.begin(), out.starts.end(),
                   [](const OwnStart& a, const OwnStart& b) { return a.name() < b.name(); });
  return out;
}

const OwnStart* start_named(const OwnStarts& all, std::string_view name) {
  const auto at = std::find_if(all.starts.begin(), all.starts.end(),
                               [&](const OwnStart& s) { return same_name(s.name(), trimmed(name)); });
  return at == all.starts.end() ? nullptr : &*at;
}

Result<OwnStart> keep_start(const std::string& folder, Lab lab, IfTaken if_taken) {
  if (folder.empty()) return fail(text::own_start_no_folder);
  lab.facts.title = std::string(trimmed(lab.facts.title));
  if (lab.facts.title.empty()) return fail(text::own_start_no_name);
  const OwnStarts all = own_starts(folder);
  const OwnStart* taken = start_named(all, lab.facts.title);
  if (taken && if_taken == IfTaken::refuse) return fail(text::own_start_same_name, taken->name());
  std::string file = taken ? taken->file : free_lab_file(folder, lab.facts.title, "lab");
  const std::string bytes = write_lab(lab);
  if (auto ok = read_lab(bytes, file); !ok) return fail(std::move(ok.error())); // a name that is too long
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) return fail(text::own_start_folder, folder);
  if (auto saved = save_file(file, bytes); !saved) return fail(std::move(saved.error()));
  return OwnStart{std::move(file), std::move(lab)};
}

} // namespace snug
