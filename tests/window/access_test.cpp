// What assistive technology is given of the picture, and the way round the window by keyboard.

#include "ui/canvas/canvas_access.h"

#include "core/document/read.h"
#include "core/embedded/embedded.h"
#include "tests/support/sample.h"
#include "tests/window/hand.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/property_panel.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QApplication>
#include <QLineEdit>
#include <QMenu>
#include <QSignalSpy>
#include <QTest>
#include <QTimer>

#include <set>

namespace snug::test {
namespace {

CanvasAccess& access_of(MainWindow& window) {
  auto* all = dynamic_cast<CanvasAccess*>(QAccessible::queryAccessibleInterface(&window.canvas()));
  EXPECT_NE(all, nullptr);
  return *all;
}

QAccessibleInterface* node(MainWindow& window, AnyId id) {
  QAccessibleInterface* found = nullptr;
  CanvasAccess& all = access_of(window);
  for (int i = 0; i < all.childCount(); ++i)
    if (auto* n = dynamic_cast<NodeAccess*>(all.child(i)); n && n->id() == id) found = n;
  return found;
}

class EverySample : public ::testing::TestWithParam<std::string> {};

TEST_P(EverySample, EveryElementIsSpoken) {
  MainWindow window;
  window.start_sample(GetParam());
  Hand hand(window);
  const Lab& lab = hand.lab();
  CanvasAccess& all = access_of(window);
  EXPECT_EQ(all.role(), QAccessible::Canvas);
  EXPECT_FALSE(all.text(QAccessible::Name).isEmpty());
  std::set<AnyId> spoken;
  for (int i = 0; i < all.childCount(); ++i) {
    auto* n = dynamic_cast<NodeAccess*>(all.child(i));
    if (!n) continue;
    ASSERT_TRUE(spoken.insert(n->id()).second) << "twice: " << to_text(n->id());
    EXPECT_EQ(all.indexOfChild(n), i);
    EXPECT_EQ(n->parent(), &all);
    const std::string name = n->id().kind == Kind::pc ? lab.pc.name : name_of(lab, n->id());
    EXPECT_TRUE(n->text(QAccessible::Name).startsWith(as_qt(name))) << to_text(n->id());
    EXPECT_FALSE(n->text(QAccessible::Name).contains(QLatin1Char('{')));
    EXPECT_GT(n->rect().width(), 0) << to_text(n->id());
    EXPECT_TRUE(n->state().focusable);
    EXPECT_FALSE(n->state().selected);
  }
  for (const Machine& m : lab.machines) EXPECT_TRUE(spoken.contains(m.id)) << m.name;
  for (const Card& c : lab.cards) EXPECT_TRUE(spoken.contains(c.id)) << to_text(c.id);
  for (const Segment& s : lab.segments) EXPECT_TRUE(spoken.contains(s.id)) << s.name;
  for (const Lan& l : lab.lans) EXPECT_TRUE(spoken.contains(l.id)) << l.name;
}

TEST_P(EverySample, FindingsAreSpokenAtTheirPlaces) {
  MainWindow window;
  window.start_sample(GetParam());
  Hand hand(window);
  for (const Finding& f : hand.session().analysis().findings()) {
    if (f.accepted || !holds_in(hand.lab(), f, {})) continue;
    for (const AnyId place : f.places) {
      QAccessibleInterface* n = node(window, place);
      if (!n) continue; // disks, exercises: said at their machine, in the list
      EXPECT_TRUE(n->text(QAccessible::Description).contains(words(f.message).simplified()) ||
                  n->text(QAccessible::Description).contains(words(f.message)))
          << f.rule->id << " at " << to_text(place) << ": "
          << n->text(QAccessible::Description).toStdString();
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Access, EverySample,
                         ::testing::Values("skerry-ferries", "skerry-ferries-16", "branch-office", "empty",
                                           "mistakes", "first-draft", "old-pc", "sixty"));

class Access : public ::testing::Test {
 protected:
  void SetUp() override { window.start_sample("skerry-ferries"); }
  MainWindow window;
  Hand hand{window};
};

TEST_F(Access, StatesFollowTheHand) {
  const MachineId beacon = hand.machine("beacon");
  hand.click(hand.on(beacon));
  QAccessibleInterface* n = node(window, beacon);
  EXPECT_TRUE(n->state().selected);
  window.activateWindow();
  window.canvas().setFocus();
  QApplication::setActiveWindow(&window);
  EXPECT_TRUE(n->state().focused);
  EXPECT_EQ(access_of(window).focusChild(), n);
  hand.key(Qt::Key_Right);
  EXPECT_FALSE(n->state().selected);
  EXPECT_FALSE(n->state().focused);
  window.canvas().set_zoom(4, QPointF(0, 0));
  EXPECT_TRUE(node(window, hand.machine("deck-b"))->state().offscreen);
}

TEST_F(Access, ActionsDoWhatTheHandDoes) {
  const MachineId hold = hand.machine("hold");
  auto* n = node(window, hold);
  auto* actions = static_cast<QAccessibleActionInterface*>(n->interface_cast(QAccessible::ActionInterface));
  ASSERT_NE(actions, nullptr);
  actions->doAction(QAccessibleActionInterface::pressAction());
  EXPECT_EQ(hand.session().selection(), std::vector<AnyId>{hold});
  actions->doAction(NodeAccess::edit_action());
  auto* line = window.canvas().findChild<QLineEdit*>(QStringLiteral("in_place"));
  ASSERT_TRUE(line && line->isVisible());
  line->selectAll();
  QTest::keyClicks(line, QStringLiteral("cellar"));
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_EQ(find<Machine>(hand.lab(), hold)->name, "cellar");
  EXPECT_TRUE(n->text(QAccessible::Name).startsWith(QStringLiteral("cellar")));
  QStringList seen;
  QTimer::singleShot(100, [&] {
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    if (!menu) return;
    for (const QAction* a : menu->actions()) seen << a->text();
    menu->close();
  });
  actions->doAction(QAccessibleActionInterface::showMenuAction());
  QTest::qWait(200);
  EXPECT_FALSE(seen.isEmpty());
}

TEST_F(Access, WhatIsGoneIsInvalid) {
  const MachineId hold = hand.machine("hold");
  QAccessibleInterface* n = node(window, hold);
  hand.session().select({hold});
  window.action("remove")->trigger();
  EXPECT_FALSE(n->isValid());
  EXPECT_TRUE(n->state().invalid);
  EXPECT_TRUE(n->text(QAccessible::Name).isEmpty());
  EXPECT_EQ(node(window, hold), nullptr);
  hand.session().undo();
  EXPECT_EQ(node(window, hold), n);
  EXPECT_TRUE(n->isValid());
}

TEST_F(Access, F6GoesRoundTheRegionsAndBack) {
  QApplication::setActiveWindow(&window);
  window.canvas().setFocus();
  std::vector<const QWidget*> round;
  for (int i = 0; i < 6; ++i) {
    QTest::keyClick(&window, Qt::Key_F6);
    round.push_back(window.focusWidget());
  }
  EXPECT_EQ(round.back(), &window.canvas()) << "six regions, and back";
  EXPECT_EQ(std::set<const QWidget*>(round.begin(), round.end()).size(), 6U);
  EXPECT_TRUE(window.properties().isAncestorOf(round[1]));
  for (int i = 4; i >= 0; --i) {
    QTest::keyClick(&window, Qt::Key_F6, Qt::ShiftModifier);
    EXPECT_EQ(window.focusWidget(), round[static_cast<std::size_t>(i)]);
  }
}

// CONVENTIONS 5: a ring that is seen. Focus changes pixels of the region's edge.
TEST_F(Access, FocusIsSeen) {
  QApplication::setActiveWindow(&window);
  window.ruler().setFocus();
  QTest::qWait(20);
  const QImage without = window.canvas().grab().toImage();
  const QImage with_ruler = window.ruler().grab().toImage();
  window.canvas().setFocus();
  QTest::qWait(20);
  const QImage with = window.canvas().grab().toImage();
  const QImage without_ruler = window.ruler().grab().toImage();
  const QPoint edge(with.width() / 2, 0);
  EXPECT_NE(with.pixel(edge), without.pixel(edge));
  EXPECT_NE(with_ruler.pixel(with_ruler.width() / 2, 1), without_ruler.pixel(with_ruler.width() / 2, 1));
}

} // namespace
} // namespace snug::test
