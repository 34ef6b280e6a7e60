// Hands on what cards do for segments: carried segments by a hollow pin, gateway and DHCP by their places and
// marks, with the ways of the menu.

#include "core/gesture/carry.h"
#include "core/gesture/duty.h"
#include "tests/window/ferry_window.h"
#include "ui/canvas/duty_slots.h"
#include "ui/canvas/node_words.h"

#include <QAction>
#include <QMenu>
#include <QTest>

#include <algorithm>

namespace snug::test {
namespace {

class SegmentHands : public FerryWindow {
 protected:
  Canvas& canvas() { return window.canvas(); }
  CardId card(const char* name, const char* on) {
    for (const Card& c : hand.lab().cards)
      if (c.machine == hand.machine(name) && c.segment == hand.segment(on)) return c.id;
    ADD_FAILURE() << name << " on " << on;
    return {};
  }
  bool carries(CardId id, const char* on) {
    const Card& c = *find<Card>(hand.session().shown().lab(), id);
    return std::any_of(c.carries.begin(), c.carries.end(),
                       [&](const SegmentTag& t) { return t.segment == hand.segment(on); });
  }
  CardId holder(Duty duty, const char* on) {
    const Analysis& a = hand.session().shown();
    return holder_of(a.index(), a.addresses(), duty, hand.segment(on));
  }
  // The place for a duty, which stands there while something is in the hand.
  QPoint place(Duty duty, const char* on) {
    const qreal scale = std::clamp(1 / canvas().zoom(), 1.0, 1.7);
    for (const DutySlot& s :
         duty_slots(hand.session().analysis(), canvas().drawing(), scale, hand.segment(on)))
      if (s.duty == duty) return canvas().on_view(s.box.center()).toPoint();
    ADD_FAILURE() << "no place on " << on;
    return {};
  }
  // A mark beside the joint of the card that has a duty.
  QPoint mark(Part part, CardId of) {
    for (const AnyShape& s : canvas().drawing().shapes)
      if (const auto* box = std::get_if<BoxShape>(&s); box && box->part == part && box->of == AnyId(of))
        return canvas().on_view(box->box).center().toPoint();
    return {};
  }
  bool is_marked(Part part, CardId of) { return !mark(part, of).isNull(); }
  std::string words() { return canvas().gesture_words().toStdString(); }
};

TEST_F(SegmentHands, AHollowPinIsPulledToWhatItCarriesAsWell) {
  const CardId hollow = card("deck-b", "Passengers");
  const QPoint rail = hand.rail(hand.segment("Cargo"));
  hand.press(hand.pin(hollow));
  hand.move(rail);
  EXPECT_TRUE(carries(hollow, "Cargo")) << "before it is let go";
  EXPECT_NE(words().find("Cargo has VLAN id 10 on this card"), std::string::npos) << words();
  hand.key(Qt::Key_Escape);
  hand.release(rail);
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  hand.drag(hand.pin(hollow), rail);
  EXPECT_TRUE(carries(hollow, "Cargo"));
  EXPECT_TRUE(carries(hollow, "Passengers"));
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Let deck-b card 4 carry Cargo"));
  EXPECT_TRUE(hand.session().is_selected(hollow));
  back_to_the_first_bytes();
}

TEST_F(SegmentHands, OffTheRailsItGoes) {
  const CardId hollow = card("deck-a", "Passengers");
  const QPoint away = hand.on(hand.machine("beacon"));
  hand.press(hand.pin(hollow));
  hand.move(away);
  EXPECT_FALSE(carries(hollow, "Passengers"));
  EXPECT_NE(words().find("on Passengers, tickets-1 and tickets-db can then talk to nobody outside deck-a"),
            std::string::npos)
      << words();
  hand.release(away);
  EXPECT_FALSE(carries(hollow, "Passengers"));
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Let deck-a card 4 no longer carry Passengers"));
  back_to_the_first_bytes();
}

// With Shift a hollow pin goes elsewhere, and a card with an address carries.
TEST_F(SegmentHands, ShiftIsTheOtherOfBoth) {
  const CardId hollow = card("deck-b", "Passengers"), solid = card("deck-b", "Cargo");
  const auto drag = [&](CardId of, const char* to) {
    const QPoint from = hand.pin(of), goal = hand.rail(hand.segment(to));
    QTest::mousePress(canvas().viewport(), Qt::LeftButton, Qt::ShiftModifier, from);
    for (int i = 1; i <= 10; ++i) QTest::mouseMove(canvas().viewport(), from + (goal - from) * i / 10);
    QTest::mouseRelease(canvas().viewport(), Qt::LeftButton, Qt::ShiftModifier, goal);
  };
  drag(hollow, "Cargo");
  EXPECT_TRUE(carries(hollow, "Cargo"));
  EXPECT_FALSE(carries(hollow, "Passengers"));
  hand.session().undo();
  hand.session().select({});
  drag(solid, "Crew");
  EXPECT_TRUE(carries(solid, "Crew"));
  EXPECT_EQ(find<Card>(hand.lab(), solid)->segment, hand.segment("Cargo")) << "it stays where it is";
  back_to_the_first_bytes();
}

// Over a hypervisor the hand looks at its room: the places for duties do not cover its wires.
TEST_F(SegmentHands, PlacesForDutiesStandOnlyAwayFromMachines) {
  const MachineId guest = hand.machine("tickets-1");
  const QPoint from = hand.on(guest), steering = place(Duty::gateway, "Steering");
  const auto inked = [&] {
    QTest::qWait(20);
    const QImage view = canvas().viewport()->grab(QRect(steering - QPoint(16, 5), QSize(32, 10))).toImage();
    int dark = 0;
    for (int y = 0; y < view.height(); ++y)
      for (int x = 0; x < view.width(); ++x) dark += qGray(view.pixel(x, y)) < 170 ? 1 : 0;
    return dark;
  };
  const int before = inked();
  hand.press(from);
  hand.move(hand.on(hand.machine("deck-b")));
  ASSERT_FALSE(canvas().ghost_box().contains(steering)) << "the words stand elsewhere";
  EXPECT_LT(inked(), before + 10) << "over a room";
  hand.move(hand.rail(hand.segment("Transfer")) + QPoint(0, 8));
  ASSERT_FALSE(canvas().ghost_box().contains(steering)) << "the words stand elsewhere";
  EXPECT_GT(inked(), before + 10) << "away from it";
  hand.key(Qt::Key_Escape);
  hand.release(from);
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(SegmentHands, WhatACardCarriesIsInTheMenu) {
  const CardId hollow = card("deck-b", "Passengers");
  hand.session().select({AnyId(card("beacon", "Steering"))});
  EXPECT_FALSE(window.action("carry")->isEnabled()) << "no hypervisor's";
  hand.session().select({AnyId(hollow)});
  ASSERT_TRUE(window.action("carry")->isEnabled());
  QMenu& menu = *window.action("carry")->menu();
  emit menu.aboutToShow();
  for (QAction* a : menu.actions()) {
    EXPECT_EQ(a->isChecked(), a->text() == QStringLiteral("Passengers")) << a->text().toStdString();
    if (a->text() == QStringLiteral("Cargo")) a->trigger();
  }
  EXPECT_TRUE(carries(hollow, "Cargo"));
  back_to_the_first_bytes();
}

TEST_F(SegmentHands, AMachineOnTheGatewaysPlaceBecomesIt) {
  ASSERT_FALSE(holder(Duty::gateway, "Steering"));
  const CardId beacon = card("beacon", "Steering");
  EXPECT_FALSE(is_marked(Part::gateway, beacon));
  const QPoint there = place(Duty::gateway, "Steering");
  hand.press(hand.on(hand.machine("beacon")));
  hand.move(there);
  EXPECT_EQ(holder(Duty::gateway, "Steering"), beacon) << "before it is let go";
  EXPECT_TRUE(is_marked(Part::gateway, beacon));
  EXPECT_NE(words().find("172.22.10.10 is then the way out of Steering"), std::string::npos) << words();
  hand.key(Qt::Key_Escape);
  hand.release(there);
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  hand.drag(hand.on(hand.machine("beacon")), there);
  EXPECT_EQ(holder(Duty::gateway, "Steering"), beacon);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Make beacon card 1 the gateway of Steering"));
  back_to_the_first_bytes();
}

TEST_F(SegmentHands, APinOnTheDhcpPlaceServesThere) {
  const CardId beacon = card("beacon", "Steering");
  const QPoint there = place(Duty::dhcp, "Steering");
  hand.press(hand.pin(beacon));
  hand.move(there);
  EXPECT_NE(words().find("gives out 172.22.10.100 to 172.22.10.199"), std::string::npos) << words();
  hand.release(there);
  EXPECT_EQ(holder(Duty::dhcp, "Steering"), beacon);
  EXPECT_TRUE(is_marked(Part::dhcp, beacon));
  EXPECT_TRUE(hand.texts(beacon).contains(QStringLiteral("DHCP server"))) << hand.texts(beacon).toStdString();
  back_to_the_first_bytes();
}

TEST_F(SegmentHands, AMarkGoesToAnotherCardOrAway) {
  const CardId gangway = card("gangway", "Passengers"), beacon = card("beacon", "Passengers");
  ASSERT_TRUE(is_marked(Part::gateway, gangway));
  const Analysis& a = hand.session().analysis();
  EXPECT_TRUE(spoken_description(a, canvas().drawing(), gangway, {}).contains(QStringLiteral("gateway")));
  EXPECT_FALSE(spoken_description(a, canvas().drawing(), beacon, {}).contains(QStringLiteral("gateway")));
  const QPoint goal = hand.pin(beacon);
  hand.press(mark(Part::gateway, gangway));
  hand.move(goal);
  EXPECT_EQ(holder(Duty::gateway, "Passengers"), beacon);
  hand.release(goal);
  EXPECT_EQ(holder(Duty::gateway, "Passengers"), beacon);
  EXPECT_TRUE(is_marked(Part::gateway, beacon));
  EXPECT_FALSE(is_marked(Part::gateway, gangway));
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes) << "one step";
  const QPoint wrong = hand.pin(card("gangway", "Crew"));
  hand.press(mark(Part::gateway, gangway));
  hand.move(wrong);
  EXPECT_EQ(words(), "gangway card 2 is not plugged into Passengers");
  hand.key(Qt::Key_Escape);
  hand.release(wrong);
  const QPoint away = canvas()
                          .on_view(QPointF(box_of(canvas().drawing(), {Kind::pc, 0}).x + 60,
                                           box_of(canvas().drawing(), {Kind::pc, 0}).y + 60))
                          .toPoint();
  hand.drag(mark(Part::gateway, gangway), away);
  EXPECT_FALSE(holder(Duty::gateway, "Passengers"));
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Leave Passengers without gateway"));
  back_to_the_first_bytes();
}

TEST_F(SegmentHands, PlacesAreThereOnlyWhileSomethingIsInTheHand) {
  const QPoint there = place(Duty::gateway, "Transfer");
  const auto ink = [&] {
    const QImage seen = canvas().viewport()->grab(QRect(there - QPoint(20, 8), QSize(40, 16))).toImage();
    int n = 0;
    for (int y = 0; y < seen.height(); ++y)
      for (int x = 0; x < seen.width(); ++x) n += qGray(seen.pixel(x, y)) < 200 ? 1 : 0;
    return n;
  };
  const int before = ink();
  const QPoint beside = hand.on(hand.machine("beacon")) + QPoint(12, 12);
  hand.press(hand.on(hand.machine("beacon")));
  hand.move(beside);
  EXPECT_GT(ink(), before + 20);
  hand.key(Qt::Key_Escape);
  hand.release(beside);
  EXPECT_EQ(ink(), before);
}

TEST_F(SegmentHands, DutiesAreInTheMenu) {
  const CardId beacon = card("beacon", "Steering");
  hand.session().select({AnyId(hand.machine("beacon"))});
  EXPECT_FALSE(window.action("gateway")->isEnabled()) << "a card has them";
  hand.session().select({AnyId(beacon)});
  ASSERT_TRUE(window.action("gateway")->isEnabled());
  EXPECT_FALSE(window.action("gateway")->isChecked());
  window.action("gateway")->trigger();
  EXPECT_EQ(holder(Duty::gateway, "Steering"), beacon);
  EXPECT_TRUE(window.action("gateway")->isChecked());
  window.action("dhcp_server")->trigger();
  EXPECT_EQ(holder(Duty::dhcp, "Steering"), beacon);
  window.action("dhcp_server")->trigger();
  EXPECT_FALSE(holder(Duty::dhcp, "Steering"));
  EXPECT_FALSE(window.action("dhcp_server")->isChecked());
  back_to_the_first_bytes();
}

} // namespace
} // namespace snug::test
