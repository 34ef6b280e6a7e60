#include "ui/panels/property_panel.h"

#include "core/gesture/set.h"
#include "core/model/field_text.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QStyle>
#include <QVBoxLayout>

namespace snug {

namespace {

constexpr int kLabelWidth = 118;

bool is_shown(const FieldInfo& f) { return f.owner == Owner::person && is_one_line(f); }

// All elements that a reference may name, with an entry for none.
void fill_references(QComboBox& box, const Lab& lab, const FieldInfo& f) {
  box.addItem(words(f.key == "carrier" ? say(text::property_pc, lab.pc.name) : say(text::property_none)),
              QString());
  for (const Kind kind : kinds_in_document()) {
    if ((f.id_kinds & kinds({kind})) == 0) continue;
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab); ++i) {
      const AnyId id = store.table->id(store.at(lab, i));
      box.addItem(as_qt(name_of(lab, id)), as_qt(to_text(id)));
    }
  }
}

void set_bad(QLineEdit& line, bool bad, const QString& why) {
  line.setProperty("bad", bad);
  line.setToolTip(why);
  line.style()->unpolish(&line);
  line.style()->polish(&line);
}

} // namespace

PropertyPanel::PropertyPanel(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("properties"));
  auto* whole = new QVBoxLayout(this);
  whole->setContentsMargins(0, 0, 0, 0);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  auto* inside = new QWidget(scroll);
  outer_ = new QVBoxLayout(inside);
  outer_->setContentsMargins(14, 12, 14, 12);
  title_ = new QLabel(inside);
  title_->setProperty("tone", QStringLiteral("title"));
  title_->setWordWrap(true);
  title_->setTextFormat(Qt::PlainText);
  about_ = new QLabel(inside);
  about_->setProperty("tone", QStringLiteral("muted"));
  about_->setWordWrap(true);
  about_->setTextFormat(Qt::PlainText);
  outer_->addWidget(title_);
  outer_->addWidget(about_);
  outer_->addStretch();
  scroll->setWidget(inside);
  whole->addWidget(scroll);
  connect(&session_, &Session::selection_changed, this, &PropertyPanel::rebuild);
  connect(&session_, &Session::started, this, &PropertyPanel::rebuild);
  connect(&session_, &Session::lab_changed, this, [this] {
    if (subjects() == subjects_)
      refresh();
    else
      rebuild();
  });
  rebuild();
}

// The selection when it is of one kind; nothing selected: the PC.
std::vector<AnyId> PropertyPanel::subjects() const {
  std::vector<AnyId> ids = session_.selection();
  if (ids.empty()) return {AnyId{Kind::pc, 0}};
  std::erase_if(ids, [&](AnyId id) { return id.kind != ids.front().kind; });
  return ids;
}

QWidget* PropertyPanel::editor(std::string_view key) const {
  for (const auto& [field, widget] : editors_)
    if (field->key == key) return widget;
  return nullptr;
}

void PropertyPanel::rebuild() {
  subjects_ = subjects();
  editors_.clear();
  if (body_) {
    body_->hide();
    body_->deleteLater();
  }
  body_ = new QWidget(this);
  auto* form = new QFormLayout(body_);
  form->setContentsMargins(0, 6, 0, 0);
  form->setRowWrapPolicy(QFormLayout::DontWrapRows);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  form->setLabelAlignment(Qt::AlignLeft);
  for (const FieldInfo& f : info_of(subjects_.front().kind).fields)
    if (is_shown(f)) add_field(*form, f);
  outer_->insertWidget(2, body_);
  body_->show();
  refresh();
}

void PropertyPanel::add_field(QFormLayout& form, const FieldInfo& f) {
  QWidget* editor = make_editor(f);
  editor->setObjectName(as_qt(f.key));
  editor->setAccessibleName(as_qt(f.label));
  editor->setToolTip(as_qt(f.help));
  auto* label = new QLabel(as_qt(f.label), body_);
  label->setProperty("tone", QStringLiteral("muted"));
  label->setToolTip(as_qt(f.help));
  label->setWordWrap(true);
  label->setMinimumWidth(kLabelWidth);
  label->setMaximumWidth(kLabelWidth);
  label->setBuddy(editor);
  form.addRow(label, editor);
  editors_.emplace_back(&f, editor);
}

