#include "ui/panels/field_editor.h"

#include "core/model/field_text.h"
#include "core/text/reach_text.h"
#include "core/text/window_text.h"
#include "ui/panels/choice.h"
#include "ui/panels/panel_row.h"
#include "ui/session/words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

namespace snug {

namespace {

// All elements that a reference may name, with an entry for none.
void fill_references(QComboBox& box, const Index& index, const FieldInfo& f) {
  const Lab& lab = index.lab();
  box.addItem(words(f.key == "carrier" ? say(text::property_pc, lab.pc.name) : say(text::property_none)),
              QString());
  for (const auto& [kind, name] :
       {std::pair{Kind::everyone, &text::node_everyone}, {Kind::outside, &text::node_outside}})
    if ((f.id_kinds & kinds({kind})) != 0) box.addItem(words(*name), as_qt(to_text(AnyId{kind, 0})));
  for (const Kind kind : kinds_in_document()) {
    if ((f.id_kinds & kinds({kind})) == 0) continue;
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab); ++i) {
      if (f.key == "carrier" && !index.is_hypervisor(static_cast<std::uint32_t>(i))) continue;
      const AnyId id = store.table->id(store.at(lab, i));
      box.addItem(as_qt(name_of(lab, id)), as_qt(to_text(id)));
    }
  }
}

} // namespace

FieldEditor::FieldEditor(Session& session, const FieldInfo& field, QWidget* parent, Set set)
    : session_(session), field_(field), set_(std::move(set)) {
  if (field_.type == FieldType::boolean)
    make_box(parent);
  else if (field_.type == FieldType::choice || field_.type == FieldType::id)
    make_choice(parent);
  else
    make_line(parent);
  setParent(widget_);
  widget_->setObjectName(as_qt(field_.key));
  widget_->setAccessibleName(words(field_.label));
  widget_->setToolTip(help());
}

QString FieldEditor::help() const {
  const QString help = words(field_.help.text.empty() ? field_.label : field_.help);
  return in_force_ ? help + QLatin1Char('\n') +
                         words(text::property_in_force_help, shown_text(*in_force_).toStdString())
                   : help;
}

void FieldEditor::add_to(QFormLayout& form, QLabel& label) {
  label.setBuddy(widget_);
  form_ = &form;
  if (field_.type != FieldType::id) return form.addRow(&label, widget_);
  label.setMaximumWidth(QWIDGETSIZE_MAX);
  form.addRow(&label);
  form.addRow(widget_);
}

void FieldEditor::make_box(QWidget* parent) {
  auto* box = new QCheckBox(parent);
  widget_ = box;
  connect(box, &QCheckBox::stateChanged, this, [this](int state) { // also what assistive technology does
    if (!filling_ && state != Qt::PartiallyChecked) set_(Value(state == Qt::Checked));
  });
}

void FieldEditor::make_choice(QWidget* parent) {
  auto* box = new Choice(parent);
  widget_ = box;
  box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  box->setMinimumContentsLength(8);
  if (field_.type == FieldType::choice)
    for (const std::string_view word : field_.choices) box->addItem(words(Term{word}), as_qt(word));
  connect(box, &QComboBox::activated, this, [this, box](int at) {
    const auto value = value_of_line(field_, box->itemData(at).toString().toStdString());
    const QPointer<QObject> alive(this); // the panel may be made anew by what is set
    if (value)
      set_(*value);
    else
      session_.tell(value.error());
    if (alive) show_again(); // what was refused does not stay
  });
}

void FieldEditor::make_line(QWidget* parent) {
  auto* line = new QLineEdit(parent);
  widget_ = line;
  line->installEventFilter(this);
  connect(line, &QLineEdit::textEdited, this, [this, line] { judge(*line); });
  connect(line, &QLineEdit::editingFinished, this, [this, line] {
    if (filling_ || !line->isModified()) return;
    line->setModified(false);
    const auto value = value_of_line(field_, line->text().toStdString());
    if (!value && line->hasFocus()) { // it can be mended where it stands; below it is said why
      line->setModified(true);
      return judge(*line);
    }
    if (!value) {
      session_.tell(value.error());
      return show_again();
    }
    if (const auto told = bare_size(field_, line->text().toStdString()))
      session_.tell(Notice::Kind::told, words(*told));
    const QPointer<QObject> alive(this); // the panel may be made anew by what is set
    set_(*value);
    if (alive) show_again();
  });
}

