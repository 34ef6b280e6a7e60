// What the button of an exercise says: everything that is known of it, not its memory alone.

#include "core/analyse/standing.h"
#include "core/edit/build.h"
#include "tests/window/hand.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/window/exercise_strip.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QHelpEvent>
#include <QPushButton>
#include <QTest>
#include <QToolTip>

namespace snug::test {
namespace {

class Strip : public ::testing::Test {
 protected:
  void SetUp() override { window.start_sample("skerry-ferries"); }
  QList<QPushButton*> buttons() { // what is to be deleted is hidden
    QList<QPushButton*> all = window.findChild<ExerciseStrip*>()->findChildren<QPushButton*>();
    all.removeIf([](const QPushButton* b) { return !b->isVisible(); });
    return all;
  }
  QPushButton& button(const char* name) {
    for (QPushButton* b : buttons())
      if (b->text().startsWith(QLatin1String(name))) return *b;
    ADD_FAILURE() << name;
    return *buttons().front();
  }
  static QImage icon(const QPushButton& b) { return b.icon().pixmap(14, 14).toImage(); }
  MainWindow window;
  Hand hand{window};
};

// The ruler shows what the tip speaks of, and must be seen beside it.
TEST_F(Strip, TheTipStandsBelowTheRuler) {
  QPushButton& b = button("Names and logins");
  QHelpEvent help(QEvent::ToolTip, b.rect().center(), b.mapToGlobal(b.rect().center()));
  QCoreApplication::sendEvent(&b, &help);
  ASSERT_TRUE(QToolTip::isVisible());
  EXPECT_EQ(QToolTip::text(), b.toolTip());
  const auto* ruler = window.findChild<Ruler*>();
  ASSERT_NE(ruler, nullptr);
  const QRect kept(ruler->mapToGlobal(QPoint()), ruler->size());
  for (const QWidget* w : QApplication::topLevelWidgets()) {
    const bool is_tip = w->inherits("QTipLabel") && w->isVisible();
    EXPECT_FALSE(is_tip && w->geometry().intersects(kept));
  }
  QToolTip::hideText();
}

TEST_F(Strip, AnExerciseWithErrorsSaysSo) {
  const Analysis& a = hand.session().analysis();
  for (const ExerciseStanding& s : standings(a)) {
    const std::string name = s.exercise ? name_of(hand.lab(), s.exercise) : "Everything on";
    const QPushButton& b = button(name.c_str());
    EXPECT_TRUE(b.text().endsWith(words(s.word))) << b.text().toStdString();
    EXPECT_EQ(a.has_error(s.exercise), b.text().contains(QStringLiteral("error"))) << b.text().toStdString();
    EXPECT_TRUE(b.toolTip().startsWith(words(s.why.front()))) << b.toolTip().toStdString();
  }
  EXPECT_TRUE(button("Everything on").toolTip().contains(QStringLiteral("172.22.10.31 belongs to both")))
      << button("Everything on").toolTip().toStdString();
}

// Each time the sentence and the mark follow.
TEST_F(Strip, WhatIsRepairedIsNoLongerHeldAgainstIt) {
  const QImage bad = icon(button("Names and logins"));
  const auto of_twice = [&] {
    for (const Finding& f : hand.session().analysis().findings())
      if (f.rule->id == "address-twice") return hand.session().analysis().fixes(f);
    return std::vector<Fix>{};
  };
  const std::vector<Fix> fixes = of_twice();
  ASSERT_FALSE(fixes.empty());
  ASSERT_TRUE(hand.session().perform(fixes.front().edit));
  EXPECT_TRUE(button("Names and logins").text().endsWith(QStringLiteral("fits")))
      << button("Names and logins").text().toStdString();
  EXPECT_NE(icon(button("Names and logins")), bad);
  EXPECT_TRUE(button("Everything on").text().endsWith(QStringLiteral("tight")))
      << button("Everything on").text().toStdString();
}

// Nothing moves under the hand while a drag changes what they say; after it they are as wide as their words.
TEST_F(Strip, InADragTheyStayWhereTheyAre) {
  window.resize(1280, 800);
  QTest::qWait(20);
  const auto places = [this] {
    QList<QRect> out;
    for (const QPushButton* b : buttons()) out << b->geometry();
    return out;
  };
  const QList<QRect> before = places();
  const auto words_of = [this] {
    QStringList out;
    for (const QPushButton* b : buttons()) out << b->text();
    return out;
  };
  const QStringList said = words_of();
  const std::int64_t much = 64 * 1024;
  hand.session().preview(set_field(hand.lab(), hand.machine("beacon"), "memory", Value(much)));
  QTest::qWait(20);
  EXPECT_NE(words_of(), said);
  EXPECT_EQ(places(), before);
  hand.session().end_preview();
  QTest::qWait(20);
  EXPECT_EQ(words_of(), said);
  EXPECT_EQ(places(), before);
  EXPECT_GT(button("Names and logins").maximumWidth(), 1000);
}

// All of the ferry's stand in one line on a small screen.
TEST_F(Strip, TheyStandInOneLineOnASmallScreen) {
  window.resize(1280, 800);
  QTest::qWait(20);
  for (const QPushButton* b : buttons()) EXPECT_EQ(b->y(), buttons().front()->y()) << b->text().toStdString();
  EXPECT_NE(window.findChild<QPushButton*>(QStringLiteral("add_to_exercises")), nullptr); // the last of them
}

// In a wide window no number of errors moves a button: there is room for the longest of the usual words.
TEST_F(Strip, OtherWordsMoveNothing) {
  window.resize(1900, 900);
  QTest::qWait(20);
  const auto places = [&] {
    QList<QRect> out;
    for (const QPushButton* b : buttons()) out << b->geometry();
    return out;
  };
  const QList<QRect> before = places();
  const QString said = button("Names and logins").text();
  ASSERT_TRUE(hand.session().perform(
      set_field(hand.lab(), hand.machine("beacon"), "memory", Value(std::int64_t{64 * 1024}))));
  QTest::qWait(20);
  EXPECT_NE(button("Names and logins").text(), said);
  EXPECT_EQ(places(), before);
  hand.session().undo();
}

} // namespace
} // namespace snug::test
