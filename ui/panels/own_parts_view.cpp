#include "ui/panels/own_parts_view.h"

#include "core/text/own_parts_text.h"
#include "ui/canvas/part_gesture.h"
#include "ui/panels/panel_row.h"
#include "ui/panels/part_button.h"
#include "ui/session/words.h"

#include <QContextMenuEvent>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenu>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace snug {

namespace {

constexpr const char* kFile = "file"; // property of buttons

QString size_of(const Lab& part) {
  std::int64_t memory = 0;
  for (const Machine& m : part.machines)
    if (!m.carrier) memory += m.memory;
  return words(text::own_part_size, Count{static_cast<std::int64_t>(part.machines.size())}, show_mib(memory));
}

QString in_button(QString name) { return name.replace(QLatin1Char('&'), QStringLiteral("&&")); }

} // namespace

OwnPartsView::OwnPartsView(Session& session, Canvas& canvas, QWidget* parent)
    : QWidget(parent), session_(session), canvas_(canvas), folder_(own_parts_folder()),
      box_(new QVBoxLayout(this)) {
  setObjectName(QStringLiteral("own_parts"));
  box_->setContentsMargins(0, 8, 0, 0);
  read();
  rebuild();
}

void OwnPartsView::read() {
  OwnParts all = own_parts(folder_);
  parts_ = std::move(all.parts);
  problems_ = std::move(all.problems);
}

void OwnPartsView::rebuild() {
  line_ = nullptr;
  if (body_) {
    box_->removeWidget(body_);
    body_->hide();
    body_->deleteLater();
  }
  body_ = new QWidget(this);
  auto* column = new QVBoxLayout(body_);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  column->addWidget(wrapped_text(words(text::parts_own), "heading", body_));
  for (std::size_t i = 0; i < parts_.size(); ++i) column->addWidget(make_row(i));
  box_->addWidget(body_);
  body_->show();
  setVisible(!parts_.empty());
}

QWidget* OwnPartsView::make_row(std::size_t at) {
  const OwnPart& p = parts_[at];
  const std::string file = p.file;
  auto* row = new QWidget(body_);
  auto* across = new QHBoxLayout(row);
  across->setContentsMargins(0, 0, 0, 0);
  across->setSpacing(3);
  auto* button = new PartButton(
      canvas_, [this, lab = p.lab] { return place_own_part(session_, lab); }, row);
  button->setObjectName(QStringLiteral("own_part"));
  button->setText(in_button(as_qt(p.name())) + QLatin1Char('\n') + size_of(p.lab));
  button->setProperty(kFile, as_qt(file));
  button->setAccessibleName(as_qt(p.name()));
  button->setAccessibleDescription(size_of(p.lab));
  button->setToolTip(words(text::own_part_help, p.name()));
  button->installEventFilter(this);
  across->addWidget(button, 1);
  auto* more = new QToolButton(row);
  more->setObjectName(QStringLiteral("own_part_more"));
  more->setText(QStringLiteral("⋯"));
  more->setAccessibleName(words(text::own_part_more, p.name()));
  more->setToolTip(words(text::own_part_more, p.name()));
  more->setPopupMode(QToolButton::InstantPopup);
  auto* menu = new QMenu(more);
  menu->setAccessibleName(more->accessibleName());
  fill_one(*menu, file);
  more->setMenu(menu);
  across->addWidget(more);
  return row;
}

const OwnPart* OwnPartsView::part(const std::string& file) const {
  const auto at =
      std::find_if(parts_.begin(), parts_.end(), [&file](const OwnPart& p) { return p.file == file; });
  return at == parts_.end() ? nullptr : &*at;
}

PartButton* OwnPartsView::button(const std::string& file) const {
  for (auto* b : body_->findChildren<PartButton*>())
    if (b->property(kFile).toString() == as_qt(file)) return b;
  return nullptr;
}

void OwnPartsView::fill_one(QMenu& menu, const std::string& file) {
  menu.addAction(words(text::own_part_place), this, [this, file] { place(file); });
  menu.addAction(words(text::own_part_rename), this, [this, file] { rename(file); });
  menu.addAction(words(text::own_part_remove), this, [this, file] { remove(file); });
}

void OwnPartsView::fill(QMenu& menu) {
  menu.clear();
  for (const OwnPart& p : parts_) fill_one(*menu.addMenu(in_button(as_qt(p.name()))), p.file);
}

