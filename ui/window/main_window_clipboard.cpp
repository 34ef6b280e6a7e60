// What goes out by clipboard and comes in by it: machines, pictures, tables, whole labs.

#include "core/document/new_lab.h"
#include "core/document/read.h"
#include "core/gesture/clip.h"
#include "core/report/tables.h"
#include "core/text/clip_text.h"
#include "core/text/keep_text.h"
#include "core/text/window_text.h"
#include "ui/canvas/canvas.h"
#include "ui/panels/property_panel.h"
#include "ui/session/words.h"
#include "ui/window/hand_out.h"
#include "ui/window/main_window.h"
#include "ui/window/notice_bar.h"

#include <QClipboard>
#include <QDrag>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QMimeData>
#include <QMouseEvent>
#include <QStackedWidget>
#include <QStyleHints>
#include <QTabWidget>
#include <QToolButton>
#include <QUrl>

namespace snug {

namespace {

QByteArray octets(const std::string& s) { return QByteArray(s.data(), static_cast<qsizetype>(s.size())); }

// Whether the clipboard has it now.
bool put(QMimeData* formats, const QString& type) {
  QClipboard& clipboard = *QGuiApplication::clipboard();
  clipboard.setMimeData(formats);
  return clipboard.mimeData() && clipboard.mimeData()->hasFormat(type);
}

} // namespace

bool MainWindow::copy_chosen() {
  const auto text = copy_machines(session_.lab(), session_.selection());
  if (!text) return session_.tell(text.error()), false;
  if (!put(machine_formats(*text), as_qt(kClipType)))
    return session_.tell(Notice::Kind::error, words(text::clipboard_refused)), false;
  return true;
}

void MainWindow::cut_chosen() {
  if (!copy_chosen()) return;
  std::vector<AnyId> ids;
  for (const MachineId m : machines_chosen()) ids.emplace_back(m);
  Edit edit = remove_elements(session_.lab(), ids);
  edit.label = snug::say(text::clip_cut, edit.label.args.empty() ? Argument{} : edit.label.args.front());
  session_.seal();
  session_.perform(std::move(edit));
}

// Into the hypervisor that is chosen, unless it is what was copied; else on the PC.
MachineId MainWindow::paste_into(const std::string& bytes) const {
  const std::vector<MachineId> chosen = machines_chosen();
  if (chosen.size() != 1) return {};
  const Machine& m = *snug::find<Machine>(session_.lab(), chosen.front());
  const Role* role = snug::find<Role>(session_.lab(), m.role);
  const bool copied = copies_machine(bytes, session_.lab(), m.id);
  return role && role->is_hypervisor && !copied ? m.id : m.carrier;
}

void MainWindow::paste_chosen(const std::string& bytes) {
  if (pages_->currentIndex() == 0) start_blank(false);
  auto pasted = paste_machines(session_.lab(), bytes, paste_into(bytes), session_.exercise());
  if (!pasted) return session_.tell(pasted.error());
  session_.seal();
  QStringList lines{words(pasted->edit.label)};
  constexpr std::size_t kTold = 8; // a bar is no list
  const std::vector<Message>& changed = pasted->changed;
  for (std::size_t i = 0; i < changed.size() && i < kTold; ++i) lines << words(changed[i]);
  if (changed.size() > kTold)
    lines << words(text::clip_more, Count{static_cast<std::int64_t>(changed.size() - kTold)});
  if (!session_.perform(std::move(pasted->edit))) return;
  session_.select(pasted->made);
  notice_->show_notice(
      {lines.size() > 1 ? Notice::Kind::caution : Notice::Kind::told, lines.join(QLatin1Char('\n'))},
      {{words(text::notice_undo), [this] { session_.undo(); }}});
}

void MainWindow::copy_table() {
  const Table table = address_table(session_.analysis());
  auto* formats = new QMimeData;
  const std::string tabs = tab_separated(table);
  formats->setText(as_qt(tabs));
  formats->setData(QStringLiteral("text/tab-separated-values"), octets(tabs));
  formats->setData(QStringLiteral("text/markdown"), octets(markdown(table)));
  formats->setHtml(as_qt(html(table, session_.lab().facts.language)));
  formats->setData(QStringLiteral("text/csv"), octets(csv(table)));
  if (!put(formats, QStringLiteral("text/csv")))
    return session_.tell(Notice::Kind::error, words(text::clipboard_refused));
  session_.tell(Notice::Kind::told, words(text::copied_table));
}

// Nothing, with a sentence: it cannot be made.
QMimeData* MainWindow::picture() {
  const auto pixels = make_paper(session_.analysis(), session_.exercise(), Paper::png, Theme::light);
  const auto drawn = make_paper(session_.analysis(), session_.exercise(), Paper::svg, Theme::light);
  if (!pixels) return session_.tell(pixels.error()), nullptr;
  auto* formats = new QMimeData;
  formats->setImageData(QImage::fromData(*pixels));
  formats->setData(QStringLiteral("image/png"), *pixels);
  if (drawn) formats->setData(QStringLiteral("image/svg+xml"), *drawn);
  return formats;
}

bool MainWindow::eventFilter(QObject* of, QEvent* event) {
  if (of == hand_out_button_ && drags_picture(*hand_out_button_, *event)) return true;
  const bool in_panel = of == static_cast<QObject*>(properties_) || of == static_cast<QObject*>(tabs_);
  if (in_panel && event->type() == QEvent::ShortcutOverride &&
      static_cast<QKeyEvent*>(event)->matches(QKeySequence::SelectAll)) {
    event->accept();
    return true;
  }
  return QMainWindow::eventFilter(of, event);
}

bool MainWindow::drags_picture(QWidget& button, QEvent& event) {
  if (event.type() == QEvent::MouseButtonPress) picture_from_ = static_cast<QMouseEvent&>(event).pos();
  if (event.type() != QEvent::MouseMove) return false;
  const auto& mouse = static_cast<QMouseEvent&>(event);
  if ((mouse.buttons() & Qt::LeftButton) == 0 ||
      (mouse.pos() - picture_from_).manhattanLength() < QGuiApplication::styleHints()->startDragDistance())
    return false;
  QMimeData* formats = picture();
  if (!formats) return true;
  static_cast<QToolButton&>(button).setDown(false);
  auto* drag = new QDrag(this);
  constexpr int kWide = 240;
  drag->setPixmap(QPixmap::fromImage(qvariant_cast<QImage>(formats->imageData()))
                      .scaledToWidth(kWide, Qt::SmoothTransformation));
  drag->setMimeData(formats);
  drag->exec(Qt::CopyAction);
  return true;
}

void MainWindow::copy_picture() {
  QMimeData* formats = picture();
  if (!formats) return;
  QClipboard& clipboard = *QGuiApplication::clipboard();
  clipboard.setMimeData(formats);
  if (!clipboard.mimeData() || !clipboard.mimeData()->hasImage())
    return session_.tell(Notice::Kind::error, words(text::clipboard_refused));
  session_.tell(Notice::Kind::told, words(text::copied_picture));
}

// What comes from other programs is read as a file is, with the same limits (RELIABILITY 31).
void MainWindow::open_clipboard() {
  const QMimeData* offered = QGuiApplication::clipboard()->mimeData();
  if (offered && offered->hasUrls()) return open_dropped(offered->urls());
  const std::string bytes = offered ? offered->text().toStdString() : std::string();
  if (is_copied_machines(bytes)) return paste_chosen(bytes);
  if (bytes.empty()) return session_.tell(Notice::Kind::error, words(text::clipboard_no_text));
  auto lab = read_lab(bytes, english(snug::say(text::clipboard_name)));
  if (!lab) return session_.tell(lab.error());
  unless_unsaved([&] { session_.start(copy_as_template(*lab, random_uid())); });
}

} // namespace snug
