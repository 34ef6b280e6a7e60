#include "ui/panels/property_panel.h"

#include "core/analyse/in_force.h"
#include "core/gesture/move.h"
#include "core/gesture/set.h"
#include "core/model/field_text.h"
#include "core/model/use.h"
#include "core/text/window_text.h"
#include "ui/panels/field_editor.h"
#include "ui/panels/memory_slider.h"
#include "ui/panels/row_list.h"
#include "ui/panels/tick_list.h"
#include "ui/panels/when_seen.h"
#include "ui/session/words.h"

#include <QApplication>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

namespace snug {

namespace {

constexpr int kLabelWidth = 104;

// Where a machine stands is for the hand on the picture.
bool is_place(const FieldInfo& f) { return f.key == "band" || f.key == "order"; }
bool is_line(const FieldInfo& f) { return f.owner == Owner::person && is_one_line(f) && !is_place(f); }

} // namespace

PropertyPanel::PropertyPanel(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("properties"));
  auto* whole = new QVBoxLayout(this);
  whole->setContentsMargins(0, 0, 0, 0);
  scroll_ = new QScrollArea(this);
  scroll_->setWidgetResizable(true);
  scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll_->setFocusPolicy(Qt::NoFocus);
  auto* inside = new QWidget(scroll_);
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
  scroll_->setWidget(inside);
  whole->addWidget(scroll_);
  auto* seen = new WhenSeen(*this, [this] { show_again(); });
  const auto other = [this, seen] {
    other_ = true;
    seen->renew();
  };
  connect(&session_, &Session::selection_changed, this, other);
  connect(&session_, &Session::started, this, other);
  connect(&session_, &Session::lab_changed, seen, &WhenSeen::renew);
  connect(&session_, &Session::exercise_changed, seen, &WhenSeen::renew);
}

void PropertyPanel::set_theme(Theme theme) {
  theme_ = theme;
  fill_parts();
}

// The selection when it is of one kind; nothing selected: the PC.
std::vector<AnyId> PropertyPanel::subjects() const {
  std::vector<AnyId> ids = session_.selection();
  if (ids.empty()) return {AnyId{Kind::pc, 0}};
  std::erase_if(ids, [&](AnyId id) { return id.kind != ids.front().kind; });
  return ids;
}

QWidget* PropertyPanel::editor(std::string_view key) const {
  for (const FieldEditor* e : editors_)
    if (e->field().key == key) return e->widget();
  return nullptr;
}

void PropertyPanel::edit(std::string_view key) {
  wanted_ = key;
  if (!other_ && isVisible()) take_wanted();
}

void PropertyPanel::take_wanted() {
  QWidget* field = editor(std::exchange(wanted_, {}));
  if (!field) return;
  field->setFocus(Qt::ShortcutFocusReason);
  if (auto* line = qobject_cast<QLineEdit*>(field)) line->selectAll();
  scroll_->ensureWidgetVisible(field);
}

std::vector<bool> PropertyPanel::used() const {
  std::vector<bool> out;
  for (const FieldInfo& f : info_of(subjects_.front().kind).fields)
    out.push_back(std::any_of(subjects_.begin(), subjects_.end(), [&](AnyId id) {
      return is_used(session_.lab(), id, f) || !f.is_default(object_at(session_.lab(), id));
    }));
  return out;
}

bool PropertyPanel::is_used_here(const FieldInfo& f) const {
  return used_[static_cast<std::size_t>(&f - info_of(subjects_.front().kind).fields.data())];
}

namespace {

// What the keyboard can be in, from the top.
std::vector<QWidget*> stops_in(const QWidget& body) {
  std::vector<QWidget*> out;
  for (QWidget* w : body.findChildren<QWidget*>())
    if (w->isVisibleTo(&body) && w->isEnabled() && (w->focusPolicy() & Qt::TabFocus) != 0) out.push_back(w);
  return out;
}

} // namespace

