// Machines kept as a part of one's own, by hand: kept, placed, renamed, removed, brought back.

#include "ui/panels/own_parts_view.h"

#include "tests/window/actions.h"
#include "tests/window/ferry_window.h"
#include "ui/panels/part_button.h"
#include "ui/session/words.h"
#include "ui/window/find_box.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <QToolButton>

namespace snug::test {
namespace {

class Home { // of the person, before the window is there
 public:
  Home() : before_(qgetenv("XDG_CONFIG_HOME")) { qputenv("XDG_CONFIG_HOME", folder.path().toUtf8()); }
  ~Home() { qputenv("XDG_CONFIG_HOME", before_); }
  Home(const Home&) = delete;
  Home& operator=(const Home&) = delete;
  QStringList files() const {
    return QDir(folder.filePath(QStringLiteral("snuglab/parts"))).entryList(QDir::Files);
  }
  const QTemporaryDir folder;

 private:
  QByteArray before_;
};

class OwnPartsByHand : public ::testing::Test {
 protected:
  void SetUp() override {
    window.resize(1440, 900);
    window.start_sample("skerry-ferries");
    window.show();
    QApplication::setActiveWindow(&window);
    first_bytes = write_lab(hand.lab());
  }
  OwnPartsView& view() { return *window.findChild<OwnPartsView*>(); }
  QLineEdit* line() {
    for (auto* l : view().findChildren<QLineEdit*>(QStringLiteral("own_part_name")))
      if (l->isVisible()) return l;
    return nullptr;
  }
  PartButton* button(const char* name) {
    for (auto* b : view().findChildren<PartButton*>())
      if (b->isVisible() && b->accessibleName() == QLatin1String(name)) return b;
    return nullptr;
  }
  void keep(std::vector<AnyId> ids, const char* name) {
    hand.session().select(std::move(ids));
    window.action("keep_part")->trigger();
    ASSERT_NE(line(), nullptr);
    line()->selectAll();
    QTest::keyClicks(line(), QLatin1String(name));
    QTest::keyClick(line(), Qt::Key_Return);
  }
  void keep_web_pair() { keep({hand.machine("tickets-1"), hand.machine("tickets-db")}, "Web pair"); }
  // Behind the guests of deck-b, where the keyboard aims as well.
  QPoint free_place() {
    const snug::Box box = box_of(window.canvas().drawing(), hand.machine("deck-b"));
    return window.canvas().on_view(QPointF(box.x + box.w - 3, box.y + box.h - 3)).toPoint();
  }
  std::vector<std::string> guests() {
    std::vector<std::string> out;
    for (const MachineId m : guests_in_order(hand.lab(), hand.machine("deck-b")))
      out.push_back(find<Machine>(hand.lab(), m)->name);
    return out;
  }
  const std::vector<std::string> with_pair{"manifest", "tickets-2", "tickets-db-2"};
  Home home;
  MainWindow window;
  Hand hand{window};
  std::string first_bytes;
};

TEST_F(OwnPartsByHand, KeptUnderANameTypedWhereItStands) {
  EXPECT_FALSE(view().isVisible()) << "simple first";
  hand.session().select({});
  EXPECT_FALSE(window.action("keep_part")->isEnabled());
  hand.session().select({hand.machine("beacon")});
  window.action("keep_part")->trigger();
  ASSERT_NE(line(), nullptr);
  EXPECT_EQ(line()->text(), QStringLiteral("beacon"));
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
  QTest::keyClick(line(), Qt::Key_Escape);
  EXPECT_EQ(line(), nullptr);
  EXPECT_TRUE(home.files().isEmpty());
  keep_web_pair();
  ASSERT_NE(button("Web pair"), nullptr);
  EXPECT_EQ(button("Web pair")->text(), QStringLiteral("Web pair\n2 machines · 5.0 GiB"));
  EXPECT_EQ(home.files(), QStringList{QStringLiteral("web-pair.snuglab")});
  EXPECT_TRUE(window.notice().text().contains(QStringLiteral("Web pair")));
  EXPECT_EQ(write_lab(hand.lab()), first_bytes) << "the lab is not touched";
  EXPECT_FALSE(hand.session().is_dirty());
}

TEST_F(OwnPartsByHand, ARefusedNameStaysToBeMended) {
  keep_web_pair();
  keep({hand.machine("beacon")}, "web pair");
  ASSERT_NE(line(), nullptr);
  EXPECT_TRUE(window.notice().text().contains(QStringLiteral("Web pair already")))
      << window.notice().text().toStdString();
  line()->clear();
  QTest::keyClick(line(), Qt::Key_Return);
  ASSERT_NE(line(), nullptr);
  QTest::keyClicks(line(), QStringLiteral("Names"));
  QTest::keyClick(line(), Qt::Key_Return);
  EXPECT_NE(button("Names"), nullptr);
  EXPECT_EQ(home.files().size(), 2);
}

TEST_F(OwnPartsByHand, DraggedClickedAndAimedLikeTheOthers) {
  keep_web_pair();
  const QPoint goal = free_place();
  PartButton* b = button("Web pair");
  QTest::mousePress(b, Qt::LeftButton);
  const QPoint global = window.canvas().viewport()->mapToGlobal(goal);
  for (int i = 1; i <= 12; ++i) {
    const QPoint at = b->mapFromGlobal(global) * i / 12;
    QMouseEvent move(QEvent::MouseMove, at, b->mapToGlobal(at), Qt::NoButton, Qt::LeftButton, {});
    QCoreApplication::sendEvent(b, &move);
  }
  EXPECT_TRUE(hand.session().is_previewing());
  EXPECT_TRUE(window.canvas().gesture_words().contains(QStringLiteral("deck-b then")))
      << window.canvas().gesture_words().toStdString();
  QTest::mouseRelease(b, Qt::LeftButton, {}, b->mapFromGlobal(global));
  EXPECT_EQ(guests(), with_pair);
  const std::string dragged = write_lab(hand.lab());
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);

