#pragma once
// The dialog in which a file is chosen: the desktop's own where it has one, else Qt's in our colours.

#include <QString>

#include <memory>

class QFileDialog;
class QWidget;

namespace snug {

struct FileWish {
  QString title;
  QString path;   // proposed; of an existing folder or of a file in one
  QString filter; // as QFileDialog takes it; empty: every file
  bool to_save = false;
};

std::unique_ptr<QFileDialog> file_dialog(QWidget* parent, const FileWish& wish);
// Asks; empty: nothing was chosen.
QString choose_file(QWidget* parent, const FileWish& wish);

} // namespace snug
