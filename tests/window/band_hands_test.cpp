// Rows of machines by their names, by keys and by the menu.

#include "core/gesture/bands.h"
#include "tests/window/ferry_window.h"

#include <QAction>

namespace snug::test {
namespace {

class BandHands : public FerryWindow {
 protected:
  void SetUp() override {
    FerryWindow::SetUp();
    own_row("hold");
    own_row("gangway");
    window.canvas().show_all();
    ASSERT_EQ(rows(), "beacon wheelhouse deck-a deck-b / gangway / hold / ");
  }
  void own_row(const char* name) {
    hand.session().select({AnyId(hand.machine(name))});
    ASSERT_TRUE(window.action("own_row")->isEnabled());
    window.action("own_row")->trigger();
  }
  std::string rows() {
    const Lab& lab = hand.session().shown().lab();
    std::string out;
    for (const std::int32_t b : bands_of(lab, {})) {
      for (const MachineId m : machines_of(lab, {{}, b})) out += name_of(lab, m) + " ";
      out += "/ ";
    }
    return out;
  }
  // The name of the row that a machine is the first of.
  QPoint name(const char* first) {
    for (const AnyShape& s : window.canvas().drawing().shapes)
      if (const auto* t = std::get_if<TextShape>(&s);
          t && t->part == Part::band && t->of == AnyId(hand.machine(first)))
        return window.canvas().on_view(QPointF(t->box.x + 8, t->baseline - 4)).toPoint();
    ADD_FAILURE() << "no row begins with " << first;
    return {};
  }
};

TEST_F(BandHands, ARowGoesWhereItIsHeldAndBackWithEsc) {
  const QPoint goal = name("beacon") - QPoint(0, 12);
  hand.press(name("hold"));
  hand.move(goal);
  EXPECT_EQ(rows(), "hold / beacon wheelhouse deck-a deck-b / gangway / ") << "before it is let go";
  EXPECT_LT(box_of(window.canvas().drawing(), hand.machine("hold")).y,
            box_of(window.canvas().drawing(), hand.machine("beacon")).y);
  hand.key(Qt::Key_Escape);
  hand.release(goal);
  EXPECT_EQ(rows(), "beacon wheelhouse deck-a deck-b / gangway / hold / ");
  hand.drag(name("hold"), name("gangway") - QPoint(0, 12));
  EXPECT_EQ(rows(), "beacon wheelhouse deck-a deck-b / hold / gangway / ");
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Move the row of hold"));
  hand.drag(name("beacon"), name("gangway") + QPoint(0, 40));
  EXPECT_EQ(rows(), "hold / gangway / beacon wheelhouse deck-a deck-b / ");
  back_to_the_first_bytes();
}

TEST_F(BandHands, AClickChoosesTheRowAndKeysMoveIt) {
  hand.click(name("beacon"));
  EXPECT_EQ(hand.session().selection().size(), 4U);
  ASSERT_TRUE(window.action("later")->isEnabled());
  hand.key(Qt::Key_Down, Qt::AltModifier);
  EXPECT_EQ(rows(), "gangway / beacon wheelhouse deck-a deck-b / hold / ");
  hand.key(Qt::Key_Up, Qt::AltModifier);
  EXPECT_EQ(rows(), "beacon wheelhouse deck-a deck-b / gangway / hold / ");
  back_to_the_first_bytes();
}

TEST_F(BandHands, OneRowHasNoName) {
  back_to_the_first_bytes();
  for (const AnyShape& s : window.canvas().drawing().shapes) EXPECT_NE(shape_of(s).part, Part::band);
}

} // namespace
} // namespace snug::test