QWidget* PropertyPanel::make_editor(const FieldInfo& f) {
  if (f.type == FieldType::boolean) return box_editor(f);
  if (f.type == FieldType::choice || f.type == FieldType::id) return choice_editor(f);
  return line_editor(f);
}

QWidget* PropertyPanel::box_editor(const FieldInfo& f) {
  auto* box = new QCheckBox(body_);
  connect(box, &QCheckBox::clicked, this, [this, &f](bool on) { set(f, Value(on)); });
  return box;
}

QWidget* PropertyPanel::choice_editor(const FieldInfo& f) {
  auto* box = new QComboBox(body_);
  box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  box->setMinimumContentsLength(8);
  if (f.type == FieldType::choice)
    for (const std::string_view word : f.choices) box->addItem(as_qt(word), as_qt(word));
  connect(box, &QComboBox::activated, this, [this, &f, box](int at) {
    const auto value = value_of_line(f, box->itemData(at).toString().toStdString());
    if (value) set(f, *value);
  });
  return box;
}

QWidget* PropertyPanel::line_editor(const FieldInfo& f) {
  auto* line = new QLineEdit(body_);
  connect(line, &QLineEdit::textEdited, this, [this, &f, line] { judge(f, *line); });
  connect(line, &QLineEdit::editingFinished, this, [this, &f, line] {
    if (filling_ || !line->isModified()) return;
    line->setModified(false);
    const auto value = value_of_line(f, line->text().toStdString());
    if (value)
      set(f, *value);
    else
      session_.tell(value.error());
    refresh();
  });
  return line;
}

void PropertyPanel::judge(const FieldInfo& f, QLineEdit& line) {
  const auto value = value_of_line(f, line.text().toStdString());
  set_bad(line, !value, value ? as_qt(f.help) : words(value.error().message));
}

std::optional<Value> PropertyPanel::common(const FieldInfo& f) const {
  std::optional<Value> value;
  for (const AnyId id : subjects_) {
    Value next = f.get(object_at(session_.lab(), id));
    if (value && !(*value == next)) return std::nullopt;
    value = std::move(next);
  }
  return value;
}

void PropertyPanel::show_value(const FieldInfo& f, QWidget& widget) {
  const std::optional<Value> value = common(f);
  if (auto* line = qobject_cast<QLineEdit*>(&widget)) {
    if (line->hasFocus() && line->isModified()) return;
    line->setText(value ? as_qt(line_of(f, *value)) : QString());
    line->setPlaceholderText(value ? QString() : words(text::property_mixed));
    set_bad(*line, false, as_qt(f.help));
  } else if (auto* box = qobject_cast<QCheckBox*>(&widget)) {
    box->setTristate(!value);
    box->setCheckState(!value ? Qt::PartiallyChecked : *value->as<bool>() ? Qt::Checked : Qt::Unchecked);
  } else if (auto* choice = qobject_cast<QComboBox*>(&widget)) {
    if (f.type == FieldType::id) {
      choice->clear();
      fill_references(*choice, session_.lab(), f);
    }
    choice->setCurrentIndex(value ? choice->findData(as_qt(line_of(f, *value))) : -1);
  }
}

void PropertyPanel::refresh() {
  filling_ = true;
  const AnyId first = subjects_.front();
  const StructInfo& table = info_of(first.kind);
  title_->setText(subjects_.size() == 1
                      ? as_qt(name_of(session_.lab(), first))
                      : words(text::property_several, Count{static_cast<std::int64_t>(subjects_.size())}));
  about_->setText(as_qt(table.noun));
  for (const auto& [field, widget] : editors_) show_value(*field, *widget);
  filling_ = false;
}

void PropertyPanel::set(const FieldInfo& f, const Value& value) {
  session_.seal();
  session_.perform(set_fields(session_.lab(), subjects_, f, value));
}

} // namespace snug
