#include "core/document/recovery.h"

#include "core/document/read.h"
#include "core/document/save_target.h"
#include "core/text/document_text.h"
#include "core/text/file_text.h"
#include "core/text/journal_text.h"

#include <algorithm>
#include <filesystem>
#include <new>

namespace snug {

namespace {

namespace fs = std::filesystem;

Problem at_line(Message m, const std::string& path, std::uint64_t line) {
  return Problem{std::move(m), path, static_cast<int>(line), 0, {}};
}

// Reads the lines behind the first, up to one that is wrong.
class Lines {
 public:
  Lines(std::string_view text, RecoveredJournal& out) : text_(text), out_(out) {}

  Result<void> head() {
    const auto line = next();
    const auto json = line ? detail::open_line(*line, number_) : std::nullopt;
    if (!json && line && line->starts_with('{')) return fail(text::journal_foreign);
    if (!json || number_ != 1) return fail(at_line(say(text::journal_head), out_.path, 1));
    auto head = detail::read_head(*json);
    if (!head) return fail(Problem{std::move(head.error().message), out_.path, 1, 0, {}});
    out_.head = std::move(*head);
    out_.head_end = at_;
    return {};
  }

  void steps() {
    while (at_ < text_.size()) {
      ++count_;
      if (auto wrong = step()) {
        out_.damage = at_line(std::move(*wrong), out_.path, count_);
        return;
      }
    }
  }

 private:
  std::optional<std::string_view> next() {
    const std::size_t end = text_.find('\n', at_);
    if (end == std::string_view::npos) return std::nullopt;
    const std::string_view line = text_.substr(at_, end - at_);
    at_ = end + 1;
    return line;
  }

  std::optional<Message> step() {
    const Count n{static_cast<std::int64_t>(count_)};
    const auto line = next();
    if (!line) return say(text::journal_torn, n);
    const auto json = detail::open_line(*line, number_);
    if (!json) {
      const auto after = std::count(text_.begin() + static_cast<std::ptrdiff_t>(at_), text_.end(), '\n');
      return say(text::journal_damaged, n, Count{after});
    }
    if (number_ != count_) return say(text::journal_order, n);
    auto read = detail::read_step(*json);
    if (!read) return say(text::journal_line, n, read.error().message);
    if (!stacks_.take(*read)) return say(text::journal_line, n, say(text::journal_stack));
    out_.steps.push_back(std::move(*read));
    out_.ends.push_back(at_);
    return std::nullopt;
  }

  std::string_view text_;
  RecoveredJournal& out_;
  std::size_t at_ = 0;
  std::uint64_t number_ = 0; // that the last line says
  std::uint64_t count_ = 1;
  detail::StepStacks stacks_;
};

Result<RecoveredJournal> read_journal(const std::string& path) {
  auto lock = FileLock::take(path);
  if (!lock) return fail(std::move(lock.error()));
  const auto bytes = read_file(path, detail::kMostJournalOctets);
  if (!bytes) return fail(bytes.error());
  RecoveredJournal out;
  out.path = path;
  out.lock = std::move(*lock);
  Lines lines(*bytes, out);
  if (auto head = lines.head(); !head) return fail(std::move(head.error()));
  lines.steps();
  return out;
}

// The name of the journal that a helper file beside it belongs to; empty: it is none.
std::string owner_of(const std::string& name) {
  if (!name.starts_with('.')) return {};
  for (const std::string_view tail : {".lock", ".saving"}) {
    const std::size_t at = name.rfind(tail);
    if (at != std::string::npos && detail::is_journal_name(std::string_view(name).substr(1, at - 1)))
      return name.substr(1, at - 1);
  }
  return {};
}

void remove_helpers(const std::string& folder, const std::string& name) {
  std::error_code error;
  const std::string saving = "." + name + ".saving";
  for (const auto& entry : fs::directory_iterator(folder, error))
    if (entry.path().filename().string().starts_with(saving)) fs::remove(entry.path(), error);
}

std::vector<std::string> names_in(const std::string& folder) {
  std::vector<std::string> names;
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(folder, error))
    names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

} // namespace

namespace detail {

bool StepStacks::take(const JournalStep& step) {
  using What = JournalStep::What;
  if (step.what == What::saved) return true;
  if (step.what == What::edit && step.joins) {
    if (done.empty() || !undone.empty()) return false;
    Edit joined = merged(done.back(), *step.edit);
    done.pop_back();
    if (!joined.empty()) done.push_back(std::move(joined));
    return true;
  }
  if (step.what == What::edit) {
    if (step.edit->empty()) return false;
    done.push_back(*step.edit);
    undone.clear();
    return edited = true;
  }
  std::vector<Edit>& from = step.what == What::undo ? done : undone;
  std::vector<Edit>& to = step.what == What::undo ? undone : done;
  if (step.edit) { // made before the journal began
    if (!from.empty() || (step.what == What::redo && edited) || step.edit->empty()) return false;
    to.push_back(*step.edit);
    return true;
  }
  if (from.empty()) return false;
  to.push_back(std::move(from.back()));
  from.pop_back();
  return true;
}

StepStacks StepStacks::before(const std::vector<JournalStep>& steps) {
  StepStacks out;
  for (const JournalStep& s : steps) {
    if (!s.edit || s.what == JournalStep::What::edit) continue;
    std::vector<Edit>& stack = s.what == JournalStep::What::undo ? out.done : out.undone;
    stack.push_back(*s.edit);
  }
  std::reverse(out.done.begin(), out.done.end());
  std::reverse(out.undone.begin(), out.undone.end());
  return out;
}

bool is_journal_name(std::string_view name) { return name.starts_with("lab-") && name.ends_with(".journal"); }

Result<void> remove_journal(const std::string& path) {
  const auto [folder, name] = split_path(path);
  remove_helpers(folder, name);
  std::error_code error;
  fs::remove(path, error);
  if (error) return fail(Problem{say(text::journal_stays, error.message()), path, 0, 0, {}});
  return {};
}

} // namespace detail

std::vector<FoundJournal> find_journals(const std::string& folder) {
  std::vector<FoundJournal> found;
  std::error_code error;
  for (const std::string& name : names_in(folder)) {
    const bool journal = detail::is_journal_name(name);
    const std::string owner = journal ? name : owner_of(name);
    if (owner.empty()) continue;
    std::string path = folder;
    (path += '/') += owner;
    const auto lock = FileLock::take(path); // its own file goes when it is given back
    if (!lock) continue;
    if (!journal && lock->is_held() && !fs::exists(path, error)) remove_helpers(folder, owner);
    if (!journal || !fs::is_regular_file(path, error)) continue;
    const auto changed = fs::last_write_time(path, error);
    using std::chrono::file_clock;
    found.push_back({path, std::chrono::floor<std::chrono::seconds>(file_clock::to_sys(changed))});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const FoundJournal& a, const FoundJournal& b) { return a.changed > b.changed; });
  return found;
}

Result<RecoveredJournal> recover(const std::string& path) {
  try {
    return read_journal(path);
  } catch (const std::bad_alloc&) {
    return fail(Problem{say(text::document_memory), path, 0, 0, {}});
  }
}

Result<void> discard(RecoveredJournal&& journal) {
  auto removed = detail::remove_journal(journal.path);
  journal.lock.reset();
  return removed;
}

} // namespace snug
