#include "core/document/new_lab.h"
#include "core/document/read.h"
#include "core/document/recovery.h"
#include "core/gesture/clip.h"
#include "core/text/keep_text.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"
#include "ui/window/hand_out.h"
#include "ui/window/main_window.h"
#include "ui/window/notice_bar.h"
#include "ui/window/shares.h"
#include "ui/window/sides.h"
#include "ui/window/start_page.h"

#include <QAbstractButton>
#include <QApplication>
#include <QCloseEvent>
#include <QDateTime>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QLocale>
#include <QMimeData>
#include <QScreen>
#include <QSplitter>
#include <QStackedWidget>
#include <QUrl>

namespace snug {

void MainWindow::keep_in(const QString& folder) {
  session_.keep_in(folder);
  journals_ = folder;
  offer_recovery();
}

// The newest first; what is left alone is offered again next time.
void MainWindow::offer_recovery() {
  for (const FoundJournal& found : find_journals(journals_.toStdString())) {
    auto journal = recover(found.path);
    if (!journal) continue;
    const std::string& document = journal->head.base.document;
    const QString what = document.empty() ? words(text::window_untitled) : as_qt(document);
    const auto since =
        std::chrono::duration_cast<std::chrono::milliseconds>(found.changed.time_since_epoch());
    const QString when =
        QLocale().toString(QDateTime::fromMSecsSinceEpoch(since.count()), QLocale::ShortFormat);
    const auto again = replay(*journal);
    if (again && again->again == 0) {
      discard(std::move(*journal));
      continue;
    }
    notice_->ask(
        QStringLiteral("recovery"),
        {Notice::Kind::caution, words(text::recover_question, what.toStdString(), when.toStdString())},
        {{words(text::recover_take),
          [this, path = found.path] { unless_unsaved([&] { session_.recover(path); }); }},
         {words(text::recover_drop), [this, path = found.path] {
            if (auto gone = recover(path)) discard(std::move(*gone));
            offer_recovery();
          }}});
    return;
  }
}

void MainWindow::remember_in(const QString& file) {
  if (const auto problem = settings_.keep_in(file))
    session_.tell(Notice::Kind::caution, words(problem->message), Notice::Until::never);
  take_place();
  take_keys();
  start_->refresh();
}

void MainWindow::take_place() {
  const Remembered& r = settings_.get();
  if (r.colours != colours_) choose_colours(r.colours);
  if (r.window.isValid()) {
    QList<QRect> screens;
    for (const QScreen* s : QGuiApplication::screens()) screens << s->availableGeometry();
    setGeometry(on_screens(r.window, screens));
  }
  if (r.maximised) setWindowState(windowState() | Qt::WindowMaximized);
  sides_->take(r);
  shares_->fold(r.below);
  if (r.down.size() == down_->count()) shares_->pull(r.down.at(1));
}

// Nobody is left to read a complaint: the window closes.
void MainWindow::remember_place() {
  static_cast<void>(settings_.change([this](Remembered& r) {
    r.maximised = isMaximized();
    r.window = r.maximised ? normalGeometry() : geometry();
    if (pages_->currentIndex() == 0) return; // the splitters were never laid out
    sides_->put(r);
    r.below = shares_->folded_by_person();
    r.down.clear();
    if (shares_->pulled() > 0) r.down = {down_->height() - shares_->pulled(), shares_->pulled()};
  }));
}

void MainWindow::remember_recent(const Result<void>& done) {
  if (done || std::exchange(told_not_kept_, true)) return;
  session_.tell(Notice::Kind::caution, words(text::settings_not_kept, words(done.error()).toStdString()),
                Notice::Until::never);
}

void MainWindow::finish_typing() {
  QWidget* field = QApplication::focusWidget();
  if (qobject_cast<QLineEdit*>(field) && isAncestorOf(field)) field->clearFocus();
}

bool MainWindow::session_ends(bool may_ask) {
  finish_typing();
  remember_place();
  ending_ = session_.keep_now();
  if (!ending_ && may_ask)
    unless_unsaved([this] {
      session_.close();
      ending_ = true;
    });
  return ending_;
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (ending_) return event->accept();
  event->ignore();
  unless_unsaved([this, event] {
    remember_place();
    session_.close();
    event->accept();
  });
}

// A button takes Space alone outside of dialogs.
void MainWindow::keyPressEvent(QKeyEvent* event) {
  auto* button = qobject_cast<QAbstractButton*>(focusWidget());
  const bool is_enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (!is_enter || !button || (event->modifiers() & ~Qt::KeypadModifier) != 0)
    return QMainWindow::keyPressEvent(event);
  button->click();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (takes(*event->mimeData())) event->acceptProposedAction();
}

void MainWindow::dragMoveEvent(QDragMoveEvent* event) {
  if (takes(*event->mimeData())) event->acceptProposedAction();
}

// Files anywhere; machines where no lab is open yet, else the picture takes them.
bool MainWindow::takes(const QMimeData& offered) const {
  return offered.hasUrls() || (pages_->currentIndex() == 0 && offered.hasFormat(as_qt(kClipType)));
}

void MainWindow::dropEvent(QDropEvent* event) {
  event->acceptProposedAction();
  if (!event->mimeData()->hasUrls())
    return paste_chosen(event->mimeData()->data(as_qt(kClipType)).toStdString());
  open_dropped(event->mimeData()->urls());
}

void MainWindow::open_dropped(const QList<QUrl>& urls) {
  if (urls.isEmpty()) return session_.tell(Notice::Kind::error, words(text::drop_nothing));
  const QUrl& url = urls.front();
  if (!url.isLocalFile())
    return session_.tell(Notice::Kind::error, words(text::drop_not_local, url.toString().toStdString()));
  unless_unsaved([this, path = url.toLocalFile(), count = urls.size()] {
    if (open_file(path) && count > 1)
      session_.tell(Notice::Kind::told, words(text::drop_several, std::to_string(count), path.toStdString()));
  });
}

} // namespace snug
