// Machines by clipboard: within a window, between windows, foreign text.

#include "core/document/write.h"
#include "tests/window/hand.h"
#include "ui/session/words.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QGuiApplication>
#include <QLabel>
#include <QMimeData>

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