// Aimed by the keyboard or the pointer, whichever moves first.
void OwnPartsView::place(const std::string& file) {
  if (const OwnPart* p = part(file)) canvas_.begin_by_key(place_own_part(session_, p->lab));
}

void OwnPartsView::keep(Lab lab) {
  const std::string name = lab.facts.title;
  leave_name();
  keeping_ = std::move(lab);
  type_name(name, nullptr);
}

void OwnPartsView::rename(const std::string& file) {
  const OwnPart* p = part(file);
  if (!p) return;
  leave_name();
  renaming_ = file;
  PartButton* b = button(file);
  type_name(p->name(), b ? b->parentWidget() : nullptr);
}

void OwnPartsView::type_name(const std::string& name, QWidget* instead) {
  auto* column = static_cast<QVBoxLayout*>(body_->layout());
  line_ = new QLineEdit(as_qt(name), body_);
  line_->setObjectName(QStringLiteral("own_part_name"));
  line_->setAccessibleName(words(text::own_part_name));
  line_->setToolTip(words(text::own_part_name_help));
  line_->setPlaceholderText(words(text::own_part_name));
  line_->installEventFilter(this);
  column->insertWidget(instead ? column->indexOf(instead) : -1, line_);
  if (instead) instead->hide();
  connect(line_, &QLineEdit::editingFinished, this, &OwnPartsView::take_name);
  show();
  line_->show();
  line_->selectAll();
  line_->setFocus(Qt::OtherFocusReason);
}

// A name that is refused stays there to be mended, and the part with it.
void OwnPartsView::take_name() {
  if (!line_ || taking_) return;
  taking_ = true; // what is told may take the keyboard away
  const std::string name = line_->text().toStdString();
  const OwnPart* renamed = part(renaming_);
  Result<OwnPart> done = fail(text::own_part_no_name);
  if (keeping_) {
    keeping_->facts.title = name;
    done = keep_part(folder_, *keeping_);
  } else if (renamed) {
    done = rename_part(folder_, *renamed, name);
  }
  if (!done) session_.tell(done.error());
  if (done) {
    const bool is_new = std::exchange(keeping_, std::nullopt).has_value();
    renaming_.clear();
    read();
    rebuild();
    if (PartButton* b = button(done->file)) b->setFocus(Qt::OtherFocusReason);
    if (is_new) emit kept(as_qt(done->name()));
  }
  taking_ = false;
}

void OwnPartsView::leave_name() {
  keeping_.reset();
  const std::string file = std::exchange(renaming_, {});
  if (!line_) return;
  taking_ = true;
  rebuild();
  taking_ = false;
  if (PartButton* b = button(file)) b->setFocus(Qt::OtherFocusReason);
}

void OwnPartsView::remove(const std::string& file) {
  const OwnPart* p = part(file);
  if (!p) return;
  const OwnPart gone = *p;
  if (const auto done = remove_part(gone); !done) return session_.tell(done.error());
  read();
  rebuild();
  emit removed(gone);
}

void OwnPartsView::bring_back(const OwnPart& gone) {
  if (const auto done = snug::bring_back(folder_, gone); !done) return session_.tell(done.error());
  read();
  rebuild();
}

// F2 and Delete belong to the part that has the keyboard, not to what is chosen on the picture.
bool OwnPartsView::eventFilter(QObject* of, QEvent* event) {
  auto* key = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride
                  ? static_cast<QKeyEvent*>(event)
                  : nullptr;
  if (of == line_ && key && key->key() == Qt::Key_Escape) {
    if (event->type() == QEvent::KeyPress) leave_name();
    return event->accept(), true;
  }
  const std::string file = of->property(kFile).toString().toStdString();
  if (file.empty()) return QWidget::eventFilter(of, event);
  if (key && (key->key() == Qt::Key_F2 || key->key() == Qt::Key_Delete)) {
    event->accept();
    if (event->type() == QEvent::ShortcutOverride) return true;
    key->key() == Qt::Key_F2 ? rename(file) : remove(file);
    return true;
  }
  if (event->type() == QEvent::ContextMenu) {
    QMenu menu(this);
    fill_one(menu, file);
    menu.exec(static_cast<QContextMenuEvent*>(event)->globalPos());
    return true;
  }
  return QWidget::eventFilter(of, event);
}

} // namespace snug
