#include "ui/canvas/in_place.h"

#include "core/gesture/plug.h"
#include "core/text/tip_text.h"
#include "ui/session/words.h"

#include <QKeyEvent>
#include <QStyle>

namespace snug {

namespace {
constexpr int kWidth = 170, kHeight = 28;
}

InPlace::InPlace(Canvas& canvas) : QLineEdit(canvas.viewport()), canvas_(canvas) {
  setObjectName(QStringLiteral("in_place"));
  hide();
  connect(this, &QLineEdit::textEdited, this, &InPlace::judge);
  connect(&canvas_.session(), &Session::lab_changed, this, [this] {
    if (!id_ || exists(canvas_.session().lab(), id_)) return;
    id_ = {}; // what was being edited is gone
    hide();
  });
}

void InPlace::edit(AnyId id) {
  const Lab& lab = canvas_.session().lab();
  std::string text;
  if (id.kind == Kind::card) {
    const Card* card = snug::find<Card>(lab, CardId{id.number});
    if (!card->addresses.empty() && card->addresses.front().address)
      text = to_text(*card->addresses.front().address);
  } else if (const FieldInfo* field = info_of(id.kind).field("name")) {
    if (const Value held = field->get(object_at(lab, id)); held.as<std::string>())
      text = *held.as<std::string>();
  } else {
    return;
  }
  id_ = id;
  canvas_.show_place(id);
  const QRectF on = canvas_.on_view(box_of(canvas_.drawing(), id));
  setGeometry(qRound(on.x()) + 4, qRound(on.y()) + 4, kWidth, kHeight);
  setText(as_qt(text));
  setAccessibleName(as_qt(name_of(lab, id)));
  judge();
  show();
  raise();
  setFocus();
  selectAll();
}

Result<Edit> InPlace::wish() const {
  const Lab& lab = canvas_.session().lab();
  const std::string text = this->text().toStdString();
  return id_.kind == Kind::card ? set_address(lab, CardId{id_.number}, 0, text) : rename(lab, id_, text);
}

void InPlace::judge() {
  const auto edit = wish();
  setProperty("bad", !edit);
  setToolTip(edit ? words(text::tip_in_place) : words(edit.error().message));
  style()->unpolish(this);
  style()->polish(this);
}

void InPlace::take() {
  auto edit = wish();
  if (!edit) {
    canvas_.session().tell(edit.error());
    return;
  }
  id_ = {};
  hide();
  canvas_.session().seal();
  canvas_.session().perform(std::move(*edit));
  canvas_.setFocus();
}

void InPlace::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return take();
  if (event->key() == Qt::Key_Escape) {
    id_ = {};
    hide();
    return canvas_.setFocus();
  }
  QLineEdit::keyPressEvent(event);
}

void InPlace::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  if (id_ && event->reason() != Qt::PopupFocusReason) {
    if (wish()) return take();
    id_ = {};
    hide();
  }
}

} // namespace snug
