#include "ui/session/session.h"

#include "core/document/new_lab.h"
#include "core/document/read.h"
#include "core/document/recovery.h"
#include "core/document/save.h"
#include "core/document/write.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"

#include <QFileInfo>

#include <algorithm>

namespace snug {

namespace {

#ifdef Q_OS_UNIX
constexpr bool kHasLocks = true; // FileLock holds nothing only where the folder may not be written
#else
constexpr bool kHasLocks = false;
#endif

} // namespace

namespace {

// What was chosen stays chosen where a step concerned it: a step touches more than people mean (the order of
// the others).
bool concerns(const std::vector<AnyId>& changed, const std::vector<AnyId>& chosen) {
  return std::any_of(chosen.begin(), chosen.end(), [&](AnyId id) {
    return std::find(changed.begin(), changed.end(), id) != changed.end();
  });
}

} // namespace

Session::Session(QObject* parent) : QObject(parent) {
  take(blank_lab(random_uid()));
  connect(&keeper_, &Keeper::trouble, this,
          [this](const Problem& problem) { tell(problem, Notice::Until::never); });
  connect(&keeper_, &Keeper::well_again, this,
          [this] { tell(Notice::Kind::told, words(text::window_kept_again), Notice::Until::other_lab); });
}
Session::~Session() = default;

void Session::take(Lab lab) {
  preview_.reset();
  analysis_.reset();
  lab_ = std::make_unique<Lab>(std::move(lab));
  history_ = History();
  selection_.clear();
  exercise_ = {};
  lock_.reset();
  path_.clear();
  hash_ = 0;
  read_only_ = false;
  analysis_ = std::make_unique<Analysis>(*lab_);
}

void Session::analyse_again() {
  preview_.reset();
  if (!analysis_) analysis_ = std::make_unique<Analysis>(*lab_); // take() has made it
  drop_gone();
  emit lab_changed();
  emit shown_changed();
  emit document_changed();
}

// Who is told asks for both.
void Session::drop_gone() {
  const bool exercise_goes = exercise_ && !exists(*lab_, exercise_);
  if (exercise_goes) exercise_ = {};
  const bool others_go = std::erase_if(selection_, [this](AnyId id) { return !exists(*lab_, id); }) > 0;
  if (exercise_goes) emit exercise_changed();
  if (others_go) emit selection_changed();
}

bool Session::perform(Edit edit, bool merge) {
  preview_.reset();
  analysis_.reset(); // it refers to the lab that changes now
  const std::uint64_t before = history_.state();
  const Edit kept = edit;
  const auto done = history_.perform(*lab_, std::move(edit), merge);
  if (done && history_.state() != before) keeper_.edited(kept, history_.recorded());
  analyse_again();
  if (!done) tell(done.error());
  return done.has_value();
}

bool Session::perform(Result<Edit> edit) {
  if (edit) return perform(std::move(*edit));
  end_preview();
  tell(edit.error());
  return false;
}

void Session::preview(const Edit& edit, std::optional<std::vector<AnyId>> in_hand) {
  take_back_preview();
  if (!preview_) preview_ = std::make_unique<Preview>(*lab_);
  if (!apply(preview_->lab, edit)) {
    preview_.reset();
    emit shown_changed();
    return;
  }
  preview_->back = inverse(edit);
  preview_->analysis.emplace(preview_->lab);
  preview_->in_hand = std::move(in_hand);
  emit shown_changed();
}

bool Session::take_back_preview() {
  if (!is_previewing()) return false;
  preview_->analysis.reset(); // it refers to the lab that changes now
  if (!apply(preview_->lab, *preview_->back)) preview_.reset();
  return true;
}

void Session::end_preview() {
  if (take_back_preview()) emit shown_changed();
}

QString Session::undo_words() const {
  return history_.can_undo() ? words(history_.undo_step()->label) : QString();
}
QString Session::redo_words() const {
  return history_.can_redo() ? words(history_.redo_step()->label) : QString();
}

void Session::undo() {
  if (!history_.can_undo()) return;
  analysis_.reset();
  const Edit step = *history_.undo_step();
  const std::vector<AnyId> ids = history_.undo(*lab_);
  keeper_.undone(step);
  analyse_again();
  if (!concerns(ids, selection_)) select(ids);
}

void Session::redo() {
  if (!history_.can_redo()) return;
  analysis_.reset();
  const Edit step = *history_.redo_step();
  const std::vector<AnyId> ids = history_.redo(*lab_);
  keeper_.redone(step);
  analyse_again();
  if (!concerns(ids, selection_)) select(ids);
}

bool Session::is_selected(AnyId id) const {
  return std::find(selection_.begin(), selection_.end(), id) != selection_.end();
}

void Session::select(std::vector<AnyId> ids) {
  std::erase_if(ids, [this](AnyId id) { return !exists(*lab_, id); });
  if (ids == selection_) return;
  selection_ = std::move(ids);
  emit selection_changed();
}

void Session::set_exercise(ExerciseId exercise) {
  if (exercise == exercise_) return;
  exercise_ = exercise;
  emit exercise_changed();
  emit shown_changed();
}

QString Session::shown_name() const {
  if (!path_.isEmpty()) return QFileInfo(path_).fileName();
  return lab_->facts.title.empty() ? words(say(text::window_untitled)) : as_qt(lab_->facts.title);
}

void Session::start(Lab lab) {
  take(std::move(lab));
  keeper_.start(head(write_lab(*lab_)));
  emit started();
  analyse_again();
  emit exercise_changed();
  emit selection_changed();
}

bool Session::open(const QString& path) {
  const std::string name = path.toStdString();
  const auto bytes = read_file(name);
  if (!bytes) return tell(bytes.error()), false;
  auto loaded = read_document(*bytes, name);
  if (!loaded) return tell(loaded.error()), false;
  std::optional<FileLock> lock;
  const bool same = !path_.isEmpty() && QFileInfo(path_) == QFileInfo(path);
  if (same) lock = std::move(lock_);
  std::optional<Problem> held;
  if (!lock) {
    auto taken = FileLock::take(name);
    if (taken)
      lock.emplace(std::move(*taken));
    else
      held = taken.error();
  }
  take(std::move(loaded->lab));
  path_ = path;
  hash_ = loaded->content_hash;
  lock_ = std::move(lock);
  const QString folder = QFileInfo(path).absolutePath();
  const bool sealed = kHasLocks && lock_ && !lock_->is_held();
  read_only_ = sealed || held;
  keeper_.start(head(*bytes));
  emit started();
  analyse_again();
  emit exercise_changed();
  emit selection_changed();
  for (const Message& note : loaded->notes) tell(Notice::Kind::told, words(note), Notice::Until::other_lab);
  if (sealed)
    tell(Notice::Kind::caution, words(text::window_sealed_folder, folder.toStdString()),
         Notice::Until::other_lab);
  if (held)
    tell(Notice::Kind::caution, words(text::window_read_only, words(*held).toStdString()),
         Notice::Until::other_lab);
  return true;
}

bool Session::changed_outside() const {
  if (path_.isEmpty()) return false;
  const auto bytes = read_file(path_.toStdString());
  return bytes && content_hash(*bytes) != hash_;
}

bool Session::write(const QString& path, bool over) {
  const std::string bytes = write_lab(*lab_);
  SaveOptions options;
  options.keep_previous = true;
  if (!over && path == path_ && hash_ != 0) options.loaded_hash = hash_;
  keeper_.will_save(journal_base(path.toStdString(), bytes));
  const auto written = save_file(path.toStdString(), bytes, options);
  if (!written) return tell(written.error(), Notice::Until::saved), false;
  hash_ = content_hash(bytes);
  path_ = path;
  history_.mark_clean();
  keeper_.saved(head(bytes));
  emit document_changed();
  emit saved();
  return true;
}

JournalHead Session::head(std::string_view bytes) const {
  return {"snuglab", lab_->facts.uid, journal_base(path_.toStdString(), bytes)};
}

bool Session::recover(const std::string& journal) {
  auto recovered = snug::recover(journal);
  if (!recovered) return tell(recovered.error()), false;
  auto replayed = replay(*recovered);
  if (!replayed) return tell(replayed.error()), false;
  // This window may have opened the very file: its lock is our own.
  const bool is_ours =
      lock_ && !path_.isEmpty() && QFileInfo(path_) == QFileInfo(as_qt(replayed->base.document));
  std::optional<FileLock> lock;
  if (is_ours) {
    lock.swap(lock_);
  } else if (!replayed->base.document.empty()) {
    auto taken = FileLock::take(replayed->base.document);
    if (!taken) return tell(taken.error()), false;
    lock.emplace(std::move(*taken));
  }
  const JournalHead begun{"snuglab", replayed->lab.facts.uid, replayed->base};
  keeper_.go_on(std::move(*recovered), *replayed, begun);
  take(std::move(replayed->lab));
  history_ = std::move(replayed->history);
  path_ = as_qt(replayed->base.document);
  hash_ = replayed->base.hash;
  lock_ = std::move(lock);
  emit started();
  analyse_again();
  emit exercise_changed();
  emit selection_changed();
  if (replayed->stopped) tell(*replayed->stopped);
  return true;
}

bool Session::save() {
  if (path_.isEmpty()) return false;
  if (read_only_)
    return tell(Notice::Kind::caution, words(say(text::window_save_elsewhere, path_.toStdString())),
                Notice::Until::saved),
           false;
  return write(path_, false);
}

bool Session::save_over() { return !path_.isEmpty() && !read_only_ && write(path_, true); }

bool Session::save_as(const QString& path) {
  if (path == path_ && !read_only_) return save();
  auto taken = FileLock::take(path.toStdString());
  if (!taken) return tell(taken.error(), Notice::Until::saved), false;
  if (!write(path, true)) return false;
  lock_.emplace(std::move(*taken));
  read_only_ = false;
  emit document_changed();
  return true;
}

bool Session::reload() {
  const auto bytes = read_file(path_.toStdString());
  if (!bytes) return tell(bytes.error()), false;
  auto loaded = read_document(*bytes, path_.toStdString());
  if (!loaded) return tell(loaded.error()), false;
  Edit edit = difference(*lab_, loaded->lab);
  edit.label = say(text::window_reloaded, shown_name().toStdString());
  history_.seal();
  if (!perform(std::move(edit))) return false;
  hash_ = loaded->content_hash;
  history_.mark_clean();
  keeper_.saved(head(*bytes));
  emit document_changed();
  return true;
}

void Session::tell(const Problem& problem) {
  tell(problem, problem.file.empty() ? Notice::Until::step : Notice::Until::other_lab);
}

void Session::tell(const Problem& problem, Notice::Until until) {
  const bool is_placed = !problem.file.empty() || problem.line > 0 || !problem.path.empty();
  tell(Notice::Kind::error, is_placed ? words(problem) : whole_words(problem.message), until);
}

} // namespace snug
