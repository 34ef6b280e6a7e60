#include "tests/window/random_hand.h"

#include <QLineEdit>
#include <QTest>

#include <array>

namespace snug::test {

namespace {

QPoint anywhere(Random& random, Hand& hand) {
  const Drawing& drawing = hand.window().canvas().drawing();
  const Group& g = drawing.groups[random.below(drawing.groups.size())];
  const QRectF box = hand.window().canvas().on_view(g.box);
  return QPointF(box.x() + box.width() * static_cast<double>(random.below(100)) / 100,
                 box.y() + box.height() * static_cast<double>(random.below(100)) / 100)
      .toPoint();
}

// Types a name; now and then leaves it there and goes on with something else.
void type_name(Random& random, Hand& hand) {
  hand.window().action("rename")->trigger();
  auto* line = hand.window().findChild<QLineEdit*>(QStringLiteral("in_place"));
  if (!line || !line->isVisible()) return;
  QTest::keyClicks(line, QStringLiteral("name-%1").arg(random.below(1000)));
  if (!random.chance(30)) QTest::keyClick(line, random.chance(70) ? Qt::Key_Return : Qt::Key_Escape);
}

} // namespace

void act_at_random(Random& random, Hand& hand) {
  switch (random.below(12)) {
  case 0:
    return hand.click(anywhere(random, hand), random.chance(40) ? Qt::ControlModifier : Qt::NoModifier);
  case 1:
    return hand.window().action("duplicate")->trigger();
  case 2:
    if (hand.lab().machines.size() > 4) hand.window().action("remove")->trigger();
    return;
  case 3:
    return hand.window().action("undo")->trigger();
  case 4:
    return hand.window().action("redo")->trigger();
  case 5:
    return type_name(random, hand);
  case 6: {
    hand.press(anywhere(random, hand));
    hand.move(anywhere(random, hand));
    hand.key(Qt::Key_Escape);
    return hand.release(QPoint(1, 1));
  }
  case 7: {
    constexpr std::array kOrders{"own_row", "gateway",    "dhcp_server", "earlier",
                                 "later",   "switch_off", "switch_on"};
    return hand.window().action(kOrders[random.below(kOrders.size())])->trigger();
  }
  default:
    return hand.drag(anywhere(random, hand), anywhere(random, hand));
  }
}

} // namespace snug::test