// A keyboard that was here stays here, though everything is made anew: in the field or button of the same
// name, else in what stands where it was; with another element in its first field.
void PropertyPanel::show_again() {
  const bool other = std::exchange(other_, false) || subjects() != subjects_;
  const bool has_keyboard = body_ && wanted_.empty() && body_->isAncestorOf(QApplication::focusWidget());
  const QString name = has_keyboard ? QApplication::focusWidget()->objectName() : QString();
  std::size_t place = 0;
  if (has_keyboard) {
    const std::vector<QWidget*> before = stops_in(*body_);
    place = static_cast<std::size_t>(std::find(before.begin(), before.end(), QApplication::focusWidget()) -
                                     before.begin());
  }
  const int at = scroll_->verticalScrollBar()->value();
  if (other || used() != used_)
    rebuild();
  else
    refresh();
  if (!other) scroll_->verticalScrollBar()->setValue(at);
  if (!has_keyboard) return;
  const std::vector<QWidget*> stops = stops_in(*body_);
  if (stops.empty()) return;
  const auto same = std::find_if(stops.begin(), stops.end(), [&](const QWidget* w) {
    return !other && !name.isEmpty() && w->objectName() == name;
  });
  QWidget* to = same != stops.end()          ? *same
                : other && !editors_.empty() ? editors_.front()->widget()
                : other                      ? stops.front()
                                             : stops[std::min(place, stops.size() - 1)];
  if (!to->hasFocus()) to->setFocus(Qt::OtherFocusReason);
}

void PropertyPanel::rebuild() {
  subjects_ = subjects();
  used_ = used();
  editors_.clear();
  lists_.clear();
  ticks_.clear();
  slider_ = nullptr;
  parts_ = nullptr;
  if (body_) {
    body_->hide();
    body_->deleteLater();
  }
  body_ = new QWidget(outer_->parentWidget());
  auto* column = new QVBoxLayout(body_);
  column->setContentsMargins(0, 0, 0, 0);
  add_ways(*column);
  add_fields(*column);
  add_parts(*column);
  add_lists(*column);
  outer_->insertWidget(2, body_);
  body_->show();
  refresh();
  scroll_->verticalScrollBar()->setValue(0);
  if (!wanted_.empty()) take_wanted();
}

namespace {

QFormLayout* form_of_fields() {
  auto* form = new QFormLayout;
  form->setContentsMargins(0, 6, 0, 0);
  form->setRowWrapPolicy(QFormLayout::DontWrapRows);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  form->setLabelAlignment(Qt::AlignLeft);
  return form;
}

} // namespace

// A rare field that nobody has set.
bool PropertyPanel::is_folded(const FieldInfo& f) const {
  return f.rare && std::all_of(subjects_.begin(), subjects_.end(),
                               [&](AnyId id) { return f.is_default(object_at(session_.lab(), id)); });
}

void PropertyPanel::add_fields(QVBoxLayout& column) {
  auto* form = form_of_fields();
  column.addLayout(form);
  for (const FieldInfo& f : info_of(subjects_.front().kind).fields)
    if (is_line(f) && is_used_here(f) && !is_folded(f)) add_field(*form, f);
  add_rare(column);
}

void PropertyPanel::add_rare(QVBoxLayout& column) {
  const auto fields = info_of(subjects_.front().kind).fields;
  const auto is_rare = [&](const FieldInfo& f) { return is_line(f) && is_used_here(f) && is_folded(f); };
  const auto count = std::count_if(fields.begin(), fields.end(), is_rare);
  if (count == 0) return;
  auto* more = new QPushButton(body_);
  more->setObjectName(QStringLiteral("more_fields"));
  more->setProperty("role", QStringLiteral("link"));
  more->setCheckable(true);
  more->setToolTip(words(text::property_more_tip));
  auto* below = new QWidget(body_);
  auto* form = form_of_fields();
  below->setLayout(form);
  for (const FieldInfo& f : fields)
    if (is_rare(f)) add_field(*form, f);
  const auto turn = [this, more, below, count](bool on) {
    more_ = on;
    below->setVisible(on);
    more->setText(on ? words(text::property_fewer) : words(text::property_more, Count{count}));
  };
  connect(more, &QPushButton::toggled, this, turn);
  column.addWidget(more, 0, Qt::AlignLeft);
  column.addWidget(below);
  more->setChecked(more_);
  turn(more_);
}

