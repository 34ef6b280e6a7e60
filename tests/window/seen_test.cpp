// What stands over the picture helps and does not hide: the small map, the way of a packet, words of keys;
// what goes along with what is moved or placed is said before the drop.

#include "core/roles/catalogue.h"
#include "tests/support/sample.h"
#include "tests/window/ferry_window.h"
#include "ui/canvas/minimap.h"
#include "ui/ruler/ruler.h"

#include <QTest>

#include <algorithm>

namespace snug::test {
namespace {

class Seen : public FerryWindow {
 protected:
  Canvas& canvas() { return window.canvas(); }
  Minimap& map() { return *static_cast<Minimap*>(canvas().findChild<QWidget*>(QStringLiteral("minimap"))); }
  bool covers_a_machine() {
    const QRectF there = map().geometry().translated(-canvas().viewport()->pos());
    const auto& groups = canvas().drawing().groups;
    return std::any_of(groups.begin(), groups.end(), [&](const Group& g) {
      return g.part == Part::machine && canvas().on_view(g.box).intersects(there);
    });
  }
  const Disk& disk_of(const char* name) {
    return *std::find_if(hand.lab().disks.begin(), hand.lab().disks.end(),
                         [&](const Disk& d) { return d.machine == hand.machine(name); });
  }
};

TEST_F(Seen, TheMapStandsWhereNoMachineIsOrLetsTheHandThrough) {
  canvas().set_zoom(1.4, {0, 0});
  ASSERT_TRUE(map().isVisible());
  const auto settled = [&] { return map().is_faint() || !covers_a_machine(); };
  EXPECT_TRUE(QTest::qWaitFor(settled)) << "after a while at rest";
  window.start_sample("sixty");
  canvas().set_zoom(2.2, {0, 0});
  canvas().show_place(hand.lab().machines.front().id);
  ASSERT_TRUE(map().isVisible());
  EXPECT_TRUE(QTest::qWaitFor(settled));
  if (map().is_faint()) {
    EXPECT_TRUE(map().testAttribute(Qt::WA_TransparentForMouseEvents));
  }
}

TEST_F(Seen, AWayShowsTheWiresOfItsSteps) {
  CardId a, b;
  for (const Card& c : hand.lab().cards) {
    if (c.segment != hand.segment("Steering")) continue;
    if (c.machine == hand.machine("beacon")) a = c.id;
    if (c.machine == hand.machine("hold")) b = c.id;
  }
  LineShape wire;
  for (const AnyShape& s : canvas().drawing().shapes)
    if (const auto* l = std::get_if<LineShape>(&s); l && l->part == Part::wire && l->of == AnyId(a))
      wire = *l;
  const QPoint middle = canvas().on_view(QPointF(wire.from.x, (wire.from.y + wire.to.y) / 2.0)).toPoint();
  const auto green = [&] {
    const QImage seen = canvas().viewport()->grab(QRect(middle - QPoint(6, 6), QSize(12, 12))).toImage();
    const QRgb ok = 0xff000000U | palette(Theme::light).of(Ink::ok);
    int n = 0;
    for (int y = 0; y < seen.height(); ++y)
      for (int x = 0; x < seen.width(); ++x) n += seen.pixel(x, y) == ok ? 1 : 0;
    return n;
  };
  EXPECT_EQ(green(), 0);
  canvas().show_way({hand.machine("beacon"), a, hand.segment("Steering"), b, hand.machine("hold")}, {});
  EXPECT_GT(green(), 12);
  canvas().show_way({}, {});
  EXPECT_EQ(green(), 0);
}

TEST_F(Seen, KeysAreSaidWhereKeysAim) {
  canvas().begin_by_key(place_role(hand.session(), *find_role("router")));
  EXPECT_TRUE(
      canvas().gesture_words().contains(QStringLiteral("arrow keys aim, Enter puts it down, Esc leaves")))
      << canvas().gesture_words().toStdString();
  hand.key(Qt::Key_Escape);
  canvas().begin(place_role(hand.session(), *find_role("router")));
  hand.hover(hand.on(hand.machine("deck-b")) + QPoint(20, 20));
  EXPECT_FALSE(canvas().gesture_words().contains(QStringLiteral("arrow keys")));
  EXPECT_FALSE(canvas().gesture_words().isEmpty());
  hand.key(Qt::Key_Escape);
}

TEST_F(Seen, AGuestPlacedInARoomGetsACardAndThatIsSaid) {
  const QPoint there = hand.on(hand.machine("deck-a")) + QPoint(24, 24);
  canvas().begin(place_role(hand.session(), *find_role("router")));
  hand.hover(there);
  EXPECT_TRUE(canvas().gesture_words().contains(QStringLiteral("gets a card on Passengers: 172.22.40.")))
      << canvas().gesture_words().toStdString();
  hand.click(there);
  const Machine& made = hand.lab().machines.back();
  EXPECT_EQ(made.carrier, hand.machine("deck-a"));
  EXPECT_EQ(hand.lab().cards.back().machine, made.id);
  EXPECT_EQ(hand.lab().cards.back().segment, hand.segment("Passengers")) << "where most of its guests are";
  back_to_the_first_bytes();
}

TEST_F(Seen, ADiskGoesAlongAndThatIsSaid) {
  hand.session().perform(
      set_field(hand.lab(), disk_of("tickets-1").id, "store", Value(AnyId(disk_of("deck-a").id))));
  const QPoint goal = hand.on(hand.machine("deck-b")) + QPoint(30, 40);
  hand.press(hand.on(hand.machine("tickets-1")));
  hand.move(goal);
  EXPECT_TRUE(canvas().gesture_words().contains(QStringLiteral("goes along, onto deck-b")))
      << canvas().gesture_words().toStdString();
  hand.release(goal);
  EXPECT_EQ(disk_of("tickets-1").store, AnyId(disk_of("deck-b").id));
  hand.session().undo();
  EXPECT_EQ(disk_of("tickets-1").store, AnyId(disk_of("deck-a").id)) << "one step";
  back_to_the_first_bytes();
}

// Beside the worst case the ruler says what is expected to be used.
TEST_F(Seen, TheRulerShowsWhatIsExpected) {
  auto* ruler = window.findChild<Ruler*>(QStringLiteral("ruler"));
  ASSERT_NE(ruler, nullptr);
  hand.session().perform(
      set_field(hand.lab(), hand.machine("wheelhouse"), "expected_percent", std::int64_t{50}));
  const MachineId full = hand.machine("beacon");
  hand.session().perform(set_field(hand.lab(), full, "expected_percent", std::int64_t{100}));
  const MemoryBudget& pc = hand.session().analysis().budgets({}).memory.front();
  ASSERT_LT(pc.expected, pc.taken);
  const auto& shapes = ruler->drawing().shapes;
  const std::string words = "expected use " + show_mib(pc.expected);
  EXPECT_TRUE(std::any_of(shapes.begin(), shapes.end(), [&](const AnyShape& s) {
    const auto* t = std::get_if<TextShape>(&s);
    return t && t->text == words;
  })) << words;
  EXPECT_TRUE(ruler->accessibleName().contains(QString::fromStdString(words)))
      << ruler->accessibleName().toStdString();
  EXPECT_TRUE(
      ruler->block_words(hand.machine("wheelhouse")).contains(QStringLiteral("is expected to be used")));
  EXPECT_FALSE(ruler->block_words(full).contains(QStringLiteral("expected")));
  back_to_the_first_bytes();
}

} // namespace
} // namespace snug::test
