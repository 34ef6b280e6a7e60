// What a person who sees the program for the first time stumbles over, with real events: how the window is
// shared on a small screen, help, and what stays where it is.

#include "core/text/help_text.h"
#include "core/text/window_text.h"
#include "tests/support/process.h"
#include "tests/window/hand.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/fix_buttons.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/reach_panel.h"
#include "ui/session/words.h"
#include "ui/window/exercise_strip.h"
#include "ui/window/help_view.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QSplitterHandle>
#include <QTabWidget>
#include <QTest>

namespace snug::test {
namespace {

class FirstHour : public ::testing::Test {
 protected:
  void SetUp() override { window.start_sample("skerry-ferries"); }
  void size(int width, int height) {
    window.resize(width, height);
    QTest::qWait(20);
  }
  // Rows of findings that stand wholly in sight.
  int findings_in_sight() {
    int seen = 0;
    for (QScrollArea* area : window.findings().findChildren<QScrollArea*>())
      for (QWidget* row : area->findChildren<QWidget*>(QStringLiteral("finding"))) {
        if (!row->isVisible()) continue;
        const QRect at(row->mapTo(area->viewport(), QPoint(0, 0)), row->size());
        seen += area->viewport()->rect().contains(at) ? 1 : 0;
      }
    return seen;
  }
  QSplitter& down() {
    for (QSplitter* s : window.findChildren<QSplitter*>())
      if (s->orientation() == Qt::Vertical) return *s;
    ADD_FAILURE();
    return *window.findChild<QSplitter*>();
  }
  std::vector<int> places_of_exercises() {
    std::vector<int> out;
    for (const QPushButton* b : window.findChild<ExerciseStrip*>()->findChildren<QPushButton*>())
      out.push_back(b->mapTo(&window, QPoint(0, 0)).x());
    return out;
  }
  MainWindow window;
  Hand hand{window};
};

TEST_F(FirstHour, OnASmallScreenFindingsAndPictureBothHaveRoom) {
  size(1280, 800);
  window.action("show_findings")->trigger();
  QTest::qWait(20);
  EXPECT_GE(findings_in_sight(), 2);
  EXPECT_GE(window.canvas().width(), 560);
  EXPECT_GE(window.canvas().height(), 340);
  window.action("show_reach")->trigger();
  QTest::qWait(20);
  EXPECT_GE(window.canvas().width(), 560);
  EXPECT_GE(window.canvas().height(), 330);
  EXPECT_GE(window.reach().height(), 200);
}

TEST_F(FirstHour, ALargeScreenKeepsItsLargePicture) {
  size(1920, 1080);
  EXPECT_EQ(down().sizes().at(1), 210);
  EXPECT_GE(window.canvas().height(), 600);
}

// Pulled by hand it stays so, whatever the window does.
TEST_F(FirstHour, WhatAPersonPulledStays) {
  size(1280, 800);
  window.action("show_findings")->trigger();
  QTest::qWait(20);
  QWidget* handle = down().handle(1);
  const QPoint middle = handle->rect().center();
  QTest::mousePress(handle, Qt::LeftButton, {}, middle);
  QTest::mouseMove(handle, middle + QPoint(0, 60));
  QTest::mouseRelease(handle, Qt::LeftButton, {}, middle + QPoint(0, 60));
  const int pulled = down().sizes().at(1);
  EXPECT_LT(pulled, 330);
  size(1280, 860);
  EXPECT_NEAR(down().sizes().at(1), pulled, 2);
  window.action("show_reach")->trigger();
  window.action("show_findings")->trigger();
  QTest::qWait(5);
  EXPECT_NEAR(down().sizes().at(1), pulled, 2);
}

TEST_F(FirstHour, ExercisesStayWhereTheyAreWhenTheLabChanges) {
  for (const int width : {1280, 1600, 1920}) {
    size(width, 900);
    ASSERT_FALSE(window.isWindowModified());
    const std::vector<int> before = places_of_exercises();
    hand.session().perform(set_field(hand.lab(), hand.machine("hold"), "notes", Value(std::string("x"))));
    QTest::qWait(5);
    ASSERT_TRUE(window.isWindowModified());
    EXPECT_EQ(places_of_exercises(), before) << width;
    hand.session().undo();
    QTest::qWait(5);
  }
}

class Repairing : public FirstHour {
 protected:
  void SetUp() override {
    FirstHour::SetUp();
    EXPECT_TRUE(QTest::qWaitFor([this] { return window.findings().fixes().is_done(); }));
  }
  QWidget* row(const char* part_of_name) {
    QTest::qWait(5); // rows are laid out in the next turn
    for (QWidget* w : window.findings().findChildren<QWidget*>(QStringLiteral("finding")))
      if (w->isVisible() && w->accessibleName().contains(QLatin1String(part_of_name))) return w;
    ADD_FAILURE() << part_of_name;
    return nullptr;
  }
  static QPushButton* button(QWidget& row, const char* text) {
    for (QPushButton* b : row.findChildren<QPushButton*>())
      if (b->text() == QString::fromUtf8(text)) return b;
    ADD_FAILURE() << text;
    return nullptr;
  }
  std::string address_of(const char* machine) {
    for (const Card& c : hand.lab().cards)
      if (c.machine == hand.machine(machine) && c.segment == hand.segment("Steering") && !c.addresses.empty())
        return to_text(*c.addresses[0].address);
    return {};
  }
};

// Of two with one address either may move: one button each, the better guess first.
TEST_F(Repairing, EitherOfTwoWithOneAddressMoves) {
  QWidget* twice = row("172.22.10.31 belongs to both");
  QPushButton* first = button(*twice, "Move deck-b to .32"); // as on its other cards
  QPushButton* other = button(*twice, "Move deck-a to .11");
  EXPECT_LT(first->x(), other->x());
  QTest::mouseClick(other, Qt::LeftButton);
  EXPECT_EQ(address_of("deck-a"), "172.22.10.11");
  EXPECT_EQ(address_of("deck-b"), "172.22.10.31");
  hand.session().undo();
  ASSERT_TRUE(QTest::qWaitFor([this] { return window.findings().fixes().is_done(); }));
  QTest::mouseClick(button(*row("172.22.10.31 belongs to both"), "Move deck-b to .32"), Qt::LeftButton);
  EXPECT_EQ(address_of("deck-a"), "172.22.10.31");
  EXPECT_EQ(address_of("deck-b"), "172.22.10.32");
}

// The keyboard stays in the list: on what came in the place of the repaired one.
TEST_F(Repairing, TheFocusStaysInTheList) {
  QPushButton* fix = button(*row("172.22.10.31 belongs to both"), "Move deck-b to .32");
  fix->setFocus();
  QTest::keyClick(fix, Qt::Key_Space);
  QWidget* now = window.focusWidget();
  ASSERT_NE(now, nullptr);
  EXPECT_EQ(now->objectName(), QStringLiteral("finding")) << now->metaObject()->className();
  EXPECT_TRUE(now->isVisible());
  QWidget* last = row("beacon is on Passengers");
  ASSERT_TRUE(QTest::qWaitFor([this] { return window.findings().fixes().is_done(); }));
  fix = button(*last, "Give beacon a default route by 172.22.40.1");
  fix->setFocus();
  QTest::keyClick(fix, Qt::Key_Space);
  now = window.focusWidget();
  ASSERT_NE(now, nullptr);
  EXPECT_EQ(now->objectName(), QStringLiteral("finding")) << "it was the last one";
}

TEST_F(Repairing, EscClosesTheLineForTheReason) {
  QWidget* twice = row("172.22.10.31 belongs to both");
  QTest::mouseClick(button(*twice, "Accept…"), Qt::LeftButton);
  auto* line = twice->findChild<QLineEdit*>(QStringLiteral("reason"));
  ASSERT_NE(line, nullptr);
  QTest::keyClicks(line, QStringLiteral("x"));
  QTest::mouseClick(button(*twice, "Accept…"), Qt::LeftButton); // the same line
  EXPECT_EQ(twice->findChildren<QLineEdit*>(QStringLiteral("reason")).size(), 1);
  QTest::keyClick(line, Qt::Key_Escape);
  EXPECT_EQ(twice->findChild<QLineEdit*>(QStringLiteral("reason")), nullptr);
  EXPECT_EQ(window.focusWidget(), twice);
  EXPECT_TRUE(hand.lab().accepted.empty());
}

class Helping : public FirstHour {
 protected:
  HelpView* open(const char* action) {
    window.action(action)->trigger();
    QTest::qWait(5);
    auto* help = window.findChild<HelpView*>();
    EXPECT_TRUE(help && help->isVisible());
    return help;
  }
  static QStringList shown_words(const HelpView& help) {
    QStringList out;
    for (QWidget* row : help.findChildren<QWidget*>(QStringLiteral("word")))
      if (row->isVisible()) out << row->findChild<QLabel*>()->text();
    return out;
  }
  static QString texts(const HelpView& help) {
    QStringList out;
    for (const QLabel* label : help.findChildren<QLabel*>())
      if (label->isVisible()) out << label->text();
    return out.join(QLatin1Char('|'));
  }
};

TEST_F(Helping, WordsAreExplainedAndFound) {
  QTest::keyClick(&window, Qt::Key_F1);
  HelpView* help = open("help_words");
  EXPECT_EQ(shown_words(*help).size(), static_cast<int>(text::kHelpWords.size()));
  for (const char* word : {"Own part", "Separated port", "Carrier", "Room", "Pin", "Suggested address"})
    EXPECT_TRUE(shown_words(*help).contains(QLatin1String(word))) << word;
  auto* find = help->findChild<QLineEdit*>(QStringLiteral("find_word"));
  QTest::keyClicks(find, QStringLiteral("own part"));
  EXPECT_EQ(shown_words(*help), QStringList{QStringLiteral("Own part")});
  find->selectAll();
  QTest::keyClicks(find, QStringLiteral("xyzzy"));
  EXPECT_TRUE(shown_words(*help).isEmpty());
  EXPECT_TRUE(texts(*help).contains(words(text::help_not_found)));
  QTest::keyClick(help, Qt::Key_Escape);
  EXPECT_FALSE(help->isVisible());
}

// The keys are those of the menus.
TEST_F(Helping, KeysAreThoseOfTheActions) {
  HelpView* help = open("help_keys");
  const QString all = texts(*help);
  for (const char* name : {"undo", "rename", "show_reach", "hand_out", "next_region"}) {
    const QAction* a = window.action(name);
    ASSERT_NE(a, nullptr) << name;
    EXPECT_TRUE(all.contains(a->shortcut().toString(QKeySequence::NativeText))) << name;
    EXPECT_TRUE(all.contains(a->text().remove(QLatin1Char('&')))) << name;
  }
}

TEST_F(Helping, AboutSaysWhatItIs) {
  HelpView* help = open("about");
  EXPECT_TRUE(texts(*help).contains(QStringLiteral("Snuglab")));
  EXPECT_TRUE(texts(*help).contains(words(text::about_caution)));
}

} // namespace
} // namespace snug::test
