// The lab itself and what a plan has beside machines and segments: title, exercises, LANs, volumes, places.

#include "core/text/window_text.h"
#include "tests/window/ferry_window.h"
#include "ui/panels/property_panel.h"
#include "ui/session/words.h"
#include "ui/window/exercise_strip.h"
#include "ui/window/find_box.h"
#include "ui/window/hand_out.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <QToolButton>

#include <algorithm>

namespace snug::test {
namespace {

class Extras : public FerryWindow {
 protected:
  template <typename W>
  W* shown(const char* name) {
    for (W* w : window.findChildren<W*>(QLatin1String(name)))
      if (w->isVisibleTo(&window)) return w;
    ADD_FAILURE() << "no " << name;
    return nullptr;
  }
  void press(const char* name) { QTest::mouseClick(shown<QPushButton>(name), Qt::LeftButton); }
  void type(const char* field, const char* text) {
    auto* line = shown<QLineEdit>(field);
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, QLatin1String(text));
    QTest::keyClick(line, Qt::Key_Return);
  }
  const Lab& lab() { return hand.lab(); }
};

TEST_F(Extras, TitleAndNumberingAreReachedFromThePc) {
  hand.session().select({});
  press("to_lab");
  type("title", "Ferries of the north");
  EXPECT_EQ(lab().facts.title, "Ferries of the north");
  type("domain", "skerry.test");
  EXPECT_EQ(lab().facts.domain, "skerry.test");
  press("to_numbering");
  type("gateway", "254");
  EXPECT_EQ(lab().numbering.gateway, 254);
  press("back");
  press("to_rules");
  type("nesting_depth", "3");
  EXPECT_EQ(lab().rules.nesting_depth, 3);
  EXPECT_FALSE(window.action("remove")->isEnabled()); // there is one of them
  press("back");
  press("back");
  EXPECT_TRUE(hand.session().selection().empty());
  back_to_the_first_bytes();
}

TEST_F(Extras, RareFieldsAreFoldedUntilTheyAreWantedOrSet) {
  const MachineId beacon = hand.machine("beacon");
  hand.session().select({beacon});
  auto* more = shown<QPushButton>("more_fields");
  auto* initiator = window.findChild<QLineEdit*>(QStringLiteral("initiator_name"));
  ASSERT_NE(initiator, nullptr);
  EXPECT_FALSE(initiator->isVisible());
  press("more_fields");
  EXPECT_TRUE(initiator->isVisible());
  type("initiator_name", "iqn.2026-01.test.skerry:beacon");
  EXPECT_EQ(find<Machine>(lab(), beacon)->initiator_name, "iqn.2026-01.test.skerry:beacon");
  press("more_fields");
  EXPECT_FALSE(initiator->isVisible());
  EXPECT_NE(more, nullptr);
  hand.session().select({hand.machine("hold")});
  hand.session().select({beacon}); // it is set now
  EXPECT_TRUE(shown<QLineEdit>("initiator_name")->isVisible());
  back_to_the_first_bytes();
}

TEST_F(Extras, WhatAnExerciseHasOnIsTickedAndBringsItsCarriers) {
  const Exercise& first = lab().exercises.front();
  const MachineId inner = hand.machine("tickets-1"), carrier = find<Machine>(lab(), inner)->carrier;
  hand.session().select({first.id});
  const auto box = [&](MachineId m) { return shown<QCheckBox>(("on_" + to_text(m)).c_str()); };
  const auto is_on = [&](MachineId m) {
    const std::vector<MachineId>& on = lab().exercises.front().on;
    return std::find(on.begin(), on.end(), m) != on.end();
  };
  const auto tick = [&](MachineId m) {
    QTest::mouseClick(box(m), Qt::LeftButton, {}, QPoint(8, box(m)->height() / 2));
  };
  if (is_on(carrier)) tick(carrier);
  EXPECT_FALSE(is_on(carrier));
  EXPECT_FALSE(is_on(inner)) << "nothing runs in what is off";
  EXPECT_EQ(box(inner)->checkState(), Qt::Unchecked);
  tick(inner);
  EXPECT_TRUE(is_on(inner) && is_on(carrier));
  EXPECT_EQ(box(carrier)->checkState(), Qt::Checked);
  back_to_the_first_bytes();
}

TEST_F(Extras, RenamingAnExercisePutsTheHandIntoItsName) {
  const ExerciseId first = lab().exercises.front().id;
  hand.session().select({first});
  window.action("rename")->trigger();
  auto* name = shown<QLineEdit>("name");
  EXPECT_EQ(QApplication::focusWidget(), name);
  QTest::keyClicks(name, QStringLiteral("First berth"));
  QTest::keyClick(name, Qt::Key_Return);
  EXPECT_EQ(lab().exercises.front().name, "First berth");
  back_to_the_first_bytes();
}

TEST_F(Extras, PlusAddsAnExerciseThatIsShownAndNamed) {
  const ExerciseId before = lab().exercises.front().id;
  hand.session().set_exercise(before);
  const std::size_t count = lab().exercises.size();
  press("add_to_exercises");
  ASSERT_EQ(lab().exercises.size(), count + 1);
  const Exercise made = lab().exercises.back();
  EXPECT_EQ(made.on, lab().exercises.front().on);
  EXPECT_EQ(hand.session().exercise(), made.id);
  type("name", "Dry dock");
  EXPECT_EQ(lab().exercises.back().name, "Dry dock");
  const auto* strip = window.findChild<ExerciseStrip*>();
  bool is_there = false;
  for (const QPushButton* b : strip->findChildren<QPushButton*>())
    is_there = is_there || (b->isVisible() && b->text().startsWith(QStringLiteral("Dry dock · ")));
  EXPECT_TRUE(is_there);
  // A machine off in it stays on in the one it began as.
  hand.session().select({made.on.front()});
  window.action("switch_off")->trigger();
  EXPECT_NE(lab().exercises.back().on, lab().exercises.front().on);
  hand.session().select({made.id});
  window.action("remove")->trigger();
  EXPECT_EQ(lab().exercises.size(), count);
  back_to_the_first_bytes();
}

TEST_F(Extras, ThePcGetsVolumesLansAndPlaces) {
  hand.session().select({});
  const std::size_t volumes = lab().volumes.size(), lans = lab().lans.size(), places = lab().places.size();
  press("add_volume");
  type("size", "2t");
  EXPECT_EQ(lab().volumes.size(), volumes + 1);
  EXPECT_EQ(lab().volumes.back().size, 2 * 1024 * 1024);
  press("back");
  press("add_physical LAN");
  type("prefix4", "192.0.2.0/24");
  ASSERT_EQ(lab().lans.size(), lans + 1);
  EXPECT_EQ(to_text(*lab().lans.back().prefix4), "192.0.2.0/24");
  press("back");
  press("add_place");
  type("name", "school");
  ASSERT_EQ(lab().places.size(), places + 1);
  EXPECT_EQ(lab().places.back().name, "school");
  back_to_the_first_bytes();
}

TEST_F(Extras, TheTitleIsGivenWhereItIsHandedOut) {
  HandOut dialog(hand.session());
  dialog.show();
  dialog.activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&dialog));
  auto* title = dialog.findChild<QLineEdit*>(QStringLiteral("lab_title"));
  ASSERT_NE(title, nullptr);
  EXPECT_EQ(title->text(), as_qt(lab().facts.title));
  title->setFocus();
  title->selectAll();
  QTest::keyClicks(title, QStringLiteral("Night boats"));
  dialog.findChild<QWidget*>(QStringLiteral("paper"))->setFocus();
  EXPECT_EQ(lab().facts.title, "Night boats");
  back_to_the_first_bytes();
}

