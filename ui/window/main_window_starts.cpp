// Labs that a person keeps to start from.

#include "core/document/new_lab.h"
#include "core/document/own_starts.h"
#include "core/document/read.h"
#include "core/text/own_starts_text.h"
#include "ui/session/words.h"
#include "ui/window/main_window.h"
#include "ui/window/notice_bar.h"
#include "ui/window/own_starts_view.h"

#include <QDir>
#include <QFileInfo>

namespace snug {

namespace {
QString topic() { return QStringLiteral("keep_start"); }
} // namespace

void MainWindow::start_own(const QString& path) {
  const auto read = load_file(path.toStdString());
  if (!read) return session_.tell(read.error());
  session_.start(copy_as_template(read->lab, random_uid()));
  for (const Message& note : read->notes)
    session_.tell(Notice::Kind::told, words(note), Notice::Until::other_lab);
}

void MainWindow::keep_start() {
  finish_typing();
  const std::string& title = session_.lab().facts.title;
  ask_start_name(title.empty() ? QFileInfo(session_.path()).completeBaseName() : as_qt(title));
}

void MainWindow::ask_start_name(const QString& proposed) {
  notice_->ask_line(topic(), {Notice::Kind::told, words(text::own_start_ask)},
                    {proposed, words(text::own_start_name), words(text::own_start_name_help),
                     words(text::own_start_keep), [this](const QString& name) { return put_start(name); }});
}

// A name that is taken leads to a question, and nothing is written before the answer.
bool MainWindow::put_start(const QString& name) {
  const OwnStarts all = own_starts(own_starts_folder().toStdString());
  const OwnStart* taken = start_named(all, name.toStdString());
  if (!taken) return write_start(name, false);
  const QString when = QLocale().toString(QFileInfo(as_qt(taken->file)).lastModified(), QLocale::ShortFormat);
  notice_->ask(topic(),
               {Notice::Kind::caution, words(text::own_start_taken, taken->name(), when.toStdString())},
               {{words(text::own_start_replace), [this, name] { write_start(name, true); }},
                {words(text::own_start_other_name), [this, name] { ask_start_name(name); }}});
  return true;
}

bool MainWindow::write_start(const QString& name, bool replace) {
  Lab lab = session_.lab();
  lab.facts.title = name.toStdString();
  const auto kept = snug::keep_start(own_starts_folder().toStdString(), std::move(lab),
                                     replace ? IfTaken::replace : IfTaken::refuse);
  if (!kept) return session_.tell(kept.error()), false;
  session_.tell(Notice::Kind::told, words(text::own_start_kept, kept->name(),
                                          QDir::toNativeSeparators(as_qt(kept->file)).toStdString()));
  return true;
}

} // namespace snug