// Esc leaves the field as it was. Keys that take back or do again are the field's while something is typed in
// it, else those of the lab.
bool FieldEditor::eventFilter(QObject* of, QEvent* event) {
  auto* line = qobject_cast<QLineEdit*>(of);
  if (line && !line->isModified() && event->type() == QEvent::ShortcutOverride) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return true;
    }
  }
  const bool pressed = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride;
  if (!line || !pressed || static_cast<QKeyEvent*>(event)->key() != Qt::Key_Escape || !line->isModified())
    return QObject::eventFilter(of, event);
  event->accept(); // not the window's
  if (event->type() == QEvent::ShortcutOverride) return true;
  line->setModified(false);
  show_again();
  line->selectAll();
  return true;
}

QString FieldEditor::shown_text(const Value& value) const {
  const QString text = as_qt(line_of(field_, value));
  return field_.unit == Unit::mib || field_.unit == Unit::hundredths ? in_locale(text) : text;
}

void FieldEditor::judge(QLineEdit& line) {
  const auto value = value_of_line(field_, line.text().toStdString());
  auto understood = echo_of_line(field_, line.text().toStdString());
  if (understood)
    for (Argument& size : understood->args)
      if (auto* text = std::get_if<std::string>(&size)) *text = in_locale(as_qt(*text)).toStdString();
  const QString why = value ? QString() : words(value.error().message);
  set_bad(line, !value, value ? help() : why);
  echo(value ? understood ? words(*understood) : QString() : why, !value);
}

// Below the line, for as long as there is something to tell.
void FieldEditor::echo(const QString& told, bool bad) {
  widget_->setAccessibleDescription(told);
  if (!echo_ && !told.isEmpty() && form_) {
    echo_ = new QLabel(widget_->parentWidget());
    echo_->setObjectName(widget_->objectName() + QStringLiteral("_echo"));
    echo_->setTextFormat(Qt::PlainText);
    echo_->setWordWrap(true);
    int row = 0;
    form_->getWidgetPosition(widget_, &row, nullptr);
    form_->insertRow(row + 1, echo_); // across both columns
  }
  if (!echo_) return;
  echo_->setProperty("tone", bad ? QStringLiteral("bad") : QStringLiteral("muted"));
  echo_->setText(told);
  wear_again(*echo_);
  if (form_ && form_->geometry().width() > 0) // the form was laid out for other words
    echo_->setMinimumHeight(told.isEmpty() ? 0 : echo_->heightForWidth(form_->geometry().width()));
  echo_->setVisible(!told.isEmpty());
}

QString FieldEditor::placeholder() const {
  if (!shown_) return words(text::property_mixed);
  return in_force_ ? words(text::property_in_force, shown_text(*in_force_).toStdString())
                   : words(text::property_unset);
}

void FieldEditor::show(const std::optional<Value>& value, const std::optional<Value>& in_force) {
  filling_ = true;
  shown_ = value;
  in_force_ = in_force;
  if (auto* line = qobject_cast<QLineEdit*>(widget_)) {
    if (!line->hasFocus() || !line->isModified()) {
      line->setText(value ? shown_text(*value) : QString());
      line->setCursorPosition(0); // of a long one the beginning is seen
      line->setPlaceholderText(placeholder());
      set_bad(*line, false, help());
      echo({}, false);
      if (in_force_)
        widget_->setAccessibleDescription(
            words(text::property_in_force_help, shown_text(*in_force_).toStdString()));
    }
  } else if (auto* box = qobject_cast<QCheckBox*>(widget_)) {
    box->setTristate(!value);
    box->setText(value ? QString() : words(text::property_mixed));
    box->setCheckState(!value ? Qt::PartiallyChecked : *value->as<bool>() ? Qt::Checked : Qt::Unchecked);
  } else if (auto* choice = qobject_cast<QComboBox*>(widget_)) {
    if (field_.type == FieldType::id) {
      choice->clear();
      fill_references(*choice, session_.analysis().index(), field_);
    }
    choice->setPlaceholderText(words(value ? text::property_unset : text::property_mixed));
    choice->setCurrentIndex(value ? choice->findData(as_qt(line_of(field_, *value))) : -1);
  }
  filling_ = false;
}

} // namespace snug
