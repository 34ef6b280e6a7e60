// What hands do on the picture by mouse and by keys, each with its undo.

#include "core/document/write.h"
#include "tests/window/ferry_window.h"
#include "ui/session/words.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QMenu>
#include <QTest>
#include <QTimer>

#include <algorithm>

namespace snug::test {
namespace {

class Hands : public FerryWindow {
 protected:
  snug::Box box(const char* name) { return box_of(window.canvas().drawing(), hand.machine(name)); }
  QPoint view(QPointF drawing) { return window.canvas().on_view(drawing).toPoint(); }
  bool has_tack(MachineId id) {
    const auto& shapes = window.canvas().drawing().shapes;
    return std::any_of(shapes.begin(), shapes.end(), [id](const AnyShape& s) {
      return shape_of(s).of == AnyId(id) && shape_of(s).part == Part::held;
    });
  }
};

// On a guest in a room: beside it, on the side where the pointer is.
TEST_F(Hands, AGuestDroppedOnAGuestStandsBesideIt) {
  const MachineId moved = hand.machine("tickets-1"), there = hand.machine("manifest");
  const snug::Box on = box("manifest");
  for (const auto& [x, order] : {std::pair{on.x + on.w / 3, std::vector<MachineId>{moved, there}},
                                 {on.x + on.w * 2 / 3, {there, moved}}}) {
    const QPoint goal = view(QPointF(x, on.y + on.h / 2.0));
    hand.press(hand.on(moved));
    hand.move(goal);
    EXPECT_TRUE(hand.session().is_previewing());
    EXPECT_TRUE(window.canvas().gesture_words().contains(QStringLiteral("deck-b then has")))
        << window.canvas().gesture_words().toStdString();
    hand.release(goal);
    EXPECT_EQ(machine("tickets-1").carrier, hand.machine("deck-b"));
    EXPECT_EQ(guests_in_order(hand.lab(), hand.machine("deck-b")), order);
    back_to_the_first_bytes();
  }
}

// A drag moves; only who asks for it is kept in place, which is seen and can be taken back.
TEST_F(Hands, KeptInPlaceIsSeenAndTakenBack) {
  const MachineId moved = hand.machine("tickets-1");
  hand.drag(hand.on(moved), hand.on(hand.machine("deck-b")) + QPoint(30, 40));
  EXPECT_EQ(machine("tickets-1").carrier, hand.machine("deck-b"));
  EXPECT_FALSE(machine("tickets-1").pinned);
  EXPECT_FALSE(has_tack(moved));
  hand.click(hand.on(moved));
  QStringList offered;
  QTimer::singleShot(50, [&] {
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    ASSERT_NE(menu, nullptr);
    for (QAction* a : menu->actions()) offered << a->text().remove(QLatin1Char('&'));
    QAction* hold = window.action("hold");
    const QPoint at = menu->actionGeometry(hold).center();
    QTest::mouseClick(menu, Qt::LeftButton, {}, at);
  });
  QContextMenuEvent asked(QContextMenuEvent::Mouse, hand.on(moved),
                          window.canvas().viewport()->mapToGlobal(hand.on(moved)));
  QApplication::sendEvent(window.canvas().viewport(), &asked);
  EXPECT_TRUE(offered.contains(QStringLiteral("Keep in place"))) << offered.join(u'|').toStdString();
  EXPECT_TRUE(machine("tickets-1").pinned);
  EXPECT_TRUE(has_tack(moved));
  EXPECT_TRUE(window.action("hold")->isChecked());
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Keep tickets-1 in place"));
  hand.click(hand.on(hand.machine("beacon")));
  EXPECT_FALSE(window.action("hold")->isChecked());
  hand.click(hand.on(moved));
  window.action("hold")->trigger();
  EXPECT_FALSE(machine("tickets-1").pinned);
  EXPECT_FALSE(has_tack(moved));
  back_to_the_first_bytes();
}

TEST_F(Hands, ArrowsGoWhereTheyPoint) {
  hand.click(hand.on(hand.machine("beacon")));
  window.canvas().setFocus();
  const auto chosen = [&] { return hand.session().selection(); };
  hand.key(Qt::Key_Right);
  EXPECT_EQ(chosen(), std::vector<AnyId>{hand.machine("wheelhouse")});
  hand.key(Qt::Key_Left);
  EXPECT_EQ(chosen(), std::vector<AnyId>{hand.machine("beacon")});
  hand.key(Qt::Key_Down); // its first card, then the uppermost rail below
  ASSERT_EQ(chosen().size(), 1U);
  const Card* card = find<Card>(hand.lab(), CardId{chosen().front().number});
  ASSERT_TRUE(card && chosen().front().kind == Kind::card);
  EXPECT_EQ(card->machine, hand.machine("beacon"));
  hand.key(Qt::Key_Down);
  EXPECT_EQ(chosen(), std::vector<AnyId>{hand.segment("House LAN")});
  hand.click(hand.on(hand.machine("deck-a")));
  hand.key(Qt::Key_Down); // into the room
  EXPECT_EQ(chosen(), std::vector<AnyId>{hand.machine("tickets-1")});
  hand.key(Qt::Key_Right);
  EXPECT_EQ(chosen(), std::vector<AnyId>{hand.machine("tickets-db")});
  hand.key(Qt::Key_Escape);
  EXPECT_TRUE(chosen().empty());
}

TEST_F(Hands, DeleteTakesAwayAndOffersToUndo) {
  const MachineId hold = hand.machine("hold");
  hand.click(hand.on(hold));
  QTest::keyClick(&window.canvas(), Qt::Key_Delete);
  EXPECT_FALSE(exists(hand.lab(), hold));
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
  EXPECT_FALSE(window.notice().text().isEmpty());
  hand.session().undo();
  EXPECT_TRUE(exists(hand.lab(), hold));
  back_to_the_first_bytes();
}

TEST_F(Hands, DuplicateMakesAnotherWithAnotherName) {
  hand.click(hand.on(hand.machine("tickets-1")));
  const std::size_t before = hand.lab().machines.size();
  QTest::keyClick(&window.canvas(), Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
  ASSERT_EQ(hand.lab().machines.size(), before + 1);
  const Machine& made = hand.lab().machines.back();
  EXPECT_TRUE(hand.session().is_selected(made.id));
  EXPECT_EQ(made.carrier, machine("tickets-1").carrier);
  EXPECT_NE(made.name, "tickets-1");
  back_to_the_first_bytes();
}

TEST_F(Hands, ADoubleClickRenamesInPlace) {
  const MachineId beacon = hand.machine("beacon");
  QTest::mouseDClick(window.canvas().viewport(), Qt::LeftButton, {}, hand.on(beacon));
  auto* line = window.canvas().viewport()->findChild<QLineEdit*>(QStringLiteral("in_place"));
  ASSERT_NE(line, nullptr);
  ASSERT_TRUE(line->isVisible());
  QTest::keyClicks(line, QStringLiteral("lamp"));
  QTest::keyClick(line, Qt::Key_Escape);
  EXPECT_EQ(machine("beacon").name, "beacon");
  QTest::mouseDClick(window.canvas().viewport(), Qt::LeftButton, {}, hand.on(beacon));
  QTest::keyClicks(line, QStringLiteral("lamp"));
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_EQ(find<Machine>(hand.lab(), beacon)->name, "lamp");
  EXPECT_TRUE(hand.texts(beacon).contains(QStringLiteral("lamp")));
  back_to_the_first_bytes();
}

// The badge stands over the ring of what a drop is aimed at.
TEST_F(Hands, ABadgeIsSeenWhileSomethingIsHeldOverItsCard) {
  const QPoint goal = hand.on(hand.machine("deck-b")) + QPoint(30, 40);
  hand.press(hand.on(hand.machine("tickets-1")));
  hand.move(goal);
  QRect badge;
  for (const AnyShape& s : window.canvas().drawing().shapes)
    if (shape_of(s).of == AnyId(hand.machine("deck-b")) && shape_of(s).part == Part::badge)
      badge |= QRect(view(bounds(s).topLeft()), view(bounds(s).bottomRight()));
  ASSERT_FALSE(badge.isNull());
  const QRgb error = 0xff000000U | palette(Theme::light).of(Ink::error);
  const auto count = [&] {
    const QImage seen = window.canvas().viewport()->grab(badge).toImage();
    int n = 0;
    for (int y = 0; y < seen.height(); ++y)
      for (int x = 0; x < seen.width(); ++x) n += seen.pixel(x, y) == error ? 1 : 0;
    return n;
  };
  const int during = count();
  hand.key(Qt::Key_Escape);
  hand.release(goal);
  EXPECT_EQ(during, count());
  EXPECT_GT(during, 20);
}

} // namespace
} // namespace snug::test
