// Power marks on the picture: pressed they show what switching brings, let go they switch.

#include "core/gesture/power.h"
#include "tests/support/sample.h"
#include "tests/window/ferry_window.h"
#include "ui/canvas/canvas_access.h"
#include "ui/window/notice_bar.h"

#include <QAccessible>
#include <QTest>
#include <QToolTip>

namespace snug::test {
namespace {

class PowerMark : public FerryWindow {
 protected:
  Canvas& canvas() { return window.canvas(); }
  void choose(const char* name) { hand.session().set_exercise(exercise(hand.lab(), name)); }
  const CircleShape* shape(const char* name) {
    for (const AnyShape& s : canvas().drawing().shapes)
      if (const auto* c = std::get_if<CircleShape>(&s);
          c && c->part == Part::power && c->of == AnyId(hand.machine(name)))
        return c;
    ADD_FAILURE() << "no power mark of " << name;
    return nullptr;
  }
  QPoint mark(const char* name) {
    const CircleShape* c = shape(name);
    return c ? canvas().on_view(QPointF(c->centre.x, c->centre.y)).toPoint() : QPoint();
  }
  bool drawn_on(const char* name) { return shape(name)->fill == Ink::ok; }
  bool on(const char* name) { return is_on(hand.lab(), hand.session().exercise(), hand.machine(name)); }
};

TEST_F(PowerMark, SwitchesAndCarriersFollow) {
  choose("Names and logins");
  const QPoint at = mark("tickets-1");
  hand.press(at);
  EXPECT_TRUE(hand.session().is_previewing()) << "before it is let go";
  EXPECT_TRUE(drawn_on("tickets-1"));
  EXPECT_TRUE(drawn_on("deck-a"));
  EXPECT_FALSE(on("tickets-1"));
  const QString said = canvas().gesture_words();
  EXPECT_TRUE(said.contains(QStringLiteral("with it deck-a: tickets-1 runs inside"))) << said.toStdString();
  EXPECT_TRUE(said.contains(QStringLiteral("study PC then has"))) << said.toStdString();
  hand.release(at);
  EXPECT_TRUE(on("tickets-1"));
  EXPECT_TRUE(on("deck-a"));
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Switch tickets-1 on in Names and logins"));
  EXPECT_TRUE(window.notice().text().contains(QStringLiteral("deck-a went on as well")))
      << window.notice().text().toStdString();
  hand.click(mark("deck-a"));
  EXPECT_FALSE(on("tickets-1"));
  EXPECT_FALSE(drawn_on("tickets-1"));
  back_to_the_first_bytes();
}

TEST_F(PowerMark, EscapeAndLettingGoElsewhereChangeNothing) {
  choose("Names and logins");
  hand.press(mark("beacon"));
  ASSERT_TRUE(hand.session().is_previewing());
  hand.key(Qt::Key_Escape);
  EXPECT_FALSE(hand.session().is_previewing());
  hand.release(mark("beacon"));
  EXPECT_FALSE(hand.session().can_undo());
  hand.press(mark("beacon"));
  hand.move(hand.rail(hand.segment("Crew")));
  EXPECT_FALSE(hand.session().is_previewing()) << "off the mark";
  hand.release(hand.rail(hand.segment("Crew")));
  EXPECT_FALSE(hand.session().can_undo());
}

TEST_F(PowerMark, WhereEverythingIsOnItNamesAnExercise) {
  ASSERT_FALSE(hand.session().exercise());
  const QPoint at = mark("beacon");
  hand.press(at);
  EXPECT_TRUE(canvas().gesture_words().contains(QStringLiteral("choose an exercise first, such as")))
      << canvas().gesture_words().toStdString();
  hand.release(at);
  EXPECT_FALSE(hand.session().can_undo());
  EXPECT_TRUE(window.notice().text().contains(QStringLiteral("Names and logins")))
      << window.notice().text().toStdString();
}

TEST_F(PowerMark, TwoQuickClicksSwitchTwiceAndRenameNothing) {
  choose("Names and logins");
  const bool was = on("beacon");
  hand.click(mark("beacon"));
  EXPECT_NE(on("beacon"), was);
  QTest::mouseDClick(canvas().viewport(), Qt::LeftButton, {}, mark("beacon"));
  EXPECT_EQ(window.findChild<QWidget*>(QStringLiteral("in_place")), nullptr);
  back_to_the_first_bytes();
}

TEST_F(PowerMark, TheHandAndTheTooltipSayWhatAClickDoes) {
  choose("Names and logins");
  hand.hover(mark("tickets-1"));
  EXPECT_EQ(canvas().viewport()->cursor().shape(), Qt::PointingHandCursor);
  QHelpEvent asked(QEvent::ToolTip, mark("tickets-1"), canvas().viewport()->mapToGlobal(mark("tickets-1")));
  QApplication::sendEvent(canvas().viewport(), &asked);
  EXPECT_EQ(QToolTip::text(), QStringLiteral("Click: tickets-1 goes on in Names and logins"));
  hand.hover(hand.on(hand.machine("tickets-1")));
  EXPECT_EQ(canvas().viewport()->cursor().shape(), Qt::ArrowCursor);
}

TEST_F(PowerMark, AssistiveTechnologyTogglesIt) {
  choose("Names and logins");
  auto* all = dynamic_cast<CanvasAccess*>(QAccessible::queryAccessibleInterface(&canvas()));
  ASSERT_NE(all, nullptr);
  auto* node = dynamic_cast<NodeAccess*>(all->node(hand.machine("tickets-1")));
  ASSERT_NE(node, nullptr);
  ASSERT_TRUE(node->actionNames().contains(QAccessibleActionInterface::toggleAction()));
  EXPECT_FALSE(node->state().checked);
  node->doAction(QAccessibleActionInterface::toggleAction());
  EXPECT_TRUE(node->state().checked);
  EXPECT_TRUE(on("deck-a"));
  auto* rail = dynamic_cast<NodeAccess*>(all->node(hand.segment("Crew")));
  ASSERT_NE(rail, nullptr);
  EXPECT_FALSE(rail->actionNames().contains(QAccessibleActionInterface::toggleAction()));
  back_to_the_first_bytes();
}

} // namespace
} // namespace snug::test
