// What is said over the picture goes with what it speaks of, and what a drag shows is shown everywhere.

#include "core/analyse/repair_alike.h"
#include "core/edit/build.h"
#include "core/text/window_text.h"
#include "tests/window/ferry_window.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/gesture.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/property_panel.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/window/notice_bar.h"

#include <QLabel>
#include <QPushButton>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QTest>

namespace snug::test {
namespace {

class Notices : public FerryWindow {
 protected:
  std::string said() { return window.notice().text().toStdString(); }
  void rename(const char* from, const char* to) {
    hand.session().perform(set_field(hand.lab(), hand.machine(from), "name", Value(std::string(to))));
  }
};

TEST_F(Notices, ARefusalGoesWithTheNextStep) {
  EXPECT_FALSE(hand.session().perform(Result<Edit>(fail(text::notice_close))));
  EXPECT_FALSE(said().empty());
  rename("beacon", "lantern");
  EXPECT_EQ(said(), "");
  hand.session().undo();
}

// "Undo" beside it would take back something else.
TEST_F(Notices, ARemovalIsOfferedToBeUndoneUntilTheNextStep) {
  hand.session().select({hand.machine("gangway")});
  window.action("remove")->trigger();
  EXPECT_EQ(said(), "gangway is removed.");
  rename("beacon", "lantern");
  EXPECT_EQ(said(), "");
  back_to_the_first_bytes();
}

TEST_F(Notices, SavedAsGoesWithTheLab) {
  hand.session().tell(Notice::Kind::told, QStringLiteral("Saved as /tmp/a.snuglab"));
  window.start_sample("branch-office");
  EXPECT_EQ(said(), "");
}

TEST_F(Notices, AFileThatCannotBeWrittenIsSaidUntilItIs) {
  QTemporaryDir folder;
  EXPECT_FALSE(hand.session().save_as(folder.filePath(QStringLiteral("none/there.snuglab"))));
  const std::string trouble = said();
  EXPECT_NE(trouble, "");
  rename("beacon", "lantern");
  EXPECT_EQ(said(), trouble) << "a step does not mend it";
  EXPECT_TRUE(hand.session().save_as(folder.filePath(QStringLiteral("there.snuglab"))));
  EXPECT_EQ(said(), "");
}

TEST_F(Notices, WhatOnlyThePersonCanEndStays) {
  hand.session().tell(Notice::Kind::caution, QStringLiteral("settings"), Notice::Until::never);
  rename("beacon", "lantern");
  window.start_sample("branch-office");
  EXPECT_EQ(said(), "settings");
  QTest::mouseClick(window.notice().findChild<QPushButton*>(), Qt::LeftButton);
  EXPECT_EQ(said(), "");
}

class DragsShow : public Notices {
 protected:
  QString footer() {
    QStringList out;
    for (const QLabel* l : window.findChild<QWidget*>(QStringLiteral("footer"))->findChildren<QLabel*>())
      out << l->text();
    return out.join(QLatin1Char('|'));
  }
  QString tab() { return window.findChild<QTabWidget*>(QStringLiteral("sheet"))->tabText(0); }
};

TEST_F(DragsShow, FooterAndNumberOfFindingsFollow) {
  const QString foot = footer(), findings = tab();
  const auto shown = [&] {
    int n = 0;
    for (const Finding& f : hand.session().shown().findings())
      n += !f.accepted && holds_in(hand.session().shown().lab(), f, hand.session().exercise()) ? 1 : 0;
    return n;
  };
  const int before = shown();
  hand.session().preview(
      set_field(hand.lab(), hand.machine("beacon"), "memory", Value(std::int64_t{64 * 1024})));
  EXPECT_NE(footer(), foot);
  EXPECT_TRUE(footer().contains(QStringLiteral("64 GiB PC: over"))) << footer().toStdString();
  hand.session().preview(remove_elements(hand.lab(), std::vector<AnyId>{hand.machine("hold")}));
  EXPECT_TRUE(footer().startsWith(QString::number(hand.lab().machines.size() - 1))) << footer().toStdString();
  EXPECT_NE(shown(), before);
  EXPECT_TRUE(QTest::qWaitFor([&] { return tab().endsWith(QString::number(shown())); }, 2000))
      << tab().toStdString();
  hand.session().end_preview();
  EXPECT_EQ(footer(), foot);
  EXPECT_EQ(tab(), findings);
}

// Blue in the ruler around a block.
int blue_around(Ruler& ruler, MachineId id) {
  const QImage image = ruler.grab().toImage();
  const QRect block = ruler.block(id);
  int n = 0;
  for (int x = block.left() + 2; x < block.right() - 1; ++x) {
    const QColor c = image.pixelColor(x, block.top());
    n += c.blue() > c.red() + 60 ? 1 : 0;
  }
  return n;
}

// A part that is placed is not what was chosen before.
TEST_F(DragsShow, WhatWasChosenIsNotMarkedWhileAPartIsInTheHand) {
  const MachineId beacon = hand.machine("beacon");
  hand.session().select({beacon});
  const QRect ring = window.canvas()
                         .on_view(box_of(window.canvas().drawing(), beacon))
                         .toAlignedRect()
                         .adjusted(-6, -6, 6, 6);
  const auto picture = [&] { return window.canvas().viewport()->grab(ring).toImage(); };
  const QImage chosen = picture();
  EXPECT_GT(blue_around(window.ruler(), beacon), 10);
  const Role& role = hand.lab().roles.front();
  window.canvas().begin(place_role(hand.session(), role));
  hand.move(hand.rail(hand.segment("Steering")));
  ASSERT_TRUE(hand.session().is_previewing());
  EXPECT_EQ(blue_around(window.ruler(), beacon), 0);
  EXPECT_NE(picture(), chosen);
  hand.key(Qt::Key_Escape);
  EXPECT_GT(blue_around(window.ruler(), beacon), 10);
  EXPECT_EQ(hand.session().selection(), std::vector<AnyId>{beacon});
}

// Two tabs of a narrow window: what was opened last stays.
TEST_F(DragsShow, ANarrowWindowHasRoomForOneSide) {
  window.resize(900, 700);
  QTest::qWait(20);
  window.action("show_parts")->trigger();
  QTest::qWait(20);
  window.action("show_properties")->trigger();
  QTest::qWait(20);
  const PropertyPanel& properties = window.properties();
  EXPECT_GE(properties.width(), 200);
  EXPECT_FALSE(window.findChild<QWidget*>(QStringLiteral("parts"))->isVisible());
  window.resize(1700, 700);
  QTest::qWait(20);
  EXPECT_TRUE(window.findChild<QWidget*>(QStringLiteral("parts"))->isVisible());
  EXPECT_GE(properties.width(), 200);
}

// One button for all findings of a kind: one step, and it is said how many.
TEST_F(DragsShow, AllFindingsOfAKindAreRepairedByOneButton) {
  EditBuilder edit(hand.lab());
  for (const Machine& m : hand.lab().machines)
    for (const FieldInfo& f : info_of(Kind::machine).fields)
      if (f.key == "routes") edit.set(m.id, "routes", Value::list({}));
  ASSERT_TRUE(hand.session().perform(std::move(edit).take(say(text::notice_close))));
  const std::size_t many = alike(hand.session().analysis(), "default-missing", {});
  ASSERT_GT(many, 1U);
  hand.session().seal();
  window.resize(1720, 1000);
  QPushButton* all = nullptr;
  const QString words = QStringLiteral("All %1").arg(many);
  for (int i = 0; i < 100 && !all; ++i) {
    QTest::qWait(20);
    for (auto* b : window.findings().findChildren<QPushButton*>(QStringLiteral("fix_all")))
      if (b->text() == words && b->isVisible()) all = b;
  }
  ASSERT_NE(all, nullptr) << words.toStdString();
  EXPECT_TRUE(all->toolTip().contains(QString::number(many)));
  QTest::mouseClick(all, Qt::LeftButton);
  const std::size_t steps = hand.session().analysis().findings().size();
  for (auto* b : window.findings().findChildren<QPushButton*>()) // the second press of a double click
    if (b->isVisible() && b->property("role") == QStringLiteral("fix")) QTest::mouseClick(b, Qt::LeftButton);
  EXPECT_EQ(hand.session().analysis().findings().size(), steps);
  EXPECT_EQ(alike(hand.session().analysis(), "default-missing", {}), 0U);
  EXPECT_EQ(said(), std::to_string(many) + " findings of one kind are repaired.");
  hand.session().undo();
  EXPECT_EQ(alike(hand.session().analysis(), "default-missing", {}), many);
  EXPECT_EQ(said(), "");
  back_to_the_first_bytes();
}

} // namespace
} // namespace snug::test
