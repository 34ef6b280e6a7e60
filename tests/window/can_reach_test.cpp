// What a machine can reach, beside its fields.

#include "tests/window/hand.h"
#include "ui/panels/panel_row.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/reach_answer.h"
#include "ui/panels/reach_panel.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QCoreApplication>
#include <QTest>
#include <QWheelEvent>

namespace snug::test {
namespace {

class CanReachPanel : public ::testing::Test {
 protected:
  void SetUp() override { window.start_sample("skerry-ferries"); }
  QList<QWidget*> rows() {
    QList<QWidget*> shown;
    for (QWidget* row : window.properties().findChildren<QWidget*>(QStringLiteral("can_reach")))
      if (!row->isHidden()) shown << row;
    return shown;
  }
  QString said() {
    QStringList out;
    for (const QWidget* row : rows()) out << row->accessibleName();
    return out.join(QLatin1Char('\n'));
  }
  MainWindow window;
  Hand hand{window};
};

TEST_F(CanReachPanel, FollowsWhatIsChosenAndWhatChanges) {
  hand.session().select({});
  QTest::qWait(20);
  EXPECT_TRUE(rows().isEmpty()) << "the PC";
  hand.click(hand.on(hand.machine("tickets-1")));
  QTest::qWait(20);
  EXPECT_TRUE(said().contains(QStringLiteral("the outside: Yes"))) << said().toStdString();
  EXPECT_TRUE(said().contains(QStringLiteral("beacon"))) << said().toStdString();
  CardId card;
  for (const Card& c : hand.lab().cards)
    if (c.machine == hand.machine("tickets-1")) card = c.id;
  hand.session().perform(set_field(hand.lab(), card, "connected", false));
  QTest::qWait(20);
  EXPECT_TRUE(said().contains(QStringLiteral("the outside: No"))) << said().toStdString();
  hand.session().undo();
  hand.session().select({hand.machine("tickets-1")});
  QTest::qWait(20);
  EXPECT_TRUE(said().contains(QStringLiteral("the outside: Yes"))) << said().toStdString();
}

// Scrolling down to it over a list to choose from changes nothing.
TEST_F(CanReachPanel, TheWheelScrollsAndChoosesNothing) {
  hand.click(hand.on(hand.machine("gangway")));
  QTest::qWait(20);
  const Lab before = hand.lab();
  int lists = 0;
  for (QComboBox* list : window.properties().findChildren<QComboBox*>()) {
    if (list->isHidden() || list->count() < 2) continue;
    ++lists;
    for (const int turn : {-120, 120}) {
      const QPointF at(8, 8);
      QWheelEvent wheel(at, list->mapToGlobal(at), {}, {0, turn}, Qt::NoButton, Qt::NoModifier,
                        Qt::NoScrollPhase, false);
      QCoreApplication::sendEvent(list, &wheel);
    }
  }
  EXPECT_GT(lists, 1);
  EXPECT_EQ(hand.lab(), before);
}

TEST_F(CanReachPanel, ALineLeadsToTheWholeWay) {
  hand.click(hand.on(hand.machine("tickets-1")));
  QTest::qWait(20);
  ASSERT_FALSE(rows().isEmpty());
  QWidget* last = rows().back();
  last->setFocus();
  QTest::keyClick(last, Qt::Key_Return);
  QTest::qWait(20);
  EXPECT_TRUE(window.reach().isVisible());
  EXPECT_TRUE(window.reach().answer().sentence.contains(QStringLiteral("tickets-1 reaches the outside")))
      << window.reach().answer().sentence.toStdString();
}

} // namespace
} // namespace snug::test
