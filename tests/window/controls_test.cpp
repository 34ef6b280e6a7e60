// Every control of every window, dialog and panel says its name to who cannot see it and, in a tool tip, what
// it is for.

#include "tests/window/actions.h"
#include "tests/window/hand.h"
#include "ui/panels/address_panel.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/fix_buttons.h"
#include "ui/panels/reach_panel.h"
#include "ui/panels/when_seen.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/window/hand_out.h"
#include "ui/window/help_view.h"
#include "ui/window/notice_bar.h"
#include "ui/window/shortcut_view.h"

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QHeaderView>
#include <QKeySequenceEdit>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollBar>
#include <QTabBar>
#include <QTabWidget>
#include <QTest>

#include <set>

namespace snug::test {
namespace {

// Inside another control, which speaks for it.
bool is_part_of_a_control(const QWidget& w) {
  const QWidget* above = w.parentWidget();
  return qobject_cast<const QAbstractSpinBox*>(above) || qobject_cast<const QComboBox*>(above) ||
         qobject_cast<const QKeySequenceEdit*>(above) || qobject_cast<const QLineEdit*>(above) ||
         qobject_cast<const QTabBar*>(above) || qobject_cast<const QAbstractItemView*>(above);
}

bool is_control(const QWidget& w) {
  if (is_part_of_a_control(w) || qobject_cast<const QScrollBar*>(&w) || qobject_cast<const QHeaderView*>(&w))
    return false;
  return qobject_cast<const QAbstractButton*>(&w) || qobject_cast<const QLineEdit*>(&w) ||
         qobject_cast<const QAbstractSpinBox*>(&w) || qobject_cast<const QComboBox*>(&w) ||
         qobject_cast<const QAbstractSlider*>(&w) || qobject_cast<const QPlainTextEdit*>(&w) ||
         qobject_cast<const QKeySequenceEdit*>(&w) || qobject_cast<const QAbstractItemView*>(&w) ||
         qobject_cast<const QTabBar*>(&w) || (w.focusPolicy() & Qt::TabFocus) != 0;
}

class Controls : public ::testing::Test {
 protected:
  void walk(const QWidget& top, const char* where) {
    static_cast<void>(QTest::qWaitFor([] { return WhenSeen::waiting() == 0; }));
    for (const auto* w : top.findChildren<QWidget*>()) {
      if (!w->isVisible() || !is_control(*w) || !walked.insert(w).second) continue;
      const std::string who = std::string(where) + ": " + w->metaObject()->className() + " \"" +
                              w->objectName().toStdString() + "\" in " +
                              w->parentWidget()->objectName().toStdString();
      QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(const_cast<QWidget*>(w));
      ASSERT_NE(spoken, nullptr) << who;
      const QString name = spoken->text(QAccessible::Name);
      EXPECT_FALSE(name.trimmed().isEmpty()) << who;
      EXPECT_FALSE(name.contains(QLatin1Char('{'))) << who << name.toStdString();
      check_help(*w, who + " " + name.toStdString());
    }
  }
  static void check_help(const QWidget& w, const std::string& who) {
    const auto* tabs = qobject_cast<const QTabBar*>(&w);
    // Text to be read; a picture whose tip is about what is under the pointer; a frame around its tabs.
    if (w.metaObject()->className() == std::string_view("QScrollArea") ||
        qobject_cast<const QTabWidget*>(&w) || qobject_cast<const Canvas*>(&w) ||
        qobject_cast<const Ruler*>(&w))
      return;
    if (!tabs) {
      EXPECT_FALSE(w.toolTip().trimmed().isEmpty()) << who;
      return;
    }
    for (int i = 0; i < tabs->count(); ++i)
      EXPECT_FALSE(tabs->tabToolTip(i).isEmpty()) << who << tabs->tabText(i).toStdString();
  }
  std::set<const QWidget*> walked;
};

TEST_F(Controls, OfTheStartPage) {
  MainWindow window;
  window.resize(1600, 1000);
  window.show();
  QTest::qWait(30);
  walk(window, "start");
  EXPECT_GT(walked.size(), 8U);
}

TEST_F(Controls, OfEveryPanel) {
  MainWindow window;
  window.resize(1700, 1000);
  window.start_sample("mistakes");
  window.show();
  Hand hand(window);
  static_cast<void>(QTest::qWaitFor([&] { return window.findings().fixes().is_done(); }));
  for (const char* panel : {"show_findings", "show_addresses", "show_parts", "show_outline", "show_reach",
                            "show_properties", "find_anything"}) {
    window.action(panel)->trigger();
    walk(window, panel);
  }
  for (auto* b : window.findChildren<QAbstractButton*>())
    if (b->isVisible() && b->isCheckable() && b->text() == QStringLiteral("More roles")) b->click();
  const Lab& lab = hand.lab();
  for (const AnyId id :
       {AnyId{Kind::lab, 0}, AnyId{Kind::pc, 0}, AnyId{Kind::numbering, 0}, AnyId{Kind::rules, 0},
        AnyId(hand.machine("mast")), AnyId(hand.machine("rack-a")), AnyId(lab.cards.front().id),
        AnyId(lab.segments.front().id), AnyId(lab.lans.front().id), AnyId(lab.volumes.front().id),
        AnyId(lab.disks.front().id), AnyId(lab.shares.front().id), AnyId(lab.exercises.front().id),
        AnyId(lab.roles.front().id), AnyId(lab.promises.front().id)}) {
    hand.session().select({id});
    window.action("show_properties")->trigger();
    walk(window, to_text(id).c_str());
  }
  window.notice().show_notice({Notice::Kind::told, QStringLiteral("Said")},
                              {{QStringLiteral("Choice"), [] {}}});
  walk(window, "notice");
  EXPECT_GT(walked.size(), 200U);
}

TEST_F(Controls, OfTheAnswerToAQuestionOfReach) {
  MainWindow window;
  window.resize(1700, 1000);
  window.start_sample("skerry-ferries");
  window.show();
  Hand hand(window);
  hand.session().select({hand.machine("wheelhouse"), hand.machine("deck-b")});
  window.action("ask_reach")->trigger();
  QTest::qWait(30);
  walk(window, "answer");
  hand.session().select({hand.machine("hold")});
  window.action("rename")->trigger();
  walk(window, "in place");
  EXPECT_GT(walked.size(), 40U);
}

TEST_F(Controls, OfEveryDialog) {
  MainWindow window;
  window.resize(1440, 900);
  window.start_sample("skerry-ferries");
  window.show();
  HandOut papers_dialog(window.session(), &window);
  papers_dialog.show();
  for (const PaperInfo& p : papers()) {
    papers_dialog.choose(p.paper);
    walk(papers_dialog, "hand out");
  }
  for (const char* page : {"help_words", "help_keys", "about"}) {
    window.action(page)->trigger();
    walk(*window.findChild<HelpView*>(), page);
  }
  window.action("change_keys")->trigger();
  walk(*window.findChild<ShortcutView*>(), "keys");
  EXPECT_GT(walked.size(), 60U);
}

} // namespace
} // namespace snug::test
