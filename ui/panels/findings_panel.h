#pragma once
// What core found: a sentence, why it matters, a button that repairs it. A click shows the place.

#include "core/layout/palette.h"
#include "ui/session/session.h"

#include <QTimer>
#include <QWidget>

class QLabel;
class QLineEdit;
class QVBoxLayout;
class QCheckBox;
class QToolButton;

namespace snug {

class FixButtons;
class WhenSeen;

class FindingsPanel : public QWidget {
  Q_OBJECT

 public:
  explicit FindingsPanel(Session& session, QWidget* parent = nullptr);
  void set_theme(Theme theme);
  int shown_count() const { return shown_; }
  // Stands over the rows unless somebody takes it to another place.
  QWidget& tools() const { return *tools_; }
  QLineEdit& filter() const { return *filter_; }
  const FixButtons& fixes() const { return *fixes_; }
  // The heading of a severity's findings, which folds them away; it is hidden where there are none.
  QToolButton& heading(Severity s) const { return *headings_[static_cast<std::size_t>(s)]; }
  // Shows a finding, known by its rule and its first place, and gives its row the keyboard focus.
  void show_finding(const QString& rule, AnyId place);

 signals:
  void place_wanted(snug::AnyId id);
  void promise_wanted(snug::PromiseId id); // of a finding about a promise
  void counted(int errors, int cautions, int notes);

 private:
  void renew();
  void count();
  void fill();
  void empty();
  void fill_group(Severity, int count);
  QWidget* row(const Finding&);
  bool matches(const Finding&) const;
  void ask_reason(QWidget* row, const Finding&);
  int focused_row() const; // counted from 0; -1: the focus is elsewhere
  void focus_row(int nth);

  Session& session_;
  Theme theme_ = Theme::light;
  QWidget* tools_;
  QLineEdit* filter_;
  QCheckBox* accepted_;
  QVBoxLayout* rows_;
  QLabel* none_;
  std::array<QToolButton*, 3> headings_{};
  std::array<std::vector<const Finding*>, 3> groups_; // what matches, while it is filled in
  int shown_ = 0;
  FixButtons* fixes_;
  QTimer settle_; // until the findings of a drag are counted
  WhenSeen* seen_;
};

} // namespace snug