// The footer says by how much another PC would be too small.
TEST_F(Extras, OtherPcsAreToldInNumbers) {
  hand.session().set_exercise({});
  auto* sizes = window.findChild<QLabel*>(QStringLiteral("other_sizes"));
  ASSERT_NE(sizes, nullptr);
  ASSERT_TRUE(sizes->text().startsWith(QStringLiteral("16 GiB PC: over"))) << sizes->text().toStdString();
  const QStringList lines = sizes->toolTip().split(QLatin1Char('\n'));
  ASSERT_EQ(lines.size(), 6);
  EXPECT_TRUE(lines[1].startsWith(QStringLiteral("16 GiB: running ")) &&
              lines[1].contains(QStringLiteral("over by ")))
      << lines[1].toStdString();
  EXPECT_TRUE(lines[4].contains(QStringLiteral("headroom "))) << lines[4].toStdString();
}

// Whatever the width, no menu is covered; what has no room beside them is in the menus.
TEST_F(Extras, MenusAreSeenInANarrowWindow) {
  QMenuBar& menus = *window.menuBar();
  const auto buttons = [&] {
    int shown = 0;
    for (const QToolButton* b : menus.cornerWidget()->findChildren<QToolButton*>())
      shown += b->isVisibleTo(&menus) && b->toolButtonStyle() == Qt::ToolButtonTextOnly;
    return shown;
  };
  window.resize(1280, 800);
  QTest::qWait(20);
  int last = buttons();
  EXPECT_EQ(last, 5);
  for (const int width : {1000, 860, 720}) {
    window.resize(width, 800);
    QTest::qWait(20);
    const QRect end = menus.actionGeometry(menus.actions().back());
    EXPECT_LE(end.right(), menus.cornerWidget()->geometry().left()) << width;
    EXPECT_GT(end.width(), 10) << width;
    EXPECT_GE(window.find_box().width(), 90) << width;
    EXPECT_LE(buttons(), last) << width;
    last = buttons();
  }
  EXPECT_LT(last, 4);
}

// At first the exercise that the window shows; any other can be taken, for pictures only.
TEST_F(Extras, APictureIsOfAnExerciseOfOnesChoice) {
  hand.session().set_exercise(lab().exercises.back().id);
  HandOut dialog(hand.session());
  dialog.show();
  auto* exercise = dialog.findChild<QComboBox*>(QStringLiteral("paper_exercise"));
  ASSERT_NE(exercise, nullptr);
  ASSERT_EQ(exercise->count(), static_cast<int>(lab().exercises.size()) + 1);
  EXPECT_EQ(exercise->currentIndex(), exercise->count() - 1);
  QTest::keyClick(exercise, Qt::Key_Home);
  EXPECT_EQ(exercise->currentIndex(), 0);
  dialog.choose(Paper::svg);
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("a.svg"));
  ASSERT_TRUE(dialog.write_to(path));
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QByteArray written = file.readAll();
  const Analysis& a = hand.session().analysis();
  EXPECT_EQ(written, *make_paper(a, {}, Paper::svg, Theme::light));
  EXPECT_NE(written, *make_paper(a, lab().exercises.back().id, Paper::svg, Theme::light));
  EXPECT_TRUE(exercise->isVisibleTo(&dialog));
  dialog.choose(Paper::table_csv);
  EXPECT_FALSE(exercise->isVisibleTo(&dialog));
}

} // namespace
} // namespace snug::test
