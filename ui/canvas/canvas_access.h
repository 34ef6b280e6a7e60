#pragma once
// The picture for assistive technology: one interface for each machine, card, segment, the PC and what lies
// outside, with name, description, place, state and actions (CONVENTIONS 25).

#include "ui/canvas/canvas.h"

#include <QAccessibleWidget>
#include <QPointer>

#include <unordered_map>

namespace snug {

class CanvasAccess : public QAccessibleWidget {
 public:
  explicit CanvasAccess(Canvas& canvas);
  ~CanvasAccess() override;
  CanvasAccess(const CanvasAccess&) = delete;
  CanvasAccess& operator=(const CanvasAccess&) = delete;

  int childCount() const override;
  QAccessibleInterface* child(int at) const override;
  int indexOfChild(const QAccessibleInterface* child) const override;
  QAccessibleInterface* focusChild() const override;
  QString text(QAccessible::Text) const override;

  QAccessibleInterface* node(AnyId id) const;
  // Known to QAccessible from now on.
  static void install();
  // Focus is on an element, what is selected changed.
  static void tell(Canvas& canvas);

 private:
  Canvas& canvas_;
  mutable std::unordered_map<AnyId, QAccessible::Id> known_;
};

class NodeAccess : public QAccessibleInterface, public QAccessibleActionInterface {
 public:
  NodeAccess(Canvas& canvas, AnyId id) : canvas_(&canvas), id_(id) {}

  AnyId id() const { return id_; }
  bool isValid() const override;
  QObject* object() const override { return nullptr; }
  QAccessibleInterface* parent() const override;
  QAccessibleInterface* child(int) const override { return nullptr; }
  int childCount() const override { return 0; }
  int indexOfChild(const QAccessibleInterface*) const override { return -1; }
  QAccessibleInterface* childAt(int, int) const override { return nullptr; }
  QString text(QAccessible::Text) const override;
  void setText(QAccessible::Text, const QString&) override {}
  QRect rect() const override;
  QAccessible::Role role() const override;
  QAccessible::State state() const override;
  void* interface_cast(QAccessible::InterfaceType) override;

  QStringList actionNames() const override;
  QString localizedActionName(const QString& name) const override;
  QString localizedActionDescription(const QString& name) const override;
  void doAction(const QString& name) override;
  QStringList keyBindingsForAction(const QString& name) const override;
  static QString edit_action() { return QStringLiteral("Edit"); }

 private:
  QPointer<Canvas> canvas_;
  AnyId id_;
};

} // namespace snug
