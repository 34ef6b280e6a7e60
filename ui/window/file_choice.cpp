#include "ui/window/file_choice.h"

#include "core/text/window_text.h"
#include "ui/session/words.h"

#include <QDir>
#include <QFileDialog>
#include <QFileIconProvider>
#include <QFileInfo>
#include <QGuiApplication>
#include <QHeaderView>
#include <QPainter>
#include <QPalette>
#include <QSplitter>
#include <QStandardPaths>
#include <QToolButton>
#include <QTreeView>

namespace snug {

namespace {

// Outlines of a folder and of a sheet, in the colour of words.
class PlainIcons : public QFileIconProvider {
 public:
  QIcon icon(IconType type) const override { return draw(type != QFileIconProvider::File); }
  QIcon icon(const QFileInfo& file) const override { return draw(file.isDir()); }

 private:
  static QIcon draw(bool folder) {
    constexpr int kSide = 32; // of a picture for screens of twice the density
    QPixmap picture(kSide, kSide);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(QGuiApplication::palette().color(QPalette::PlaceholderText), 2.5, Qt::SolidLine,
                        Qt::RoundCap, Qt::RoundJoin));
    if (folder)
      painter.drawPolygon(QPolygonF({{4, 8}, {12, 8}, {15, 12}, {28, 12}, {28, 26}, {4, 26}}));
    else
      painter.drawPolygon(QPolygonF({{8, 4}, {19, 4}, {25, 10}, {25, 28}, {8, 28}}));
    return picture;
  }
};

void say(QFileDialog& dialog, const char* button, const QString& text) {
  auto* b = dialog.findChild<QToolButton*>(QLatin1String(button));
  if (!b) return;
  b->setIcon({});
  b->setText(text);
  b->setToolButtonStyle(Qt::ToolButtonTextOnly);
  b->setMinimumSize(0, 0); // it was made for a picture
  b->setMaximumSize(QWIDGETSIZE_MAX, QWIDGETSIZE_MAX);
}

// Qt's own dialog: words and arrows instead of coloured pictures, columns as wide as what they say.
void dress(QFileDialog& dialog) {
  static PlainIcons icons; // outlives every dialog
  dialog.setIconProvider(&icons);
  dialog.setViewMode(QFileDialog::Detail);
  say(dialog, "backButton", QStringLiteral("←"));
  say(dialog, "forwardButton", QStringLiteral("→"));
  say(dialog, "toParentButton", QStringLiteral("↑"));
  say(dialog, "newFolderButton", words(text::file_new_folder));
  for (const char* name : {"listModeButton", "detailModeButton"})
    if (auto* b = dialog.findChild<QToolButton*>(QLatin1String(name))) b->hide();
  if (auto* split = dialog.findChild<QSplitter*>()) split->setSizes({150, 650});
  auto* list = dialog.findChild<QTreeView*>(QStringLiteral("treeView"));
  if (!list) return;
  list->header()->setStretchLastSection(false);
  list->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
  list->header()->setSectionResizeMode(0, QHeaderView::Stretch);
}

// A name alone, or nothing: among the person's documents, not where the program was started.
QFileInfo in_some_folder(const QString& path) {
  const QFileInfo wish(path);
  if (!path.isEmpty() && wish.isAbsolute()) return wish;
  const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
  return QFileInfo(QDir(QFileInfo::exists(documents) ? documents : QDir::homePath()), path);
}

} // namespace

std::unique_ptr<QFileDialog> file_dialog(QWidget* parent, const FileWish& wish) {
  const QFileInfo proposed = in_some_folder(wish.path);
  const bool is_folder = proposed.isDir();
  auto dialog = std::make_unique<QFileDialog>(
      parent, wish.title, is_folder ? proposed.filePath() : proposed.absolutePath(), wish.filter);
  dialog->setObjectName(QStringLiteral("file_dialog"));
  dialog->setAcceptMode(wish.to_save ? QFileDialog::AcceptSave : QFileDialog::AcceptOpen);
  dialog->setFileMode(wish.to_save ? QFileDialog::AnyFile : QFileDialog::ExistingFile);
  dress(*dialog);
  if (!is_folder) dialog->selectFile(proposed.fileName());
  dialog->resize(820, 520);
  return dialog;
}

QString choose_file(QWidget* parent, const FileWish& wish) {
  const auto dialog = file_dialog(parent, wish);
  return dialog->exec() == QDialog::Accepted ? dialog->selectedFiles().value(0) : QString();
}

} // namespace snug
