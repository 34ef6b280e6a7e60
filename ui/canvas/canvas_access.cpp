#include "ui/canvas/canvas_access.h"

#include "core/gesture/power.h"
#include "core/text/access_text.h"
#include "core/text/power_text.h"
#include "ui/canvas/node_words.h"
#include "ui/session/words.h"

#include <algorithm>

namespace snug {

CanvasAccess::CanvasAccess(Canvas& canvas)
    : QAccessibleWidget(&canvas, QAccessible::Canvas), canvas_(canvas) {}

CanvasAccess::~CanvasAccess() {
  for (const auto& [id, known] : known_) QAccessible::deleteAccessibleInterface(known);
}

void CanvasAccess::install() {
  static const bool once = [] {
    QAccessible::installFactory([](const QString& name, QObject* object) -> QAccessibleInterface* {
      auto* canvas = name == QStringLiteral("snug::Canvas") ? qobject_cast<Canvas*>(object) : nullptr;
      return canvas ? new CanvasAccess(*canvas) : nullptr;
    });
    return true;
  }();
  static_cast<void>(once);
}

int CanvasAccess::childCount() const {
  return static_cast<int>(spoken_ids(canvas_.session().shown().lab()).size()) +
         QAccessibleWidget::childCount();
}

QAccessibleInterface* CanvasAccess::child(int at) const {
  const std::vector<AnyId> ids = spoken_ids(canvas_.session().shown().lab());
  const int count = static_cast<int>(ids.size());
  if (at < 0) return nullptr;
  return at < count ? node(ids[static_cast<std::size_t>(at)]) : QAccessibleWidget::child(at - count);
}

int CanvasAccess::indexOfChild(const QAccessibleInterface* child) const {
  const std::vector<AnyId> ids = spoken_ids(canvas_.session().shown().lab());
  if (const auto* known = dynamic_cast<const NodeAccess*>(child)) {
    const auto at = std::find(ids.begin(), ids.end(), known->id());
    return at == ids.end() ? -1 : static_cast<int>(at - ids.begin());
  }
  const int at = QAccessibleWidget::indexOfChild(child);
  return at < 0 ? at : at + static_cast<int>(ids.size());
}

QAccessibleInterface* CanvasAccess::node(AnyId id) const {
  const auto found = known_.find(id);
  if (found != known_.end()) return QAccessible::accessibleInterface(found->second);
  auto* made = new NodeAccess(canvas_, id);
  known_[id] = QAccessible::registerAccessibleInterface(made);
  return made;
}

QAccessibleInterface* CanvasAccess::focusChild() const {
  const AnyId id = canvas_.focus_id();
  if (!canvas_.hasFocus() || !exists(canvas_.session().shown().lab(), id)) return nullptr;
  return node(id);
}

QString CanvasAccess::text(QAccessible::Text which) const {
  if (which == QAccessible::Name) return words(text::access_canvas);
  if (which == QAccessible::Description) return as_qt(canvas_.drawing().description);
  return QAccessibleWidget::text(which);
}

void CanvasAccess::tell(Canvas& canvas) {
  if (!QAccessible::isActive()) return;
  auto* all = dynamic_cast<CanvasAccess*>(QAccessible::queryAccessibleInterface(&canvas));
  if (!all) return;
  QAccessibleEvent selection(&canvas, QAccessible::SelectionWithin);
  QAccessible::updateAccessibility(&selection);
  if (QAccessibleInterface* at = all->focusChild()) {
    QAccessibleEvent focus(at, QAccessible::Focus);
    QAccessible::updateAccessibility(&focus);
  }
}

bool NodeAccess::isValid() const { return canvas_ && exists(canvas_->session().shown().lab(), id_); }

QAccessibleInterface* NodeAccess::parent() const {
  return canvas_ ? QAccessible::queryAccessibleInterface(canvas_.data()) : nullptr;
}

QString NodeAccess::text(QAccessible::Text which) const {
  if (!isValid()) return {};
  const Session& session = canvas_->session();
  if (which == QAccessible::Name) return spoken_name(session.shown(), id_);
  if (which == QAccessible::Description)
    return spoken_description(session.shown(), canvas_->drawing(), id_, session.exercise());
  return {};
}

QRect NodeAccess::rect() const {
  if (!isValid()) return {};
  const snug::Box box = spoken_box(canvas_->session().shown().lab(), canvas_->drawing(), id_);
  const QRect on = canvas_->on_view(box).toAlignedRect();
  return {canvas_->viewport()->mapToGlobal(on.topLeft()), on.size()};
}

QAccessible::Role NodeAccess::role() const {
  return id_.kind == Kind::pc || id_.kind == Kind::lan ? QAccessible::Graphic : QAccessible::ListItem;
}

QAccessible::State NodeAccess::state() const {
  QAccessible::State s;
  if (!isValid()) {
    s.invalid = true;
    return s;
  }
  s.focusable = true;
  s.selectable = s.multiSelectable = id_.kind != Kind::pc;
  s.selected = canvas_->session().is_selected(id_);
  s.focused = canvas_->hasFocus() && canvas_->focus_id() == id_;
  const QRect seen(canvas_->viewport()->mapToGlobal(QPoint(0, 0)), canvas_->viewport()->size());
  if (id_.kind == Kind::machine) {
    s.checkable = true;
    s.checked = is_on(canvas_->session().shown().lab(), canvas_->session().exercise(), {id_.number});
  }
  s.offscreen = !seen.intersects(rect());
  s.invisible = !canvas_->isVisible();
  return s;
}

void* NodeAccess::interface_cast(QAccessible::InterfaceType type) {
  return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this) : nullptr;
}

QStringList NodeAccess::actionNames() const {
  if (id_.kind == Kind::pc) return {setFocusAction(), edit_action(), showMenuAction()};
  if (id_.kind == Kind::machine)
    return {pressAction(), setFocusAction(), edit_action(), toggleAction(), showMenuAction()};
  return {pressAction(), setFocusAction(), edit_action(), showMenuAction()};
}

QString NodeAccess::localizedActionName(const QString& name) const {
  if (name == toggleAction()) return words(text::access_power);
  return name == edit_action() ? words(text::access_edit)
                               : QAccessibleActionInterface::localizedActionName(name);
}

QString NodeAccess::localizedActionDescription(const QString& name) const {
  if (name == toggleAction()) return words(text::access_power_help);
  return name == edit_action() ? words(text::access_edit_help)
                               : QAccessibleActionInterface::localizedActionDescription(name);
}

void NodeAccess::doAction(const QString& name) {
  if (!isValid()) return;
  Canvas& canvas = *canvas_;
  canvas.show_place(id_);
  if (name == setFocusAction()) canvas.setFocus(Qt::OtherFocusReason);
  if (name == pressAction()) canvas.session().select({id_});
  if (name == edit_action()) emit canvas.edit_wanted(id_);
  if (name == toggleAction() && id_.kind == Kind::machine) canvas.toggle_power({id_.number});
  if (name == showMenuAction()) {
    if (id_.kind != Kind::pc) canvas.session().select({id_});
    // Later: a menu keeps its caller waiting.
    QMetaObject::invokeMethod(
        &canvas, [&canvas, id = id_, at = rect().center()] { emit canvas.menu_wanted(id, at); },
        Qt::QueuedConnection);
  }
}

QStringList NodeAccess::keyBindingsForAction(const QString& name) const {
  if (name == edit_action()) return {QStringLiteral("F2")};
  if (name == showMenuAction()) return {QStringLiteral("Menu")};
  return {};
}

} // namespace snug