  QTest::mouseClick(button("Web pair"), Qt::LeftButton);
  const QPoint there = free_place();
  hand.hover(there);
  hand.click(there);
  EXPECT_EQ(write_lab(hand.lab()), dragged);
  hand.session().undo();

  hand.click(hand.on(hand.machine("deck-b"))); // the keyboard is there
  button("Web pair")->setFocus();
  QTest::keyClick(button("Web pair"), Qt::Key_Return);
  QTest::keyClick(&window.canvas(), Qt::Key_Return);
  EXPECT_EQ(write_lab(hand.lab()), dragged);
  EXPECT_EQ(hand.session().selection().size(), 2U);
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(OwnPartsByHand, SeveralAtOnceAndOntoARail) {
  keep({hand.machine("beacon")}, "Names");
  const std::size_t before = hand.lab().machines.size();
  QTest::mouseClick(button("Names"), Qt::LeftButton);
  hand.hover(hand.rail(hand.segment("Cargo")));
  QTest::keyClick(&window.canvas(), Qt::Key_3);
  hand.click(hand.rail(hand.segment("Cargo")));
  EXPECT_EQ(hand.lab().machines.size(), before + 3);
  const Machine& last = hand.lab().machines.back();
  EXPECT_EQ(last.name, "beacon-4");
  const auto& cards = hand.lab().cards;
  EXPECT_TRUE(std::any_of(cards.begin(), cards.end(), [&](const Card& c) {
    return c.machine == last.id && c.segment == hand.segment("Cargo");
  }));
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
}

TEST_F(OwnPartsByHand, RenamedRemovedAndBroughtBack) {
  keep_web_pair();
  button("Web pair")->setFocus();
  hand.session().select({hand.machine("hold")}); // F2 and Delete are the part's all the same
  QTest::keyClick(button("Web pair"), Qt::Key_F2);
  ASSERT_NE(line(), nullptr);
  QTest::keyClicks(line(), QStringLiteral("Two webs"));
  QTest::keyClick(line(), Qt::Key_Return);
  ASSERT_NE(button("Two webs"), nullptr);
  QTest::keyClick(button("Two webs"), Qt::Key_Delete);
  EXPECT_EQ(button("Two webs"), nullptr);
  EXPECT_TRUE(home.files().isEmpty());
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
  EXPECT_TRUE(window.notice().text().contains(QStringLiteral("Two webs")));
  QPushButton* back = nullptr;
  for (auto* b : window.notice().findChildren<QPushButton*>())
    if (b->isVisible() && b->text() == QStringLiteral("Bring it back")) back = b;
  ASSERT_NE(back, nullptr);
  QTest::mouseClick(back, Qt::LeftButton);
  EXPECT_NE(button("Two webs"), nullptr);
  EXPECT_EQ(home.files().size(), 1);
}

TEST_F(OwnPartsByHand, ItsMenuIsInTheMenuBarAndFoundByWords) {
  EXPECT_FALSE(window.action("own_parts_menu")->isEnabled());
  keep_web_pair();
  EXPECT_TRUE(window.action("own_parts_menu")->isEnabled());
  QStringList in_bar, beside;
  for (const MenuAction& m : actions_of(*window.action("own_parts_menu")->menu(), {}))
    in_bar << bare_text(*m.action);
  QTimer::singleShot(30, [&] {
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    ASSERT_NE(menu, nullptr);
    for (const QAction* a : menu->actions()) beside << bare_text(*a);
    menu->close();
  });
  QContextMenuEvent asked(QContextMenuEvent::Mouse, QPoint(5, 5), window.mapToGlobal(QPoint(100, 300)));
  QApplication::sendEvent(button("Web pair"), &asked);
  EXPECT_EQ(beside.size(), 3);
  for (const QString& b : beside) EXPECT_TRUE(in_bar.contains(b)) << b.toStdString();
  auto* more = view().findChild<QToolButton*>(QStringLiteral("own_part_more"));
  ASSERT_NE(more, nullptr);
  EXPECT_EQ(more->menu()->actions().size(), 3);
  window.action("find_anything")->trigger();
  QTest::keyClicks(&window.find_box(), QStringLiteral("web pair rename"));
  QTest::keyClick(&window.find_box(), Qt::Key_Return);
  EXPECT_NE(line(), nullptr);
}

TEST_F(OwnPartsByHand, InEveryLabAndADamagedOneIsSaid) {
  keep_web_pair();
  QFile broken(home.folder.filePath(QStringLiteral("snuglab/parts/broken.snuglab")));
  ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
  broken.write("{");
  broken.close();
  MainWindow next;
  next.start_blank(false);
  next.show();
  EXPECT_TRUE(next.notice().text().contains(QStringLiteral("broken.snuglab")))
      << next.notice().text().toStdString();
  EXPECT_EQ(next.findChild<OwnPartsView*>()->parts().size(), 1U);
  EXPECT_EQ(broken.size(), 1);
}

} // namespace
} // namespace snug::test
