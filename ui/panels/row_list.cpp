#include "ui/panels/row_list.h"

#include "core/gesture/rows.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/panels/panel_row.h"
#include "ui/session/words.h"

#include <QFormLayout>
#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace snug {

namespace {

constexpr int kLabelWidth = 88;

QPushButton* small_button(const QString& words_of, const QString& name, QWidget* parent) {
  auto* button = new QPushButton(words_of, parent);
  button->setProperty("role", QStringLiteral("small"));
  button->setObjectName(name);
  return button;
}

FieldInfo item_of(const FieldInfo& list) {
  FieldInfo f = list;
  f.type = list.type == FieldType::prefixes ? FieldType::prefix : FieldType::id;
  f.optional = false;
  f.row = nullptr;
  return f;
}

} // namespace

bool is_row_list(const FieldInfo& f) {
  return f.owner == Owner::person &&
         (f.type == FieldType::rows || f.type == FieldType::ids || f.type == FieldType::prefixes);
}

RowList::RowList(Session& session, AnyId owner, const FieldInfo& list, QWidget* parent, FieldEditor::Set set)
    : QWidget(parent), session_(session), owner_(owner), list_(list), item_(item_of(list)),
      set_(std::move(set)) {
  setObjectName(QStringLiteral("list_") + as_qt(list.key));
  auto* box = new QVBoxLayout(this);
  box->setContentsMargins(0, 6, 0, 0);
  box->setSpacing(5);
  auto* top = new QHBoxLayout;
  auto* title = heading(words(list.label), this);
  title->setToolTip(words(list.help));
  top->addWidget(title, 1);
  const Term noun = list.row ? list.row->noun : list.label;
  auto* button = small_button(words(text::rows_add, noun), QStringLiteral("add_") + as_qt(list.key), this);
  button->setToolTip(words(text::tip_add));
  connect(button, &QPushButton::clicked, this, [this] { add(); });
  top->addWidget(button);
  box->addLayout(top);
}

void RowList::show_list(const std::optional<Value>& list) {
  const std::size_t before = items_.size();
  const bool differed = differ_;
  differ_ = !list.has_value();
  items_ = list && list->as_list() ? *list->as_list() : ValueList{};
  if (!body_ || before != items_.size() || differed != differ_) return rebuild();
  for (std::size_t i = 0; i < items_.size(); ++i)
    for (std::size_t k = 0; k < editors_[i].size(); ++k) {
      const RowValue* row = items_[i].as_row();
      editors_[i][k]->show(row ? row->fields[k] : items_[i]);
    }
}

void RowList::rebuild() {
  if (body_) {
    body_->hide();
    body_->deleteLater();
  }
  editors_.clear();
  body_ = new QWidget(this);
  auto* box = new QVBoxLayout(body_);
  box->setContentsMargins(0, 0, 0, 0);
  box->setSpacing(5);
  layout()->addWidget(body_);
  if (differ_) {
    auto* label = new QLabel(words(text::property_mixed), body_);
    label->setProperty("tone", QStringLiteral("muted"));
    box->addWidget(label);
  }
  for (std::size_t i = 0; i < items_.size(); ++i) add_row(i);
  body_->show();
}

void RowList::add_row(std::size_t at) {
  auto* frame = new QFrame(body_);
  frame->setObjectName(QStringLiteral("row"));
  body_->layout()->addWidget(frame);
  auto* form = new QFormLayout(frame);
  form->setContentsMargins(8, 6, 8, 6);
  form->setVerticalSpacing(4);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  editors_.emplace_back();
  if (!list_.row) {
    add_field(at, item_, 0, *frame);
  } else {
    std::size_t place = 0;
    for (const FieldInfo& f : list_.row->fields) add_field(at, f, place++, *frame);
  }
  auto* gone = small_button(
      words(text::rows_remove),
      QStringLiteral("remove_%1_%2").arg(as_qt(list_.key)).arg(static_cast<qulonglong>(at)), frame);
  gone->setToolTip(words(text::tip_remove_line));
  connect(gone, &QPushButton::clicked, this, [this, at] { remove(at); });
  auto* end = new QHBoxLayout;
  end->addStretch();
  end->addWidget(gone);
  form->addRow(end);
}

void RowList::add_field(std::size_t row, const FieldInfo& field, std::size_t place, QWidget& frame) {
  auto* editor =
      new FieldEditor(session_, field, &frame, [this, row, place](const Value& v) { change(row, place, v); });
  const RowValue* value = items_[row].as_row();
  editor->show(value ? value->fields[place] : items_[row]);
  editor->widget()->setObjectName(QStringLiteral("%1_%2_%3")
                                      .arg(as_qt(list_.key))
                                      .arg(static_cast<qulonglong>(row))
                                      .arg(as_qt(field.key)));
  auto* label = new QLabel(words(field.label), &frame);
  label->setProperty("tone", QStringLiteral("muted"));
  label->setToolTip(words(field.help));
  label->setWordWrap(true);
  label->setMinimumWidth(kLabelWidth);
  label->setMaximumWidth(kLabelWidth);
  editor->add_to(*qobject_cast<QFormLayout*>(frame.layout()), *label);
  editors_[row].push_back(editor);
}

void RowList::change(std::size_t row, std::size_t place, const Value& value) {
  if (row >= items_.size()) return;
  ValueList items = items_;
  if (const RowValue* before = items[row].as_row()) {
    RowValue after = *before;
    after.fields[place] = value;
    items[row] = Value::row(std::move(after));
  } else {
    items[row] = value;
  }
  set_(Value::list(std::move(items)));
}

void RowList::add() {
  auto item = new_item(session_.lab(), owner_, list_);
  if (!item) return session_.tell(item.error());
  ValueList items = items_;
  items.push_back(std::move(*item));
  set_(Value::list(std::move(items)));
}

void RowList::remove(std::size_t at) {
  if (at >= items_.size()) return;
  ValueList items = items_;
  items.erase(items.begin() + static_cast<std::ptrdiff_t>(at));
  set_(Value::list(std::move(items)));
}

} // namespace snug
