// What is kept when things go wrong: the journal, another program's change, a second window.

#include "ui/session/session.h"

#include "core/document/read.h"
#include "core/document/recovery.h"
#include "core/document/save.h"
#include "core/document/write.h"
#include "core/gesture/move.h"
#include "tests/support/sample.h"
#include "tests/window/hand.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QFileInfo>
#include <QPushButton>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include <fstream>
#include <sys/stat.h>

namespace snug::test {
namespace {

Edit grow(const Lab& lab, std::string_view name, std::int64_t gib) {
  return set_memory(lab, machine(lab, name).id, gib * 1024);
}

QPushButton* button(const QWidget& in, const QString& words) {
  for (QPushButton* b : in.findChildren<QPushButton*>())
    if (b->text() == words) return b;
  return nullptr;
}

struct Place {
  QTemporaryDir folder;
  QString journals = folder.filePath(QStringLiteral("journals"));
  QString file = folder.filePath(QStringLiteral("mine.snuglab"));
  std::string write(const Lab& lab) const {
    std::string bytes = write_lab(lab);
    EXPECT_TRUE(save_file(file.toStdString(), bytes));
    return bytes;
  }
};

// Opens the file, changes it and never saves; gives what was lost.
std::string lose_work(const Place& place) {
  Session session;
  session.keep_in(place.journals);
  EXPECT_TRUE(session.open(place.file));
  session.perform(grow(session.lab(), "beacon", 6));
  return write_lab(session.lab());
}

TEST(Session, UntitledWorkComesBackAfterACrash) {
  const Place place;
  std::string lost;
  {
    Session session;
    session.keep_in(place.journals);
    session.start(sample("skerry-ferries"));
    session.perform(grow(session.lab(), "beacon", 6));
    session.seal();
    session.perform(grow(session.lab(), "hold", 7));
    session.undo();
    session.redo();
    lost = write_lab(session.lab());
  } // never closed by its person
  MainWindow window;
  window.show();
  window.keep_in(place.journals);
  EXPECT_TRUE(window.notice().text().startsWith(QStringLiteral("Work on ")))
      << window.notice().text().toStdString();
  QPushButton* take = button(window.notice(), QStringLiteral("Open it as it was"));
  ASSERT_NE(take, nullptr);
  QTest::mouseClick(take, Qt::LeftButton);
  EXPECT_EQ(write_lab(window.session().lab()), lost);
  EXPECT_TRUE(window.session().is_dirty());
  window.session().undo();
  EXPECT_EQ(machine(window.session().lab(), "hold").memory, machine(sample("skerry-ferries"), "hold").memory);
  EXPECT_EQ(machine(window.session().lab(), "beacon").memory, 6 * 1024);
  window.session().close();
  EXPECT_TRUE(find_journals(place.journals.toStdString()).empty());
}

TEST(Session, RecoveryOfASavedLabLeavesTheFileAlone) {
  const Place place;
  const std::string saved = place.write(sample("skerry-ferries")), lost = lose_work(place);
  const auto found = find_journals(place.journals.toStdString());
  ASSERT_EQ(found.size(), 1U);
  Session again;
  again.keep_in(place.journals);
  ASSERT_TRUE(again.recover(found.front().path));
  EXPECT_EQ(write_lab(again.lab()), lost);
  EXPECT_EQ(again.path(), place.file);
  EXPECT_EQ(*read_file(place.file.toStdString()), saved);
  EXPECT_TRUE(again.is_dirty());
  ASSERT_TRUE(again.save());
  EXPECT_EQ(*read_file(place.file.toStdString()), lost);
  EXPECT_FALSE(again.is_dirty());
}

// Somebody starts the program with the file first and then takes up what was kept: the lock is the window's
// own.
TEST(Session, RecoveryOfTheFileThatIsOpen) {
  const Place place;
  place.write(sample("skerry-ferries"));
  const std::string lost = lose_work(place);
  const auto found = find_journals(place.journals.toStdString());
  ASSERT_EQ(found.size(), 1U);
  Session again;
  QSignalSpy told(&again, &Session::told);
  again.keep_in(place.journals);
  ASSERT_TRUE(again.open(QFileInfo(place.file).path() + QStringLiteral("/./mine.snuglab")));
  ASSERT_TRUE(again.recover(found.front().path));
  EXPECT_TRUE(told.isEmpty());
  EXPECT_EQ(write_lab(again.lab()), lost);
  EXPECT_EQ(again.path(), place.file);
  ASSERT_TRUE(again.save());
  EXPECT_EQ(*read_file(place.file.toStdString()), lost);
  Session second; // and it is still held
  ASSERT_TRUE(second.open(place.file));
  EXPECT_TRUE(second.is_read_only());
}

TEST(Session, WrongBaseIsRefused) {
  const Place place;
  place.write(sample("skerry-ferries"));
  {
    Session session;
    session.keep_in(place.journals);
    ASSERT_TRUE(session.open(place.file));
    session.perform(grow(session.lab(), "beacon", 6));
  }
  Lab other = sample("skerry-ferries");
  other.facts.title = "changed meanwhile";
  place.write(other);
  Session again;
  QSignalSpy told(&again, &Session::told);
  EXPECT_FALSE(again.recover(find_journals(place.journals.toStdString()).front().path));
  EXPECT_EQ(told.size(), 1);
}

TEST(Session, SecondWindowReadsAndSavesElsewhere) {
  const Place place;
  place.write(sample("skerry-ferries"));
  Session first, second;
  ASSERT_TRUE(first.open(place.file));
  ASSERT_TRUE(second.open(place.file));
  EXPECT_FALSE(first.is_read_only());
  EXPECT_TRUE(second.is_read_only());
  second.perform(grow(second.lab(), "beacon", 6));
  EXPECT_FALSE(second.save());
  ASSERT_TRUE(second.save_as(place.folder.filePath(QStringLiteral("other.snuglab"))));
  EXPECT_FALSE(second.is_read_only());
  EXPECT_TRUE(second.save());
}

TEST(Session, AnotherProgramsChangeIsNeverOverwrittenUnseen) {
  const Place place;
  place.write(sample("skerry-ferries"));
  MainWindow window;
  window.show();
  ASSERT_TRUE(window.open_file(place.file));
  Session& session = window.session();
  Lab theirs = session.lab();
  theirs.facts.title = "theirs";
  place.write(theirs); // by rename: the watch loses the file (CONVENTIONS 19)
  ASSERT_TRUE(QTest::qWaitFor([&] { return session.lab().facts.title == "theirs"; }, 20'000));
  EXPECT_FALSE(session.is_dirty());
  session.perform(grow(session.lab(), "beacon", 6));
  theirs.facts.title = "theirs again";
  {
    std::ofstream out(place.file.toStdString()); // in place
    out << write_lab(theirs);
  }
  ASSERT_TRUE(QTest::qWaitFor(
      [&] {
        return window.notice().text().contains(QStringLiteral("another program")) &&
               button(window.notice(), QStringLiteral("Write mine over it"));
      },
      20'000));
  EXPECT_FALSE(session.save()) << "saving over it needs a word";
  EXPECT_EQ(machine(session.lab(), "beacon").memory, 6 * 1024);
  QTest::mouseClick(button(window.notice(), QStringLiteral("Write mine over it")), Qt::LeftButton);
  const auto now = load_file(place.file.toStdString());
  ASSERT_TRUE(now);
  EXPECT_EQ(machine(now->lab, "beacon").memory, 6 * 1024);
  EXPECT_FALSE(session.is_dirty());
}

TEST(Session, ThousandStepsGoBackAndForth) {
  Session session;
  session.start(sample("skerry-ferries"));
  const std::string first = write_lab(session.lab());
  for (int i = 0; i < 1200; ++i) {
    session.seal();
    ASSERT_TRUE(session.perform(grow(session.lab(), "beacon", 2 + i % 7)));
  }
  const std::string last = write_lab(session.lab());
  int steps = 0;
  for (; session.can_undo(); ++steps) session.undo();
  EXPECT_GE(steps, 1000);
  EXPECT_EQ(write_lab(session.lab()), first);
  while (session.can_redo()) session.redo();
  EXPECT_EQ(write_lab(session.lab()), last);
}

} // namespace
} // namespace snug::test
