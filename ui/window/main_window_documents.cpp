#include "core/document/new_lab.h"
#include "core/document/read.h"
#include "core/embedded/embedded.h"
#include "core/probe/facts.h"
#include "core/probe/pc_element.h"
#include "core/report/escape.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"
#include "ui/window/file_choice.h"
#include "ui/window/hand_out.h"
#include "ui/window/main_window.h"
#include "ui/window/notice_bar.h"
#include "ui/window/start_page.h"

#include <QDir>
#include <QFileInfo>
#include <QFileSystemWatcher>
#include <QMessageBox>
#include <QPushButton>
#include <QStackedWidget>

namespace snug {

bool MainWindow::open_file(const QString& path) {
  if (!session_.open(path)) return false;
  remember_recent(settings_.add_recent(path));
  return true;
}

void MainWindow::start_sample(std::string_view name) {
  const EmbeddedFile* file = find_sample(name);
  if (!file) return;
  const auto lab = read_lab(file->bytes, file->name);
  if (!lab) return session_.tell(lab.error());
  session_.start(copy_as_template(*lab, random_uid()));
}

void MainWindow::start_blank(bool this_computer) {
  Lab lab = blank_lab(random_uid());
  if (this_computer) put_facts(lab, probe(this_pc()));
  session_.start(std::move(lab));
}

void MainWindow::show_start() {
  start_->refresh();
  show_page(0);
}

// Where this lab lies, else the one that was opened last.
QString MainWindow::usual_folder() const {
  const QStringList& recent = settings_.get().recent;
  const QString beside = !session_.path().isEmpty() ? session_.path() : recent.value(0);
  return beside.isEmpty() ? QString() : QFileInfo(beside).path();
}

void MainWindow::ask_open() {
  unless_unsaved([this] {
    const QString path = choose_file(
        this, {words(text::act_open).remove(QLatin1Char('&')), usual_folder(), words(text::file_filter)});
    if (!path.isEmpty()) open_file(path);
  });
}

bool MainWindow::save() {
  finish_typing();
  return session_.path().isEmpty() || session_.is_read_only() ? save_as() : session_.save();
}

bool MainWindow::save_as() {
  finish_typing();
  const QString proposed = as_qt(FileNames().next(session_.shown_name().toStdString(), ".snuglab"));
  QString path = choose_file(
      this, {words(text::act_save_as).remove(QLatin1Char('&')),
             session_.path().isEmpty() ? QDir(usual_folder()).filePath(proposed) : session_.path(),
             words(text::file_filter), true});
  if (path.isEmpty()) return false;
  if (QFileInfo(path).suffix().isEmpty()) path += QStringLiteral(".snuglab");
  if (!session_.save_as(path)) return false;
  session_.tell(Notice::Kind::told, words(text::saved_as, path.toStdString()));
  remember_recent(settings_.add_recent(path));
  return true;
}

// Modal, because going on would lose work.
void MainWindow::unless_unsaved(const std::function<void()>& then) {
  finish_typing();
  if (!session_.is_dirty()) return then();
  QMessageBox box(QMessageBox::NoIcon, QStringLiteral("Snuglab"),
                  words(text::unsaved_question, session_.shown_name().toStdString()), QMessageBox::NoButton,
                  this);
  const QAbstractButton* keep = box.addButton(words(text::unsaved_save), QMessageBox::AcceptRole);
  const QAbstractButton* drop = box.addButton(words(text::unsaved_drop), QMessageBox::DestructiveRole);
  box.addButton(words(text::unsaved_back), QMessageBox::RejectRole);
  box.exec();
  if (box.clickedButton() == drop || (box.clickedButton() == keep && save())) then();
}

void MainWindow::hand_out() { HandOut(session_, this).exec(); }

// The folder too: an atomic save by another program takes the file out of the watch (CONVENTIONS 19).
void MainWindow::watch_file() {
  const QStringList watched = watcher_->files() + watcher_->directories();
  if (session_.path().isEmpty()) {
    if (!watched.isEmpty()) watcher_->removePaths(watched);
    return;
  }
  const QString folder = QFileInfo(session_.path()).absolutePath();
  if (!watched.contains(folder) && !watched.isEmpty()) watcher_->removePaths(watched);
  watcher_->addPath(folder);
  if (QFileInfo::exists(session_.path())) watcher_->addPath(session_.path());
}

// The watch may hold what the file was before, where that goes on under another name (a second link, NAME~):
// it is taken anew first, so that no change falls between watching and reading. Read when it is quiet: a file
// that is written in place is empty for a moment.
void MainWindow::file_changed() {
  if (watcher_->files().contains(session_.path())) watcher_->removePath(session_.path());
  watch_file();
  settle_->start();
}

void MainWindow::look_at_file() {
  if (session_.path().isEmpty() || !QFileInfo::exists(session_.path())) return;
  if (!session_.changed_outside()) return notice_->withdraw(QStringLiteral("changed"));
  if (!session_.is_dirty()) {
    if (session_.reload())
      notice_->show_notice(
          {Notice::Kind::told, words(text::changed_read_again, session_.shown_name().toStdString())});
    return;
  }
  notice_->ask(QStringLiteral("changed"),
               {Notice::Kind::caution, words(text::changed_outside, session_.shown_name().toStdString())},
               {{words(text::changed_take_theirs), [this] { session_.reload(); }},
                {words(text::changed_keep_mine), [this] { session_.save_over(); }},
                {words(text::changed_save_copy), [this] { save_as(); }}});
}

} // namespace snug
