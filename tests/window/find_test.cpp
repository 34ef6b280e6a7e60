#include "tests/window/hand.h"
#include "ui/window/find_box.h"
#include "ui/window/help_view.h"

#include <QAbstractItemModel>
#include <QAction>
#include <QApplication>
#include <QLineEdit>
#include <QListView>
#include <QTest>

#include <gtest/gtest.h>

namespace snug::test {
namespace {

class FindTest : public ::testing::Test {
 protected:
  FindTest() : hand_((window_.start_sample("skerry-ferries"), window_.show(), window_)) {
    EXPECT_TRUE(QTest::qWaitForWindowExposed(&window_));
  }

  FindBox& box() { return window_.find_box(); }
  QListView& list() { return box().list(); }
  void open_and_type(const QString& text) {
    QTest::keyClick(&window_, Qt::Key_K, Qt::ControlModifier);
    ASSERT_TRUE(box().hasFocus());
    QTest::keyClicks(&box(), text);
  }
  QString row(int i) { return list().model()->index(i, 0).data().toString(); }

  MainWindow window_;
  Hand hand_;
};

TEST_F(FindTest, TheFieldDoesNotTakeTheKeyboardByItself) {
  EXPECT_TRUE(window_.canvas().hasFocus());
  EXPECT_FALSE(box().hasFocus());
}

TEST_F(FindTest, AMachineIsChosenWithTheKeyboard) {
  open_and_type(QStringLiteral("wheel"));
  ASSERT_TRUE(list().isVisible());
  EXPECT_EQ(row(0), QStringLiteral("wheelhouse, Management server on study PC"));
  QTest::keyClick(&box(), Qt::Key_Return);
  EXPECT_FALSE(list().isVisible());
  EXPECT_TRUE(box().text().isEmpty());
  EXPECT_EQ(hand_.session().selection(), std::vector<AnyId>{hand_.machine("wheelhouse")});
  EXPECT_TRUE(window_.canvas().hasFocus());
}

// Services are found by what people call them, and the words of the help after what is in the lab.
TEST_F(FindTest, AServiceIsFoundAndAWordIsExplained) {
  open_and_type(QStringLiteral("dhcp"));
  ASSERT_GE(list().model()->rowCount(), 3);
  EXPECT_EQ(row(0), QStringLiteral("DHCP on Crew, service of the translator"));
  EXPECT_EQ(row(1), QStringLiteral("DHCP on Passengers, service of beacon"));
  const int last = list().model()->rowCount() - 1;
  EXPECT_EQ(row(last), QStringLiteral("DHCP, what the word means"));
  QTest::keyClick(&box(), Qt::Key_Down);
  QTest::keyClick(&box(), Qt::Key_Return);
  ASSERT_EQ(hand_.session().selection().size(), 1U);
  const Card* card = find<Card>(hand_.lab(), CardId{hand_.session().selection().front().number});
  ASSERT_NE(card, nullptr);
  EXPECT_EQ(card->machine, hand_.machine("beacon"));
  open_and_type(QStringLiteral("dhcp"));
  const int word = list().model()->rowCount() - 1; // what can be done with the card is offered as well
  for (int i = 0; i < word; ++i) QTest::keyClick(&box(), Qt::Key_Down);
  QTest::keyClick(&box(), Qt::Key_Return);
  const auto* help = window_.findChild<HelpView*>();
  ASSERT_NE(help, nullptr);
  EXPECT_TRUE(help->isVisible());
  EXPECT_EQ(help->findChild<QLineEdit*>(QStringLiteral("find_word"))->text(), QStringLiteral("DHCP"));
}

TEST_F(FindTest, ArrowsAndMouseChooseAnother) {
  open_and_type(QStringLiteral("deck"));
  ASSERT_GE(list().model()->rowCount(), 2);
  QTest::keyClick(&box(), Qt::Key_Down);
  QTest::keyClick(&box(), Qt::Key_Return);
  EXPECT_EQ(hand_.session().selection(), std::vector<AnyId>{hand_.machine("deck-b")});
  open_and_type(QStringLiteral("deck"));
  const QRect first = list().visualRect(list().model()->index(0, 0));
  QTest::mouseClick(list().viewport(), Qt::LeftButton, {}, first.center());
  EXPECT_EQ(hand_.session().selection(), std::vector<AnyId>{hand_.machine("deck-a")});
}

TEST_F(FindTest, AnAddressLeadsToItsCardAndAFindingToItsRow) {
  open_and_type(QStringLiteral("172.22.10.12"));
  QTest::keyClick(&box(), Qt::Key_Return);
  ASSERT_EQ(hand_.session().selection().size(), 1U);
  EXPECT_EQ(hand_.session().selection().front().kind, Kind::card);
  open_and_type(QStringLiteral("belongs to both"));
  QTest::keyClick(&box(), Qt::Key_Return);
  ASSERT_NE(QApplication::focusWidget(), nullptr);
  EXPECT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("finding"));
}

TEST_F(FindTest, AnActionIsDoneWithWhatWasChosen) {
  const MachineId tickets = hand_.machine("tickets-1");
  hand_.session().select({tickets});
  open_and_type(QStringLiteral("move to deck-b"));
  QTest::keyClick(&box(), Qt::Key_Return);
  EXPECT_EQ(snug::find<Machine>(hand_.lab(), tickets)->carrier, hand_.machine("deck-b"));
  open_and_type(QStringLiteral("undo"));
  QTest::keyClick(&box(), Qt::Key_Return);
  EXPECT_EQ(snug::find<Machine>(hand_.lab(), tickets)->carrier, hand_.machine("deck-a"));
  open_and_type(QStringLiteral("a shared hold"));
  QTest::keyClick(&box(), Qt::Key_Return);
  EXPECT_EQ(name_of(hand_.lab(), hand_.session().exercise()), "A shared hold");
}

TEST_F(FindTest, NothingFoundSaysSoAndEscapeLeaves) {
  open_and_type(QStringLiteral("xyzzy"));
  ASSERT_TRUE(list().isVisible());
  EXPECT_EQ(row(0), QStringLiteral("Nothing is called “xyzzy”"));
  QTest::keyClick(&box(), Qt::Key_Return);
  EXPECT_TRUE(list().isVisible());
  QTest::keyClick(&box(), Qt::Key_Escape);
  EXPECT_FALSE(list().isVisible());
  EXPECT_TRUE(window_.canvas().hasFocus());
}

TEST_F(FindTest, TheListStandsWithinTheWindowUnderTheField) {
  window_.resize(1280, 800);
  open_and_type(QStringLiteral("e"));
  EXPECT_TRUE(window_.rect().contains(list().geometry()));
  EXPECT_GE(list().y(), box().mapTo(&window_, QPoint(0, box().height())).y());
  EXPECT_EQ(list().parentWidget(), &window_);
}

} // namespace
} // namespace snug::test