void PropertyPanel::add_field(QFormLayout& form, const FieldInfo& f) {
  auto* editor = new FieldEditor(session_, f, body_, [this, &f](const Value& v) { set(f, v); });
  auto* label =
      new QLabel(f.unit == Unit::percent ? words(text::property_percent, f.label) : words(f.label), body_);
  label->setProperty("tone", QStringLiteral("muted"));
  label->setToolTip(words(f.help));
  label->setWordWrap(true);
  label->setMinimumWidth(kLabelWidth);
  label->setMaximumWidth(kLabelWidth);
  editor->add_to(form, *label);
  editors_.push_back(editor);
  if (f.key != "memory" || subjects_.size() != 1 || subjects_.front().kind != Kind::machine) return;
  slider_ = new MemorySlider(session_, body_);
  form.addRow(slider_);
}

void PropertyPanel::add_lists(QVBoxLayout& column) {
  for (const FieldInfo& f : info_of(subjects_.front().kind).fields) {
    if (!is_row_list(f) || !is_used_here(f)) continue;
    if (TickList::fits(session_.lab(), f)) {
      add_ticks(column, f);
      continue;
    }
    auto* list =
        new RowList(session_, subjects_.front(), f, body_, [this, &f](const Value& v) { set(f, v); });
    column.addWidget(list);
    lists_.emplace_back(&f, list);
  }
}

void PropertyPanel::add_ticks(QVBoxLayout& column, const FieldInfo& f) {
  auto* list = new TickList(session_, f, body_, [this, &f](AnyId id, bool on) { tick(f, id, on); });
  column.addWidget(list);
  ticks_.emplace_back(&f, list);
}

namespace {

ValueList ids_in(const FieldInfo& f, const Lab& lab, AnyId owner) {
  const Value value = f.get(object_at(lab, owner));
  return value.as_list() ? *value.as_list() : ValueList{};
}

bool holds(const ValueList& list, AnyId id) {
  return std::any_of(list.begin(), list.end(), [id](const Value& v) { return *v.as<AnyId>() == id; });
}

} // namespace

// What an exercise has on takes carriers along.
void PropertyPanel::tick(const FieldInfo& f, AnyId id, bool on) {
  const AnyId first = subjects_.front();
  if (first.kind == Kind::exercise && id.kind == Kind::machine && subjects_.size() == 1) {
    const std::array machines{MachineId{id.number}};
    session_.seal();
    session_.perform(set_power(session_.lab(), ExerciseId{first.number}, machines, on));
    return;
  }
  ValueList list = ids_in(f, session_.lab(), first);
  if (on && !holds(list, id)) list.emplace_back(id);
  if (!on) std::erase_if(list, [id](const Value& v) { return *v.as<AnyId>() == id; });
  set(f, Value::list(std::move(list)));
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

std::optional<Value> PropertyPanel::common_in_force(const FieldInfo& f) const {
  std::optional<Value> value;
  for (const AnyId id : subjects_) {
    auto next = in_force(session_.analysis(), id, f);
    if (!next || (value && !(*value == *next))) return std::nullopt;
    value = std::move(next);
  }
  return value;
}

void PropertyPanel::refresh() {
  const AnyId first = subjects_.front();
  const StructInfo& table = info_of(first.kind);
  title_->setText(subjects_.size() == 1
                      ? as_qt(name_of(session_.lab(), first))
                      : words(text::property_several, Count{static_cast<std::int64_t>(subjects_.size())}));
  about_->setText(words(table.noun));
  for (FieldEditor* e : editors_) e->show(common(e->field()), common_in_force(e->field()));
  for (const auto& [field, list] : lists_) list->show_list(common(*field));
  for (const auto& [field, list] : ticks_)
    list->show_list([this, f = field](AnyId id) {
      const auto with = std::count_if(subjects_.begin(), subjects_.end(), [&](AnyId owner) {
        return holds(ids_in(*f, session_.lab(), owner), id);
      });
      return with == 0                                               ? Qt::Unchecked
             : with == static_cast<std::ptrdiff_t>(subjects_.size()) ? Qt::Checked
                                                                     : Qt::PartiallyChecked;
    });
  if (slider_) slider_->show_machine(MachineId{first.number});
  fill_parts();
}

void PropertyPanel::set(const FieldInfo& f, const Value& value) {
  session_.seal();
  session_.perform(set_fields(session_.lab(), subjects_, f, value));
}

} // namespace snug
