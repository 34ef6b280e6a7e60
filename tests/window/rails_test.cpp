// Rails dragged among each other, and their ends through the frame.

#include "core/document/write.h"
#include "core/gesture/rails.h"
#include "tests/window/hand.h"

#include <gtest/gtest.h>

#include <QTest>

namespace snug::test {
namespace {

class RailHand : public ::testing::Test {
 protected:
  void SetUp() override {
    window.start_sample("skerry-ferries");
    window.canvas().show_all();
    QTest::qWait(50);
    first_bytes = write_lab(hand.lab());
  }
  Canvas& canvas() { return window.canvas(); }
  std::string rails() {
    std::string out;
    for (const SegmentId s : rails_in_order(hand.session().shown().lab()))
      out += name_of(hand.lab(), s) + " ";
    return out;
  }
  // The left end of a rail inside the frame, and a place in the strip outside of it.
  QPoint end(SegmentId rail) {
    for (const AnyShape& shape : canvas().drawing().shapes)
      if (const auto* line = std::get_if<LineShape>(&shape);
          line && line->part == Part::rail && line->of == AnyId(rail))
        return canvas().on_view(QPointF(line->from.x + 6, line->from.y)).toPoint();
    ADD_FAILURE() << "no rail";
    return {};
  }
  QPoint outside(int below) {
    const snug::Box frame = box_of(canvas().drawing(), {Kind::pc, 0});
    return canvas().on_view(QPointF(frame.x - 24, frame.bottom() - below)).toPoint();
  }
  Segment its(SegmentId id) { return *find<Segment>(hand.session().shown().lab(), id); }

  MainWindow window;
  Hand hand{window};
  std::string first_bytes;
};

TEST_F(RailHand, ARailGoesWhereItIsHeldAndBackWithEsc) {
  const SegmentId crew = hand.segment("Crew"), cargo = hand.segment("Cargo");
  const QPoint above = hand.rail(cargo) - QPoint(0, 3);
  hand.press(hand.rail(crew));
  hand.move(above);
  EXPECT_EQ(rails(), "House LAN Steering Crew Cargo Transfer Passengers ") << "before it is let go";
  hand.key(Qt::Key_Escape);
  hand.release(above);
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  hand.drag(hand.rail(crew), hand.rail(cargo) - QPoint(0, 3));
  EXPECT_EQ(rails(), "House LAN Steering Crew Cargo Transfer Passengers ");
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Move Crew"));
  hand.drag(hand.rail(crew), hand.rail(hand.segment("Passengers")) + QPoint(0, 4));
  EXPECT_EQ(rails(), "House LAN Steering Cargo Transfer Passengers Crew ");
  hand.session().undo();
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(RailHand, AClickOnARailStillChoosesIt) {
  hand.click(hand.rail(hand.segment("Cargo")));
  EXPECT_TRUE(hand.session().is_selected(hand.segment("Cargo")));
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(RailHand, KeysMoveWhatIsChosenByOnePlace) {
  hand.click(hand.rail(hand.segment("Cargo")));
  hand.key(Qt::Key_Down, Qt::AltModifier);
  EXPECT_EQ(rails(), "House LAN Steering Transfer Cargo Passengers Crew ");
  hand.key(Qt::Key_Up, Qt::AltModifier);
  EXPECT_EQ(rails(), "House LAN Steering Cargo Transfer Passengers Crew ");
  hand.click(hand.on(hand.machine("hold")));
  hand.key(Qt::Key_Left, Qt::AltModifier);
  EXPECT_LT(box_of(canvas().drawing(), hand.machine("hold")).x,
            box_of(canvas().drawing(), hand.machine("wheelhouse")).x);
  for (int i = 0; i < 3; ++i) hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(RailHand, AnEndPulledThroughTheFrameIsTranslated) {
  const SegmentId cargo = hand.segment("Cargo");
  hand.press(end(cargo));
  hand.move(outside(30));
  EXPECT_EQ(its(cargo).type, SegmentKind::nat);
  EXPECT_TRUE(canvas().gesture_words().contains(QStringLiteral("nobody gets in")))
      << canvas().gesture_words().toStdString();
  hand.release(outside(30));
  EXPECT_EQ(its(cargo).type, SegmentKind::nat);
  hand.drag(end(cargo) - QPoint(14, 0), hand.rail(hand.segment("Transfer")));
  EXPECT_EQ(its(cargo).type, SegmentKind::isolated) << "and back inside";
  hand.session().undo();
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(RailHand, AnEndOnALanIsBridgedWithACaution) {
  const SegmentId cargo = hand.segment("Cargo");
  const QPoint lan = hand.on(hand.lab().lans.front().id);
  hand.press(end(cargo));
  hand.move(lan);
  EXPECT_EQ(its(cargo).type, SegmentKind::bridged);
  EXPECT_TRUE(canvas().gesture_words().contains(QStringLiteral("ask whoever owns it")))
      << canvas().gesture_words().toStdString();
  hand.key(Qt::Key_Escape);
  hand.release(lan);
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

// Leading it out moves the LAN's box on the picture: what the hand is on counts, and no words stay behind.
TEST_F(RailHand, TheLanCountsWhereItIsShown) {
  hand.session().perform(move_rail(hand.lab(), hand.segment("House LAN"), {}));
  window.canvas().show_all();
  QTest::qWait(50);
  const SegmentId cargo = hand.segment("Cargo");
  hand.press(end(cargo));
  hand.move(outside(60));
  ASSERT_EQ(its(cargo).type, SegmentKind::nat);
  const QPoint shown = hand.on(hand.lab().lans.front().id);
  hand.move(shown);
  EXPECT_EQ(its(cargo).type, SegmentKind::bridged);
  hand.release(shown);
  EXPECT_EQ(find<Segment>(hand.lab(), cargo)->type, SegmentKind::bridged);
  QTest::qWait(50);
  const QImage after = canvas().viewport()->grab().toImage();
  canvas().viewport()->repaint();
  EXPECT_EQ(canvas().viewport()->grab().toImage(), after);
}

} // namespace
} // namespace snug::test
