// Machines by clipboard: within a window, between windows, foreign text.

#include "core/document/write.h"
#include "tests/window/hand.h"
#include "ui/session/words.h"
#include "ui/window/notice_bar.h"
#include "ui/window/notice_text.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QGuiApplication>
#include <QLabel>
#include <QMenu>
#include <QMimeData>
#include <QTest>
#include <QTimer>

namespace snug::test {
namespace {

std::string said(MainWindow& window) {
  QString out;
  for (const QLabel* l : window.notice().findChildren<QLabel*>())
    if (l->isVisibleTo(&window.notice())) out += l->text() + QLatin1Char('\n');
  return out.toStdString();
}

TEST(Clipboard, CopyAndPasteBesideTheOriginal) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  Hand hand(window);
  const std::string before = write_lab(hand.lab());
  hand.click(hand.on(hand.machine("beacon")));
  window.action("copy")->trigger();
  EXPECT_EQ(write_lab(hand.lab()), before);
  window.action("paste")->trigger();
  const MachineId made = hand.machine("beacon-2");
  EXPECT_TRUE(hand.session().is_selected(made));
  EXPECT_NE(said(window).find("it became beacon-2"), std::string::npos) << said(window);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Paste beacon-2"));
  hand.session().undo();
  EXPECT_EQ(write_lab(hand.lab()), before);
}

// A bar is no list: what is many is counted.
TEST(Clipboard, ManyChangesAreCounted) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  Hand hand(window);
  const std::size_t machines = hand.lab().machines.size();
  ASSERT_GE(machines, 9U); // each gets another name
  window.action("select_all")->trigger();
  window.action("copy")->trigger();
  window.action("paste")->trigger();
  EXPECT_EQ(hand.lab().machines.size(), 2 * machines);
  const std::string words = said(window);
  EXPECT_EQ(std::count(words.begin(), words.end(), '\n'), 10) << words; // a title, eight of them, the rest
  EXPECT_NE(words.find("more of these"), std::string::npos) << words;
}

TEST(Clipboard, CutFromOneWindowIntoAHypervisorOfAnother) {
  MainWindow one;
  one.start_sample("skerry-ferries");
  Hand hand(one);
  MainWindow two;
  two.start_sample("skerry-ferries-16");
  Hand other(two);
  const std::size_t count = other.lab().machines.size();
  hand.click(hand.on(hand.machine("gangway")));
  one.action("cut")->trigger();
  for (const Machine& m : hand.lab().machines) EXPECT_NE(m.name, "gangway");
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Cut gangway"));
  MachineId hypervisor;
  for (const std::uint32_t h : other.session().analysis().index().hypervisors())
    hypervisor = other.lab().machines[h].id;
  ASSERT_TRUE(hypervisor);
  other.click(other.on(hypervisor));
  two.action("paste")->trigger();
  ASSERT_EQ(other.lab().machines.size(), count + 1);
  EXPECT_EQ(other.lab().machines.back().carrier, hypervisor);
}

TEST(Clipboard, ForeignTextIsRefusedInTheBar) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  Hand hand(window);
  const std::string before = write_lab(hand.lab());
  for (const char* text :
       {"two loaves of bread", "{\"format\": \"snuglab-machines\", \"lab\":\n{\"format\"}"}) {
    QGuiApplication::clipboard()->setText(QLatin1String(text));
    window.action("paste")->trigger();
    EXPECT_NE(said(window).find("clipboard"), std::string::npos) << said(window);
    EXPECT_EQ(write_lab(hand.lab()), before);
  }
}

// What a notice says can be copied: by its keys, by its menu, by the menu bar.
TEST(Clipboard, TheWordsOfANotice) {
  QClipboard& held = *QGuiApplication::clipboard();
  MainWindow window;
  window.start_sample("skerry-ferries");
  Hand hand(window);
  QApplication::setActiveWindow(&window);
  EXPECT_FALSE(window.action("copy_notice")->isEnabled());
  hand.session().select({hand.machine("beacon")}); // which the keys would copy otherwise
  const QString sentence =
      QStringLiteral("/home/teacher/ferries.snuglab: the disk is full <b>&</b>\nthe file is as it was");
  window.session().tell(Notice::Kind::error, sentence);
  auto* text = window.notice().findChild<NoticeText*>();
  ASSERT_NE(text, nullptr);
  EXPECT_TRUE((text->focusPolicy() & Qt::TabFocus) != 0) << "the keyboard gets there";
  text->setFocus();
  held.setText(QStringLiteral("before"));
  QTest::keyClick(text, Qt::Key_C, Qt::ControlModifier);
  EXPECT_EQ(held.text(), sentence);
  text->setSelection(0, 13);
  QTest::keyClick(text, Qt::Key_C, Qt::ControlModifier);
  EXPECT_EQ(held.text(), QStringLiteral("/home/teacher")) << "what is marked alone";

  text->setSelection(0, 0);
  held.setText(QStringLiteral("before"));
  QTimer::singleShot(30, [] {
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    ASSERT_NE(menu, nullptr);
    ASSERT_EQ(menu->actions().size(), 1);
    EXPECT_EQ(menu->actions().front()->text(), QStringLiteral("&Copy"));
    QTest::keyClick(menu, Qt::Key_Down);
    QTest::keyClick(menu, Qt::Key_Return);
  });
  QContextMenuEvent asked(QContextMenuEvent::Keyboard, QPoint(5, 5), text->mapToGlobal(QPoint(5, 5)));
  QApplication::sendEvent(text, &asked);
  EXPECT_EQ(held.text(), sentence);

  window.notice().ask(QStringLiteral("topic"), {Notice::Kind::caution, QStringLiteral("And a question?")},
                      {});
  ASSERT_TRUE(window.action("copy_notice")->isEnabled());
  window.action("copy_notice")->trigger();
  EXPECT_EQ(held.text(), QStringLiteral("And a question?\n") + sentence);
  window.notice().withdraw(QStringLiteral("topic"));
  window.notice().withdraw({});
  EXPECT_FALSE(window.action("copy_notice")->isEnabled());

  QApplication::setActiveWindow(&window); // the menu may have taken that
  window.canvas().setFocus();             // there the same keys copy machines, as before
  QTest::keyClick(&window.canvas(), Qt::Key_C, Qt::ControlModifier);
  EXPECT_TRUE(held.text().contains(QStringLiteral("snuglab-machines")));
}

TEST(Clipboard, TheAddressTable) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  Hand hand(window);
  window.action("copy_table")->trigger();
  const QMimeData* held = QGuiApplication::clipboard()->mimeData();
  EXPECT_TRUE(held->text().contains(QStringLiteral("172.22.10.12")));
  EXPECT_TRUE(held->hasHtml());
  EXPECT_TRUE(held->hasFormat(QStringLiteral("text/csv")));
}

} // namespace
} // namespace snug::test
