#include "core/document/journal.h"

#include "core/base/quote.h"
#include "core/document/recovery.h"
#include "core/document/save.h"
#include "core/text/file_text.h"
#include "core/text/journal_text.h"

#include <cassert>
#include <cerrno>
#include <filesystem>
#include <system_error>

namespace snug {

namespace {

namespace fs = std::filesystem;

Argument reason(int error) {
  if (error == ENOSPC || error == EDQUOT) return detail::argument(say(text::journal_full));
  return std::generic_category().message(error);
}

tl::unexpected<Problem> no_folder(const std::string& folder, const Argument& why) {
  return fail(Problem{say(text::journal_folder, folder, why), folder, 0, 0, {}});
}

Result<void> make_folder(const std::string& folder) {
  std::error_code error;
  if (fs::is_directory(folder, error)) return {};
  fs::create_directories(folder, error);
  if (!error) fs::permissions(folder, fs::perms::owner_all, error);
  if (error) return no_folder(folder, error.message());
  return {};
}

std::string journal_path(const std::string& folder, std::string_view uid, int n) {
  constexpr std::size_t kMostOfUid = 8;
  std::string name = "lab-";
  for (const char c : uid.substr(0, kMostOfUid))
    if (is_letter(c) || is_digit(c)) name += c;
  return folder + "/" + name + "-" + std::to_string(n) + ".journal";
}

} // namespace

Result<Journal> Journal::begin(const std::string& folder, const JournalHead& head, Time now) {
  if (auto made = make_folder(folder); !made) return fail(std::move(made.error()));
  constexpr int kMostNames = 10'000;
  for (int n = 1; n <= kMostNames; ++n) {
    Journal j;
    j.path_ = journal_path(folder, head.uid, n);
    std::error_code error;
    if (fs::exists(fs::symlink_status(j.path_, error))) continue;
    auto lock = FileLock::take(j.path_);
    if (!lock && lock.error().message.text == &text::lock_held) continue;
    if (!lock) return no_folder(folder, detail::argument(lock.error().message));
    if (fs::exists(fs::symlink_status(j.path_, error))) continue; // made while nobody held it
    j.lock_ = std::move(*lock);
    if (auto placed = j.place(detail::journal_line(1, detail::to_json(head))); !placed)
      return no_folder(folder, detail::argument(placed.error().message));
    j.lines_ = 1;
    j.last_sync_ = now;
    return j;
  }
  return no_folder(folder, reason(EEXIST));
}

Result<Journal> Journal::resume(RecoveredJournal&& recovered, const Replayed& replayed, Time now) {
  assert(replayed.used <= recovered.steps.size());
  Journal j;
  j.path_ = recovered.path;
  detail::StepStacks stacks;
  for (std::size_t i = 0; i < replayed.used; ++i) stacks.take(recovered.steps[i]);
  j.lines_ = 1 + replayed.used;
  j.done_ = stacks.done.size();
  j.undone_ = stacks.undone.size();
  const std::uint64_t end = replayed.used == 0 ? recovered.head_end : recovered.ends[replayed.used - 1];
  int error = j.file_.open(j.path_);
  if (error == 0 && j.file_.size() < end) error = EIO;
  if (error == 0) error = j.file_.shorten(end);
  if (error != 0) return fail(j.not_kept(error));
  j.lock_ = std::move(recovered.lock);
  j.unsynced_ = true;
  j.last_sync_ = now;
  return j;
}

Result<void> Journal::edited(const Edit& edit, Recorded how, Time now) {
  assert((how == Recorded::step || done_ > 0) && "the history was not sealed when the journal began");
  if (how == Recorded::step) ++done_;
  if (how == Recorded::dissolved) --done_;
  undone_ = 0;
  return keep({JournalStep::What::edit, how != Recorded::step, edit, {}}, now);
}

Result<void> Journal::undone(const Edit& step, Time now) {
  JournalStep s{JournalStep::What::undo, false, std::nullopt, {}};
  if (done_ == 0) {
    s.edit = step;
  } else {
    --done_;
  }
  ++undone_;
  return keep(s, now);
}

Result<void> Journal::redone(const Edit& step, Time now) {
  JournalStep s{JournalStep::What::redo, false, std::nullopt, {}};
  if (undone_ == 0) {
    s.edit = step;
  } else {
    --undone_;
  }
  ++done_;
  return keep(s, now);
}

Result<void> Journal::will_save(const JournalBase& base, Time now) {
  return keep({JournalStep::What::saved, false, std::nullopt, base}, now);
}

Result<void> Journal::saved(const JournalHead& head, Time now) {
  if (auto placed = place(detail::journal_line(1, detail::to_json(head))); !placed)
    return fail(Problem{say(text::journal_goes_on, placed.error().message), path_, 0, 0, {}});
  lines_ = 1;
  done_ = undone_ = 0;
  waiting_.clear();
  gap_ = false;
  not_kept_since_.reset();
  last_sync_ = now;
  return {};
}

Result<void> Journal::keep(const JournalStep& step, Time now) {
  const std::string line = detail::journal_line(++lines_, detail::to_json(step));
  const std::size_t waits = waiting_.size() + line.size();
  if (waits > kMostWaiting || file_.size() + waits > detail::kMostJournalOctets) gap_ = true;
  if (!gap_) waiting_ += line;
  return write_waiting(now);
}

Result<void> Journal::write_waiting(Time now) {
  int error = 0;
  if (!file_.is_open()) error = file_.open(path_);
  if (error == 0 && !waiting_.empty()) {
    error = file_.append(waiting_);
    if (error == 0) {
      waiting_.clear();
      unsynced_ = true;
    }
  }
  if (error == 0 && !gap_) {
    not_kept_since_.reset();
    return {};
  }
  if (!not_kept_since_) not_kept_since_ = now;
  return fail(not_kept(error));
}

Result<void> Journal::sync_if_due(Time now) {
  if (!waiting_.empty())
    if (auto written = write_waiting(now); !written) return written;
  const bool due = now < last_sync_ || now - last_sync_ >= kSyncEvery;
  if (!due || (!unsynced_ && file_.has_name())) return {};
  return sync(now);
}

Result<void> Journal::sync(Time now) {
  last_sync_ = now;
  if (doubtful_ || !file_.is_open() || !file_.has_name()) return rewrite();
  if (const int error = file_.sync(); error != 0) {
    doubtful_ = true; // the system may have dropped what it could not write, and would not say so twice
    return fail(Problem{say(text::journal_not_synced, reason(error)), path_, 0, 0, {}});
  }
  unsynced_ = false;
  return {};
}

Result<void> Journal::rewrite() {
  std::string all;
  int error = file_.is_open() ? 0 : file_.open(path_);
  if (error == 0) error = file_.read(all);
  if (error != 0) return fail(Problem{say(text::journal_not_synced, reason(error)), path_, 0, 0, {}});
  if (auto placed = place(all); !placed)
    return fail(Problem{say(text::journal_not_synced, placed.error().message), path_, 0, 0, {}});
  return {};
}

// The whole file at once, forced to the disk, under the journal's name.
Result<void> Journal::place(std::string_view bytes) {
  const auto saved = save_file(path_, bytes);
  const bool unconfirmed = !saved && saved.error().message.text == &text::save_unconfirmed;
  if (!saved && !unconfirmed) return fail(saved.error());
  file_ = {};
  file_.open(path_); // where that fails, the next line tries again
  doubtful_ = unsynced_ = unconfirmed;
  return {};
}

Problem Journal::not_kept(int error) const {
  Message why = error == 0 ? say(text::journal_large, Count{static_cast<std::int64_t>(file_.size())})
                           : say(text::edit_label, reason(error));
  return Problem{say(text::journal_not_kept, std::move(why)), path_, 0, 0, {}};
}

Result<void> Journal::remove() && {
  file_ = {};
  auto removed = detail::remove_journal(path_);
  lock_.reset();
  return removed;
}

} // namespace snug
