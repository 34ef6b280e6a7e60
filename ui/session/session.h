#pragma once
// One open lab: what it is, what is known of it, how it changes. Widgets ask it and tell it; it decides
// nothing that core can decide.

#include "core/analyse/analyse.h"
#include "core/document/lock.h"
#include "core/edit/history.h"
#include "ui/session/keeper.h"

#include <QObject>
#include <QString>

#include <memory>
#include <vector>

namespace snug {

// A sentence for the bar over the canvas.
struct Notice {
  enum class Kind : std::uint8_t { told, caution, error };
  // What makes it old: the next step, the file written, another lab; never: only who closes it.
  enum class Until : std::uint8_t { step, saved, other_lab, never };
  Kind kind = Kind::told;
  QString text;
  Until until = Until::step;
};

class Session : public QObject {
  Q_OBJECT

 public:
  explicit Session(QObject* parent = nullptr);
  ~Session() override;

  const Lab& lab() const { return *lab_; }
  const Analysis& analysis() const { return *analysis_; }
  // What the picture shows: while something is dragged, the state after the drop.
  const Analysis& shown() const { return is_previewing() ? *preview_->analysis : *analysis_; }
  bool is_previewing() const { return preview_ && preview_->analysis; }
  // What is to be marked as chosen: of what is shown before a drop, what is in the hand.
  const std::vector<AnyId>& marked() const {
    return is_previewing() && preview_->in_hand ? *preview_->in_hand : selection_;
  }
  // In which elements what is shown differs from the lab.
  std::vector<AnyId> previewed() const {
    return is_previewing() ? touched(*preview_->back) : std::vector<AnyId>{};
  }

  // Every change. A refusal is told as a notice; then nothing has changed. With `merge` it joins the last
  // step.
  bool perform(Edit edit, bool merge = false);
  bool perform(Result<Edit> edit);
  // Ends merging: what is typed or dragged next is a step of its own.
  void seal() { history_.seal(); }
  // Shows the lab as after `edit`; nothing of it enters the lab or its history (DECISIONS 2). `in_hand`: what
  // is moved; null: what is chosen.
  void preview(const Edit& edit, std::optional<std::vector<AnyId>> in_hand = std::nullopt);
  void end_preview();

  bool can_undo() const { return history_.can_undo(); }
  bool can_redo() const { return history_.can_redo(); }
  QString undo_words() const; // "Move tickets-1 to deck-b"; empty: none
  QString redo_words() const;
  void undo();
  void redo();

  const std::vector<AnyId>& selection() const { return selection_; }
  bool is_selected(AnyId) const;
  void select(std::vector<AnyId> ids);
  ExerciseId exercise() const { return exercise_; } // none: everything on
  void set_exercise(ExerciseId);

  // Documents. A lab without path is untitled.
  const QString& path() const { return path_; }
  QString shown_name() const; // file name, else the lab's title
  bool is_dirty() const { return !history_.is_clean(); }
  bool is_read_only() const { return read_only_; }
  // Takes over, untitled: a blank lab or a copy of a template. Unchanged, there is nothing to lose.
  void start(Lab lab);
  bool open(const QString& path);
  bool save();
  // Refuses a file that another window holds.
  bool save_as(const QString& path);
  // Whether the file on disk is another one than was read or written last.
  bool changed_outside() const;
  // Reads the file again, as one step that can be undone.
  bool reload();
  // Writes over a file that another program changed.
  bool save_over();

  // Every step is kept in a journal in this folder (DECISIONS 29). Empty: none is.
  void keep_in(const QString& folder) { keeper_.set_folder(folder.toStdString()); }
  // Opens what a journal holds, as it was at the last step, with its history.
  bool recover(const std::string& journal);
  // Whether nothing is lost should the program end now: all is saved, or on the disk in the journal.
  bool keep_now() { return !is_dirty() || keeper_.keep_now(); }
  // The person is done with this lab: its journal goes.
  void close() { keeper_.end(); }

  void tell(Notice::Kind kind, const QString& text, Notice::Until until = Notice::Until::step) {
    emit told({kind, text, until});
  }
  // One of a file is there until another lab is, one of an edit until the next step.
  void tell(const Problem& problem);
  void tell(const Problem& problem, Notice::Until until);

 signals:
  void lab_changed();   // lab and analysis
  void shown_changed(); // what the picture shows
  void selection_changed();
  void exercise_changed();
  void document_changed(); // path, dirty mark, read-only
  void saved();            // the file was written
  void started();          // another lab altogether
  void moved_on();         // the person looks at something else: what was said of a step is old
  void told(const snug::Notice&);

 private:
  // One copy serves all moves of a drag, until the lab changes.
  struct Preview {
    explicit Preview(const Lab& from) : lab(from) {}
    Lab lab;
    std::optional<Edit> back; // leads from `lab` to the session's; none: they are equal
    std::optional<Analysis> analysis;
    std::optional<std::vector<AnyId>> in_hand;
  };
  bool take_back_preview(); // false: none was shown
  void take(Lab lab);
  JournalHead head(std::string_view bytes) const;
  void analyse_again();
  void drop_gone();
  bool write(const QString& path, bool over);

  std::unique_ptr<Lab> lab_;
  std::unique_ptr<Analysis> analysis_;
  std::unique_ptr<Preview> preview_;
  History history_;
  std::vector<AnyId> selection_;
  ExerciseId exercise_;
  QString path_;
  std::optional<FileLock> lock_;
  std::uint64_t hash_ = 0;
  bool read_only_ = false;
  Keeper keeper_;
};

} // namespace snug
