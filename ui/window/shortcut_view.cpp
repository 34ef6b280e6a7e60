#include "ui/window/shortcut_view.h"

#include "core/text/keys_text.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/panels/panel_row.h"
#include "ui/session/words.h"

#include <QAccessible>
#include <QAction>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace snug {

namespace {

constexpr int kFieldWidth = 150;

QString whole_name(const ShortcutTable::Row& row) {
  return words(text::keys_in_menu, row.menu.toStdString(), row.title.toStdString());
}

QString shown(const QKeySequence& keys) { return keys.toString(QKeySequence::NativeText); }

} // namespace

KeyField::KeyField(QWidget* parent) : QKeySequenceEdit(parent) {
  setFixedWidth(kFieldWidth);
  show_keys({});
}

void KeyField::show_keys(const QKeySequence& keys) {
  shown_ = keys;
  setKeySequence(keys);
  findChild<QLineEdit*>()->setPlaceholderText(words(text::keys_no_keys));
}

// Otherwise Esc would be kept from the window around it.
bool KeyField::event(QEvent* event) {
  const auto* key = event->type() == QEvent::ShortcutOverride ? static_cast<QKeyEvent*>(event) : nullptr;
  if (key && key->key() == Qt::Key_Escape && key->modifiers() == Qt::NoModifier)
    return event->ignore(), false;
  return QKeySequenceEdit::event(event);
}

void KeyField::keyPressEvent(QKeyEvent* event) {
  const bool plain = event->modifiers() == Qt::NoModifier;
  if (plain && event->key() == Qt::Key_Escape) return event->ignore();
  if (plain && event->key() == Qt::Key_Backspace) return emit pressed({});
  QKeySequenceEdit::keyPressEvent(event);
  if (keySequence().isEmpty()) return; // Ctrl and the like so far
  const QKeySequence one(keySequence()[0]);
  setKeySequence(one);
  emit pressed(one);
}

void KeyField::focusOutEvent(QFocusEvent* event) {
  QKeySequenceEdit::focusOutEvent(event);
  emit left();
}

ShortcutView::ShortcutView(ShortcutTable& table, QWidget* parent) : QDialog(parent), table_(table) {
  setObjectName(QStringLiteral("keys"));
  setWindowTitle(words(text::keys_title));
  resize(680, 620);
  auto* box = new QVBoxLayout(this);
  box->addWidget(wrapped_text(words(text::keys_help), "muted", this));
  filter_ = new QLineEdit(this);
  filter_->setObjectName(QStringLiteral("find_keys"));
  filter_->setPlaceholderText(words(text::keys_find));
  filter_->setAccessibleName(words(text::keys_find));
  filter_->setToolTip(words(text::keys_find));
  filter_->setClearButtonEnabled(true);
  box->addWidget(filter_);
  auto* inside = new QWidget;
  auto* list = new QVBoxLayout(inside);
  list->setContentsMargins(4, 4, 8, 4);
  list->setSpacing(4);
  for (const ShortcutTable::Row& row : table_.rows()) list->addWidget(make_line(row, inside));
  none_ = wrapped_text(words(text::keys_none_found), "muted", inside);
  none_->hide();
  list->addWidget(none_);
  list->addStretch();
  box->addWidget(scrolled(inside, this), 1);
  box->addWidget(make_said());
  auto* buttons = new QDialogButtonBox(this);
  QPushButton* all = buttons->addButton(words(text::keys_restore_all), QDialogButtonBox::ResetRole);
  all->setObjectName(QStringLiteral("restore_all"));
  all->setToolTip(words(text::keys_restore_all_help));
  QPushButton* close = buttons->addButton(words(text::notice_close), QDialogButtonBox::RejectRole);
  close->setToolTip(words(text::tip_close));
  for (QPushButton* b : {all, close}) b->setAutoDefault(false); // Enter belongs to the fields
  connect(all, &QPushButton::clicked, this, [this] {
    tell({});
    table_.restore_all();
  });
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  box->addWidget(buttons);
  connect(filter_, &QLineEdit::textChanged, this, &ShortcutView::find);
  connect(&table_, &ShortcutTable::changed, this, &ShortcutView::refresh);
  refresh();
}

// The window's actions may be gone already when a field loses the keyboard for the last time.
ShortcutView::~ShortcutView() {
  for (const Line& line : lines_)
    for (KeyField* field : line.fields) field->disconnect(this);
}

