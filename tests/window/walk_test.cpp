// The main job with the mouse and the keyboard, from the sample to the papers.

#include "core/budget/memory.h"
#include "core/document/read.h"
#include "core/document/write.h"
#include "tests/window/hand.h"
#include "ui/panels/address_panel.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/fix_buttons.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/window/hand_out.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>

namespace snug::test {
namespace {

const MemoryBudget& room_of(const Analysis& a, AnyId id, ExerciseId exercise) {
  for (const MemoryBudget& b : a.budgets(exercise).memory)
    if (b.of == id) return b;
  ADD_FAILURE() << "no budget of " << to_text(id);
  return a.budgets(exercise).memory.front();
}

QPushButton* fix_of(FindingsPanel& panel, const QString& sentence) {
  EXPECT_TRUE(QTest::qWaitFor([&] { return panel.fixes().is_done(); }));
  for (QFrame* row : panel.findChildren<QFrame*>(QStringLiteral("finding"))) {
    if (row->isHidden() || row->accessibleName() != sentence) continue;
    for (QPushButton* b : row->findChildren<QPushButton*>())
      if (b->property("role") == QStringLiteral("fix")) return b;
  }
  return nullptr;
}

class Walk : public ::testing::Test {
 protected:
  void SetUp() override {
    window.start_sample("skerry-ferries");
    first_bytes = write_lab(hand.lab());
  }
  MainWindow window;
  Hand hand{window};
  std::string first_bytes;
};

TEST_F(Walk, GuestMovesBetweenHypervisorsAndEverythingSaysSoBefore) {
  const MachineId guest = hand.machine("tickets-1"), from = hand.machine("deck-a"),
                  to = hand.machine("deck-b");
  const std::int64_t from_free = room_of(hand.session().analysis(), from, {}).headroom();
  const std::int64_t to_free = room_of(hand.session().analysis(), to, {}).headroom();
  const std::int64_t takes =
      snug::takes(hand.session().analysis().index(), hand.session().analysis().index().place(guest));
  const QString from_text = hand.texts(from), to_text_before = hand.texts(to);

  const QPoint start = hand.on(guest), end = hand.on(to) + QPoint(30, 40);
  hand.press(start);
  hand.move(end);
  ASSERT_TRUE(hand.session().is_previewing());
  EXPECT_EQ(room_of(hand.session().shown(), from, {}).headroom(), from_free + takes);
  EXPECT_EQ(room_of(hand.session().shown(), to, {}).headroom(), to_free - takes);
  EXPECT_NE(hand.texts(from), from_text);
  EXPECT_NE(hand.texts(to), to_text_before);
  const QString said = window.canvas().gesture_words();
  const Analysis& then = hand.session().shown();
  for (const auto& [id, name] : {std::pair(from, "deck-a"), {to, "deck-b"}}) { // as the rooms say it
    const std::string room = "room for " + show_mib(room_for_guest(then.index(), room_of(then, id, {})));
    EXPECT_TRUE(said.contains(as_qt(std::string(name) + " then has " + room))) << said.toStdString();
    EXPECT_TRUE(hand.texts(id).contains(as_qt(room))) << hand.texts(id).toStdString();
  }
  EXPECT_EQ(write_lab(hand.lab()), first_bytes) << "a drag changes nothing before the drop";
  EXPECT_FALSE(window.action("undo")->isEnabled());

  hand.release(end);
  EXPECT_EQ(find<Machine>(hand.lab(), guest)->carrier, to);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Move tickets-1 to deck-b"));
  EXPECT_TRUE(hand.session().is_selected(guest));
  window.action("undo")->trigger();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  EXPECT_EQ(hand.session().selection(), std::vector<AnyId>{guest}) << "the others only stand elsewhere";
  window.action("redo")->trigger();
  EXPECT_EQ(find<Machine>(hand.lab(), guest)->carrier, to);
  EXPECT_EQ(hand.session().selection(), std::vector<AnyId>{guest});
}

TEST_F(Walk, EscapeInMidDragRestores) {
  hand.press(hand.on(hand.machine("tickets-1")));
  hand.move(hand.on(hand.machine("deck-b")) + QPoint(30, 40));
  ASSERT_TRUE(hand.session().is_previewing());
  hand.key(Qt::Key_Escape);
  EXPECT_FALSE(hand.session().is_previewing());
  EXPECT_FALSE(window.canvas().is_busy());
  hand.release(hand.on(hand.machine("deck-b")));
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Walk, RefusedTargetSaysWhy) {
  const MachineId plain = hand.machine("wheelhouse");
  const snug::Box box = box_of(window.canvas().drawing(), plain);
  hand.press(hand.on(hand.machine("tickets-1")));
  hand.move(window.canvas().on_view(box).center().toPoint());
  EXPECT_EQ(window.canvas().gesture_words(),
            QStringLiteral("wheelhouse is no hypervisor: give it such a role first, then it takes guests"));
  hand.release(window.canvas().on_view(box).center().toPoint());
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  EXPECT_FALSE(window.notice().text().isEmpty());
}

TEST_F(Walk, DuplicateAddressIsFoundAndMended) {
  window.action("show_addresses")->trigger();
  QTableView& view = window.addresses().view();
  const QAbstractItemModel& model = *view.model();
  int address = -1;
  for (int c = 0; c < model.columnCount(); ++c)
    if (model.headerData(c, Qt::Horizontal).toString() == QStringLiteral("Address")) address = c;
  std::vector<int> rows;
  for (int r = 0; r < model.rowCount() && rows.size() < 2; ++r)
    if (model.index(r, 5).data().toString() == QStringLiteral("Steering") &&
        (model.flags(model.index(r, address)) & Qt::ItemIsEditable))
      rows.push_back(r);
  ASSERT_EQ(rows.size(), 2U);
  const QString taken = model.index(rows[0], address).data().toString();
  const std::size_t before = hand.session().analysis().findings().size();
  view.setCurrentIndex(model.index(rows[1], address));
  view.edit(model.index(rows[1], address));
  auto* line = view.findChild<QLineEdit*>();
  ASSERT_NE(line, nullptr);
  line->selectAll();
  QTest::keyClicks(line, taken);
  QTest::keyClick(line, Qt::Key_Return);
  QTest::qWait(1);
  const Address twice = *parse_address(taken.toStdString());
  const auto is_about_it = [&](const Finding& f) {
    return f.rule->id == "address-twice" && english(f.message).starts_with(to_text(twice) + " ");
  };
  const Finding* found = nullptr;
  for (const Finding& f : hand.session().analysis().findings())
    if (is_about_it(f)) found = &f;
  ASSERT_NE(found, nullptr);
  window.action("show_findings")->trigger();
  QPushButton* fix = fix_of(window.findings(), words(found->message));
  ASSERT_NE(fix, nullptr);
  QTest::mouseClick(fix, Qt::LeftButton);
  for (const Finding& f : hand.session().analysis().findings()) EXPECT_FALSE(is_about_it(f));
  EXPECT_EQ(hand.session().analysis().findings().size(), before);
  while (hand.session().can_undo()) hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Walk, PinMovesToAnotherRail) {
  CardId card;
  for (const Card& c : hand.lab().cards)
    if (c.machine == hand.machine("gangway") && c.segment != hand.segment("Cargo")) card = c.id;
  hand.drag(hand.pin(card), hand.rail(hand.segment("Cargo")));
  EXPECT_EQ(find<Card>(hand.lab(), card)->segment, hand.segment("Cargo"));
  const auto& rows = find<Card>(hand.lab(), card)->addresses;
  ASSERT_FALSE(rows.empty());
  EXPECT_EQ(rows.front().kind, AddressKind::suggested);
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(Walk, BlockOnTheRulerIsDraggedInSteps) {
  const MachineId m = hand.machine("wheelhouse");
  const std::int64_t before = find<Machine>(hand.lab(), m)->memory;
  const QRect block = window.ruler().block(m);
  const QPoint edge(block.right() + 1, block.center().y());
  QTest::mousePress(&window.ruler(), Qt::LeftButton, {}, edge);
  QMouseEvent move(QEvent::MouseMove, edge + QPoint(60, 0), window.ruler().mapToGlobal(edge + QPoint(60, 0)),
                   Qt::NoButton, Qt::LeftButton, {});
  QCoreApplication::sendEvent(&window.ruler(), &move);
  EXPECT_TRUE(hand.session().is_previewing());
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  QTest::mouseRelease(&window.ruler(), Qt::LeftButton, {}, edge + QPoint(60, 0));
  const std::int64_t after = find<Machine>(hand.lab(), m)->memory;
  EXPECT_GT(after, before);
  EXPECT_EQ(after % 256, 0);
}

TEST_F(Walk, SavesReopensAndHandsOutEverything) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("mine.snuglab"));
  hand.drag(hand.on(hand.machine("tickets-1")), hand.on(hand.machine("deck-b")) + QPoint(30, 40));
  ASSERT_TRUE(hand.session().save_as(path)) << window.notice().text().toStdString();
  EXPECT_FALSE(hand.session().is_dirty());
  const std::string bytes = write_lab(hand.lab());
  MainWindow other;
  ASSERT_TRUE(other.open_file(path));
  EXPECT_TRUE(other.session().is_read_only()) << "the first window holds it";
  EXPECT_EQ(write_lab(other.session().lab()), bytes);
  HandOut papers_dialog(hand.session());
  for (const PaperInfo& p : papers()) {
    papers_dialog.choose(p.paper);
    const QString file = folder.filePath(QStringLiteral("lab") + QLatin1String(p.ending));
    ASSERT_TRUE(papers_dialog.write_to(file)) << p.ending;
    EXPECT_GT(QFileInfo(file).size(), 300) << p.ending;
  }
}

TEST_F(Walk, BadFileLeavesTheWorkAndSaysWhatAndWhere) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("bad.snuglab"));
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("{\"format\": \"snuglab\",\n \"version\": 1,\n \"machines\": [}");
  file.close();
  EXPECT_FALSE(window.open_file(path));
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  EXPECT_TRUE(window.notice().text().contains(QStringLiteral("bad.snuglab:3:")))
      << window.notice().text().toStdString();
}

} // namespace
} // namespace snug::test
