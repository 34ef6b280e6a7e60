// The outline: selection both ways, names and values in place, dragging, the menu. Real events.

#include "ui/outline/outline_panel.h"

#include "core/document/write.h"
#include "core/text/outline_text.h"
#include "tests/window/hand.h"
#include "ui/session/words.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QMenu>
#include <QTest>
#include <QTimer>

namespace snug::test {
namespace {

class Outline : public ::testing::Test {
 protected:
  void SetUp() override {
    window.start_sample("skerry-ferries");
    window.action("show_outline")->trigger();
    QTest::qWait(1);
    first_bytes = write_lab(hand.lab());
  }
  OutlineView& view() { return window.outline().view(); }
  OutlineModel& model() { return view().outline(); }
  QModelIndex row(AnyId id) {
    const QModelIndexList rows = model().rows_of(id);
    EXPECT_FALSE(rows.isEmpty()) << to_text(id);
    return rows.value(0);
  }
  QPoint at(AnyId id) {
    view().scrollTo(row(id));
    return view().visualRect(row(id)).center();
  }
  void move(QPoint from, QPoint to) {
    constexpr int kSteps = 10;
    for (int i = 1; i <= kSteps; ++i) {
      const QPoint p = from + (to - from) * i / kSteps;
      QMouseEvent event(QEvent::MouseMove, p, view().viewport()->mapToGlobal(p), Qt::NoButton, Qt::LeftButton,
                        {});
      QCoreApplication::sendEvent(view().viewport(), &event);
    }
  }
  void press(QPoint p) { QTest::mousePress(view().viewport(), Qt::LeftButton, {}, p); }
  void release(QPoint p) { QTest::mouseRelease(view().viewport(), Qt::LeftButton, {}, p); }
  void type_into_editor(const QString& text, Qt::Key last) {
    auto* line = view().viewport()->findChild<QLineEdit*>();
    ASSERT_NE(line, nullptr);
    line->selectAll();
    QTest::keyClicks(line, text);
    QTest::keyClick(line, last);
    QTest::qWait(1);
  }
  MainWindow window;
  Hand hand{window};
  std::string first_bytes;
};

TEST_F(Outline, HoldsEveryElementOfTheSample) {
  const Lab& lab = hand.lab();
  for (const Machine& m : lab.machines) {
    const QModelIndexList rows = model().rows_of(m.id);
    ASSERT_EQ(rows.size(), 1) << m.name;
    const AnyId above = model().id(rows.front().parent());
    EXPECT_EQ(above, m.carrier ? AnyId(m.carrier) : (AnyId{Kind::pc, 0})) << m.name;
  }
  for (const Card& c : lab.cards) {
    std::vector<AnyId> above;
    for (const QModelIndex& r : model().rows_of(c.id)) above.push_back(model().id(r.parent()));
    EXPECT_EQ(std::count(above.begin(), above.end(), AnyId(c.machine)), 1) << to_text(c.id);
    if (c.segment) {
      EXPECT_EQ(std::count(above.begin(), above.end(), AnyId(c.segment)), 1) << to_text(c.id);
    }
    for (const SegmentTag& t : c.carries)
      EXPECT_EQ(std::count(above.begin(), above.end(), AnyId(t.segment)), 1) << to_text(c.id);
  }
  for (const Disk& d : lab.disks) EXPECT_EQ(model().id(row(d.id).parent()), AnyId(d.machine));
  for (const Segment& s : lab.segments) EXPECT_EQ(model().rows_of(s.id).size(), 1);
  for (const Lan& l : lab.lans) EXPECT_EQ(model().rows_of(l.id).size(), 1);
  for (const Exercise& e : lab.exercises) EXPECT_EQ(model().rows_of(e.id).size(), 1);
}

TEST_F(Outline, SelectionGoesBothWays) {
  const MachineId wheelhouse = hand.machine("wheelhouse"), hold = hand.machine("hold");
  QTest::mouseClick(view().viewport(), Qt::LeftButton, {}, at(wheelhouse));
  EXPECT_EQ(hand.session().selection(), std::vector<AnyId>{wheelhouse});
  QTest::mouseClick(view().viewport(), Qt::LeftButton, Qt::ControlModifier, at(hold));
  EXPECT_EQ(hand.session().selection().size(), 2U);
  hand.click(hand.on(hold));
  hand.click(hand.on(hand.machine("beacon")));
  ASSERT_EQ(view().selectionModel()->selectedRows().size(), 1);
  EXPECT_EQ(model().id(view().selectionModel()->selectedRows().front()), AnyId(hand.machine("beacon")));
  QTest::keyClick(&view(), Qt::Key_Down);
  EXPECT_NE(hand.session().selection(), std::vector<AnyId>{hand.machine("beacon")});
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Outline, NamesAndValuesAreEditedInPlace) {
  const MachineId beacon = hand.machine("beacon");
  QTest::mouseClick(view().viewport(), Qt::LeftButton, {}, at(beacon));
  QTest::keyClick(&view(), Qt::Key_F2);
  type_into_editor(QStringLiteral("lantern"), Qt::Key_Return);
  EXPECT_EQ(find<Machine>(hand.lab(), beacon)->name, "lantern");
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Rename beacon to lantern"));
  view().setCurrentIndex(row(beacon).siblingAtColumn(1));
  QTest::keyClick(&view(), Qt::Key_F2);
  type_into_editor(QStringLiteral("3.5g"), Qt::Key_Return);
  EXPECT_EQ(find<Machine>(hand.lab(), beacon)->memory, 3584);
  QTest::keyClick(&view(), Qt::Key_F2);
  type_into_editor(QStringLiteral("nine"), Qt::Key_Return);
  EXPECT_EQ(find<Machine>(hand.lab(), beacon)->memory, 3584) << "what cannot be read is refused";
  CardId card;
  for (const Card& c : hand.lab().cards)
    if (c.machine == beacon && c.segment == hand.segment("Steering")) card = c.id;
  view().setCurrentIndex(row(card).siblingAtColumn(1));
  QTest::keyClick(&view(), Qt::Key_F2);
  type_into_editor(QStringLiteral(".77"), Qt::Key_Return);
  EXPECT_EQ(to_text(*find<Card>(hand.lab(), card)->addresses.front().address), "172.22.10.77");
  QTest::keyClick(&view(), Qt::Key_F2);
  type_into_editor(QStringLiteral(".78"), Qt::Key_Escape);
  EXPECT_EQ(to_text(*find<Card>(hand.lab(), card)->addresses.front().address), "172.22.10.77");
  while (hand.session().can_undo()) hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Outline, DeleteTakesAwayAndUndoBringsBack) {
  const MachineId manifest = hand.machine("manifest");
  QTest::mouseClick(view().viewport(), Qt::LeftButton, {}, at(manifest));
  QTest::keyClick(&view(), Qt::Key_Delete);
  EXPECT_EQ(find<Machine>(hand.lab(), manifest), nullptr);
  EXPECT_TRUE(model().rows_of(manifest).isEmpty());
  window.action("undo")->trigger();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  EXPECT_EQ(model().rows_of(manifest).size(), 1);
}

TEST_F(Outline, DragMovesAGuestAndSaysSoBefore) {
  const MachineId guest = hand.machine("tickets-1"), to = hand.machine("deck-b");
  const QPoint from = at(guest);
  const QPoint end = view().visualRect(row(to)).center();
  ASSERT_TRUE(view().viewport()->rect().contains(end));
  press(from);
  move(from, end);
  EXPECT_TRUE(hand.session().is_previewing());
  const QString said = window.outline().said();
  EXPECT_TRUE(said.contains(QStringLiteral("deck-a then has"))) << said.toStdString();
  EXPECT_TRUE(said.contains(QStringLiteral("deck-b then has"))) << said.toStdString();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  release(end);
  EXPECT_EQ(find<Machine>(hand.lab(), guest)->carrier, to);
  EXPECT_FALSE(window.canvas().is_busy());
  EXPECT_EQ(model().id(row(guest).parent()), AnyId(to));
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Move tickets-1 to deck-b"));
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Outline, RefusalAndEscape) {
  const MachineId guest = hand.machine("tickets-1");
  const QPoint from = at(guest), plain = view().visualRect(row(hand.machine("wheelhouse"))).center();
  ASSERT_TRUE(view().viewport()->rect().contains(plain));
  press(from);
  move(from, plain);
  EXPECT_EQ(window.outline().said(),
            QStringLiteral("wheelhouse is no hypervisor: give it such a role first, then it takes guests"));
  EXPECT_FALSE(hand.session().is_previewing());
  const QPoint good = view().visualRect(row(hand.machine("deck-b"))).center();
  move(plain, good);
  EXPECT_TRUE(hand.session().is_previewing());
  QTest::keyClick(&view(), Qt::Key_Escape);
  EXPECT_FALSE(hand.session().is_previewing());
  EXPECT_FALSE(window.canvas().is_busy());
  EXPECT_EQ(window.outline().said(), words(text::outline_help));
  release(good);
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Outline, RowsAreDraggedOntoThePictureAndOntoSegments) {
  const MachineId guest = hand.machine("tickets-1"), to = hand.machine("deck-b");
  window.canvas().show_all();
  const QPoint from = at(guest);
  const QPoint on_picture = hand.on(to) + QPoint(30, 40);
  const QPoint end = view().viewport()->mapFromGlobal(window.canvas().viewport()->mapToGlobal(on_picture));
  press(from);
  move(from, end);
  EXPECT_TRUE(hand.session().is_previewing());
  release(end);
  EXPECT_EQ(find<Machine>(hand.lab(), guest)->carrier, to);
  EXPECT_FALSE(view().is_dragging());
  const std::size_t cards = hand.lab().cards.size();
  const QPoint start = at(hand.machine("beacon"));
  const QPoint rail = view().visualRect(row(hand.segment("Cargo"))).center();
  if (!view().viewport()->rect().contains(rail)) {
    view().collapse(row(hand.machine("deck-a")));
    view().collapse(row(hand.machine("deck-b")));
  }
  const QPoint cargo = view().visualRect(row(hand.segment("Cargo"))).center();
  ASSERT_TRUE(view().viewport()->rect().contains(cargo));
  press(start);
  move(start, cargo);
  release(cargo);
  ASSERT_EQ(hand.lab().cards.size(), cards + 1);
  EXPECT_EQ(hand.lab().cards.back().segment, hand.segment("Cargo"));
  EXPECT_EQ(hand.lab().cards.back().machine, hand.machine("beacon"));
  while (hand.session().can_undo()) hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Outline, BetweenRowsMeansAPlaceBeside) {
  const MachineId beacon = hand.machine("beacon"), hold = hand.machine("hold");
  const QPoint from = at(beacon);
  const QRect box = view().visualRect(row(hold));
  const QPoint below(box.center().x(), box.bottom() - 1);
  press(from);
  move(from, below);
  release(below);
  const std::vector<MachineId> order = guests_in_order(hand.lab(), {});
  const auto place = [&](MachineId m) { return std::find(order.begin(), order.end(), m) - order.begin(); };
  EXPECT_EQ(place(beacon), place(hold) + 1);
}

TEST_F(Outline, MenuIsTheOneOfThePicture) {
  QStringList seen;
  QTimer::singleShot(50, [&] {
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    if (!menu) return;
    for (const QAction* a : menu->actions()) seen << a->text().remove(QLatin1Char('&'));
    menu->close();
  });
  const QPoint p = at(hand.machine("beacon"));
  QTest::mouseClick(view().viewport(), Qt::LeftButton, {}, p);
  QContextMenuEvent event(QContextMenuEvent::Mouse, p, view().viewport()->mapToGlobal(p));
  QCoreApplication::sendEvent(view().viewport(), &event);
  EXPECT_TRUE(seen.contains(QStringLiteral("Rename"))) << seen.join(',').toStdString();
  EXPECT_TRUE(seen.contains(QStringLiteral("Remove")));
  EXPECT_TRUE(seen.contains(QStringLiteral("Move to")));
}

TEST_F(Outline, StaysClosedWhereItWasClosed) {
  const MachineId deck = hand.machine("deck-a");
  view().collapse(row(deck));
  window.action("select_all")->trigger();
  hand.session().select({hand.machine("beacon")});
  window.action("duplicate")->trigger();
  EXPECT_FALSE(view().isExpanded(row(deck)));
  EXPECT_TRUE(view().isExpanded(row(hand.machine("deck-b"))));
}

} // namespace
} // namespace snug::test