QWidget* ShortcutView::make_line(const ShortcutTable::Row& row, QWidget* parent) {
  Line line;
  line.row = &row;
  line.widget = new QWidget(parent);
  line.widget->setObjectName(row.action->objectName());
  auto* across = new QHBoxLayout(line.widget);
  across->setContentsMargins(0, 0, 0, 0);
  auto* name = new QLabel(whole_name(row), line.widget);
  name->setTextFormat(Qt::PlainText);
  across->addWidget(name, 1);
  for (int place = 0; place < row.places(); ++place) {
    auto* field = new KeyField(line.widget);
    const Template& of = place == 0 ? text::keys_of : text::keys_more_of;
    field->setAccessibleName(words(of, row.title.toStdString()));
    field->setToolTip(words(text::keys_help));
    if (auto* inner = field->findChild<QLineEdit*>()) inner->setAccessibleName(field->accessibleName());
    connect(field, &KeyField::pressed, this,
            [this, &row, place](const QKeySequence& keys) { wanted(row, place, keys); });
    connect(field, &KeyField::left, this, &ShortcutView::refresh);
    across->addWidget(field);
    line.fields.push_back(field);
  }
  line.restore = new QPushButton(words(text::keys_restore), line.widget);
  line.restore->setProperty("role", QStringLiteral("small"));
  line.restore->setAutoDefault(false);
  QStringList built;
  for (const QKeySequence& k : row.built) built << shown(k);
  const QString at_first = built.isEmpty() ? words(text::keys_no_keys) : built.join(QStringLiteral(", "));
  line.restore->setToolTip(words(text::keys_restore_of, row.title.toStdString(), at_first.toStdString()));
  line.restore->setAccessibleDescription(line.restore->toolTip());
  connect(line.restore, &QPushButton::clicked, this, [this, &row] { restore(row); });
  QSizePolicy stays = line.restore->sizePolicy();
  stays.setRetainSizeWhenHidden(true);
  line.restore->setSizePolicy(stays);
  across->addWidget(line.restore);
  lines_.push_back(line);
  return lines_.back().widget;
}

QWidget* ShortcutView::make_said() {
  said_ = new QFrame(this);
  said_->setObjectName(QStringLiteral("notice"));
  said_->setProperty("kind", QStringLiteral("caution"));
  auto* across = new QHBoxLayout(said_);
  sentence_ = wrapped_text({}, "", said_);
  across->addWidget(sentence_, 1);
  take_ = new QPushButton(words(text::keys_take), said_);
  take_->setObjectName(QStringLiteral("take"));
  leave_ = new QPushButton(words(text::keys_leave), said_);
  leave_->setObjectName(QStringLiteral("leave"));
  leave_->setToolTip(words(text::keys_leave_help));
  for (QPushButton* b : {take_, leave_}) {
    b->setAutoDefault(false);
    across->addWidget(b);
  }
  connect(take_, &QPushButton::clicked, this, [this] { answer(true); });
  connect(leave_, &QPushButton::clicked, this, [this] { answer(false); });
  said_->hide();
  return said_;
}

QString ShortcutView::said() const { return said_->isHidden() ? QString() : sentence_->text(); }

void ShortcutView::refresh() {
  for (const Line& line : lines_) {
    for (std::size_t place = 0; place < line.fields.size(); ++place)
      line.fields[place]->show_keys(table_.keys(*line.row, static_cast<int>(place)));
    line.restore->setVisible(table_.is_changed(*line.row));
  }
}

void ShortcutView::find(const QString& typed) {
  const QString wanted = typed.trimmed();
  bool any = false;
  for (const Line& line : lines_) {
    bool matches = whole_name(*line.row).contains(wanted, Qt::CaseInsensitive);
    for (const QKeySequence& k : line.row->action->shortcuts())
      matches = matches || shown(k).contains(wanted, Qt::CaseInsensitive);
    line.widget->setVisible(matches);
    any = any || matches;
  }
  none_->setVisible(!any);
}

void ShortcutView::wanted(const ShortcutTable::Row& row, int place, const QKeySequence& keys) {
  tell({});
  if (keys == table_.keys(row, place)) return refresh();
  if (keys.isEmpty()) return table_.change(row, place, {});
  if (const auto why = table_.refusal(keys)) {
    tell(words(*why));
    return refresh();
  }
  const auto take = [this, &row, place, keys] { table_.change(row, place, keys); };
  if (const ShortcutTable::Row* other = table_.holder(keys, row))
    return ask(
        say(text::keys_taken, shown(keys).toStdString(), other->title.toStdString(), row.title.toStdString()),
        *other, keys, take);
  take();
}

void ShortcutView::restore(const ShortcutTable::Row& row) {
  tell({});
  const auto take = [this, &row] { table_.restore(row); };
  for (const QKeySequence& k : row.built)
    if (const ShortcutTable::Row* other = table_.holder(k, row))
      return ask(
          say(text::keys_taken, shown(k).toStdString(), other->title.toStdString(), row.title.toStdString()),
          *other, k, take);
  take();
}

void ShortcutView::ask(const Message& sentence, const ShortcutTable::Row& holder, const QKeySequence& keys,
                       std::function<void()> take) {
  tell(words(sentence));
  pending_ = std::move(take);
  take_->setToolTip(words(text::keys_take_help, holder.title.toStdString(), shown(keys).toStdString()));
  take_->setAccessibleDescription(take_->toolTip());
  take_->show();
  leave_->show();
  take_->setFocus(Qt::OtherFocusReason);
}

void ShortcutView::tell(const QString& sentence) {
  pending_ = {};
  take_->hide();
  leave_->hide();
  sentence_->setText(sentence);
  said_->setAccessibleName(sentence);
  said_->setVisible(!sentence.isEmpty());
  if (sentence.isEmpty()) return;
  QAccessibleEvent said(said_, QAccessible::Alert);
  QAccessible::updateAccessibility(&said);
}

void ShortcutView::answer(bool take) {
  const std::function<void()> act = take ? std::exchange(pending_, {}) : std::function<void()>{};
  tell({});
  if (act) act();
  refresh();
  filter_->setFocus(Qt::OtherFocusReason);
}

} // namespace snug
