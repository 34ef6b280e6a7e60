// Pulling a new card from a machine and the PC's socket from the frame: consequences before the drop,
// refusals, Esc, and clicks instead of a drag.

#include "core/document/write.h"
#include "tests/window/hand.h"
#include "ui/session/words.h"

#include <gtest/gtest.h>

#include <QTest>

#include <algorithm>

namespace snug::test {
namespace {

class Pull : public ::testing::Test {
 protected:
  void SetUp() override {
    window.start_sample("skerry-ferries");
    first_bytes = write_lab(hand.lab());
  }
  Canvas& canvas() { return window.canvas(); }
  // Shows the handle by going over the machine, then its place.
  QPoint handle(AnyId id) {
    if (id.kind == Kind::machine) hand.hover(hand.on(id));
    const auto at = canvas().handle_of(id);
    EXPECT_TRUE(at);
    return at->toPoint();
  }
  const Card* card_on(MachineId machine, SegmentId segment) {
    for (const Card& c : hand.lab().cards)
      if (c.machine == machine && c.segment == segment) return &c;
    return nullptr;
  }
  MainWindow window;
  Hand hand{window};
  std::string first_bytes;
  const AnyId pc{Kind::pc, 0};
};

// On a small machine with many cards, too: a pin must be got hold of.
TEST_F(Pull, ThePlusLeavesPinsFree) {
  const MachineId router = hand.machine("gangway");
  for (const char* segment : {"Steering", "Cargo"}) {
    auto added = add_card(hand.lab(), router, hand.segment(segment));
    ASSERT_TRUE(added);
    ASSERT_TRUE(hand.session().perform(std::move(added->edit)));
    for (const Machine& m : hand.lab().machines) {
      const auto plus = canvas().handle_of(m.id);
      if (!plus || m.carrier) continue;
      for (const AnyShape& s : canvas().drawing().shapes) {
        const auto* pin = std::get_if<BoxShape>(&s);
        const Card* card = pin && pin->part == Part::pin && pin->of.kind == Kind::card
                               ? find<Card>(hand.lab(), CardId{pin->of.number})
                               : nullptr;
        if (!card || card->machine != m.id) continue;
        const QPointF at = canvas().on_view(QPointF(pin->box.centre().x, pin->box.centre().y));
        EXPECT_GT(std::abs(at.x() - plus->x()), 12) << m.name << ": the plus covers a pin";
      }
    }
  }
}

TEST_F(Pull, NewCardFromAMachineToARail) {
  const MachineId beacon = hand.machine("beacon");
  const SegmentId cargo = hand.segment("Cargo");
  ASSERT_EQ(card_on(beacon, cargo), nullptr);
  const QPoint rail = hand.rail(cargo);
  hand.press(handle(beacon));
  hand.move(rail);
  ASSERT_TRUE(hand.session().is_previewing());
  EXPECT_TRUE(canvas().gesture_words().startsWith(QStringLiteral("gets 172.22.20.")))
      << canvas().gesture_words().toStdString();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  hand.release(rail);
  const Card* made = card_on(beacon, cargo);
  ASSERT_NE(made, nullptr);
  ASSERT_EQ(made->addresses.size(), 1U);
  EXPECT_EQ(made->addresses.front().kind, AddressKind::suggested);
  EXPECT_TRUE(hand.session().is_selected(made->id));
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Connect beacon to Cargo"));
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Pull, EscapeAndAReleaseOnNothingChangeNothing) {
  const QPoint rail = hand.rail(hand.segment("Cargo"));
  hand.press(handle(hand.machine("beacon")));
  hand.move(rail);
  ASSERT_TRUE(hand.session().is_previewing());
  hand.key(Qt::Key_Escape);
  EXPECT_FALSE(hand.session().is_previewing());
  EXPECT_FALSE(canvas().is_busy());
  hand.release(rail);
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  hand.drag(handle(hand.machine("beacon")), QPoint(3, 3));
  EXPECT_FALSE(canvas().is_busy());
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Pull, ClicksDoWhatTheDragDoes) {
  const MachineId beacon = hand.machine("beacon");
  const SegmentId cargo = hand.segment("Cargo");
  hand.click(handle(beacon));
  EXPECT_TRUE(canvas().is_busy());
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  const QPoint rail = hand.rail(cargo);
  hand.hover(rail);
  hand.click(rail);
  EXPECT_FALSE(canvas().is_busy());
  EXPECT_NE(card_on(beacon, cargo), nullptr);
}

TEST_F(Pull, InnerGuestIsToldWhatItsHypervisorDoesNotCarry) {
  const MachineId guest = hand.machine("manifest");
  SegmentId far;
  for (const Segment& s : hand.lab().segments) {
    bool carried = false;
    for (const Card& c : hand.lab().cards)
      carried = carried || (c.machine == hand.machine("deck-b") &&
                            std::any_of(c.carries.begin(), c.carries.end(),
                                        [&](const SegmentTag& t) { return t.segment == s.id; }));
    if (!carried) far = s.id;
  }
  ASSERT_TRUE(far);
  const QPoint rail = hand.rail(far);
  hand.press(handle(guest));
  hand.move(rail);
  EXPECT_TRUE(canvas().gesture_words().contains(QStringLiteral("new: ")))
      << canvas().gesture_words().toStdString();
  hand.key(Qt::Key_Escape);
  hand.release(rail);
}

TEST_F(Pull, SocketFromTheFrame) {
  const SegmentId cargo = hand.segment("Cargo");
  ASSERT_FALSE(find<Segment>(hand.lab(), cargo)->pc_socket);
  const QPoint rail = hand.rail(cargo);
  hand.press(handle(pc));
  hand.move(rail);
  EXPECT_TRUE(hand.session().is_previewing());
  EXPECT_TRUE(hand.texts(cargo).contains(QStringLiteral("PC"))) << hand.texts(cargo).toStdString();
  hand.release(rail);
  EXPECT_TRUE(find<Segment>(hand.lab(), cargo)->pc_socket);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Give the PC a socket on Cargo"));
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Pull, SocketWhereOneIsIsRefusedInOneLine) {
  const QPoint rail = hand.rail(hand.segment("Steering"));
  hand.press(handle(pc));
  hand.move(rail);
  EXPECT_EQ(canvas().gesture_words(), QStringLiteral("study PC is plugged into Steering already"));
  hand.release(rail);
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Pull, SocketMovesAndGoes) {
  const SegmentId steering = hand.segment("Steering"), cargo = hand.segment("Cargo");
  const auto socket = [&]() -> QPoint {
    for (const AnyShape& s : canvas().drawing().shapes)
      if (const auto* box = std::get_if<BoxShape>(&s);
          box && box->part == Part::socket && box->of == AnyId(steering))
        return canvas().on_view(box->box).center().toPoint();
    ADD_FAILURE() << "no socket";
    return {};
  };
  hand.drag(socket(), hand.rail(cargo));
  EXPECT_FALSE(find<Segment>(hand.lab(), steering)->pc_socket);
  EXPECT_TRUE(find<Segment>(hand.lab(), cargo)->pc_socket);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Move the PC's socket to Cargo"));
  hand.session().undo();
  hand.drag(socket(), hand.on(hand.machine("beacon")));
  EXPECT_FALSE(find<Segment>(hand.lab(), steering)->pc_socket);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Take the PC's socket off Steering"));
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

} // namespace
} // namespace snug::test
