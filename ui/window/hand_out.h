#pragma once
// One dialog for every document that is handed out, with a preview.

#include "core/layout/draw.h"
#include "core/layout/palette.h"
#include "ui/session/session.h"

#include <QByteArray>
#include <QDialog>

class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QStackedWidget;

namespace snug {

enum class Paper : std::uint8_t { svg, png, pdf, table_csv, table_markdown, table_html, findings_markdown };

struct PaperInfo {
  Paper paper;
  const Template& title;
  const char* ending; // of the file's name
};
std::span<const PaperInfo> papers();

// The octets of a document about an analysed lab.
Result<QByteArray> make_paper(const Analysis&, ExerciseId, Paper, Theme theme);

class HandOut : public QDialog {
  Q_OBJECT

 public:
  explicit HandOut(Session& session, QWidget* parent = nullptr);
  // Writes the chosen document; false after a sentence.
  bool write_to(const QString& path);
  Paper paper() const;
  void choose(Paper);

 private:
  void refresh();
  void take_title();
  void ask();
  Theme theme() const;
  ExerciseId exercise() const; // none: everything on
  Session& session_;
  QLineEdit* title_; // of the lab, which stands on what is handed out
  QComboBox* what_;
  QLabel *exercise_label_ = nullptr, *theme_label_ = nullptr;
  QComboBox* theme_;
  QComboBox* exercise_;
  QStackedWidget* preview_;
  QLabel* picture_;
  QPlainTextEdit* text_;
  QLabel* said_;
};

} // namespace snug
