// Another program writes the file that is open, many times and in the ways in which programs write.

#include "core/document/write.h"
#include "core/gesture/move.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"
#include "tests/support/temp_folder.h"
#include "ui/session/words.h"
#include "ui/window/main_window.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <filesystem>
#include <fstream>

namespace snug::test {
namespace {

namespace fs = std::filesystem;
constexpr int kLimit = 20'000; // ms; only a broken program takes that long

enum class Way { in_place, by_rename, by_rename_keeping_a_link };

class Watch : public ::testing::TestWithParam<Way> {
 protected:
  void SetUp() override {
    put_bytes(file(), write_lab(lab));
    window.show();
    ASSERT_TRUE(window.open_file(as_qt(file())));
  }
  std::string file() const { return folder.path("mine.snuglab"); }
  // As another program would, in the middle of it with a look at what this window makes of it.
  void rewrite(const std::string& title) {
    lab.facts.title = title;
    const std::string bytes = write_lab(lab);
    const std::string fresh = folder.path("fresh");
    const bool in_place = GetParam() == Way::in_place;
    std::ofstream out(in_place ? file() : fresh, std::ios::trunc);
    out << bytes.substr(0, bytes.size() / 2) << std::flush;
    QCoreApplication::processEvents();
    out << bytes.substr(bytes.size() / 2);
    out.close();
    if (in_place) return;
    if (GetParam() == Way::by_rename_keeping_a_link) {
      fs::remove(folder.path("before"));
      fs::create_hard_link(file(), folder.path("before"));
    }
    fs::rename(fresh, file());
  }
  bool shows(const std::string& title) {
    return QTest::qWaitFor([&] { return window.session().lab().facts.title == title; }, kLimit);
  }
  const TempFolder folder;
  Lab lab = sample("skerry-ferries");
  MainWindow window;
};

TEST_P(Watch, EveryChangeIsNoticedOnce) {
  Session& session = window.session();
  const QSignalSpy read(&session, &Session::lab_changed), told(&session, &Session::told);
  const int times = scaled(100);
  for (int i = 1; i <= times; ++i) {
    window.notice().withdraw({});
    rewrite("theirs " + std::to_string(i));
    ASSERT_TRUE(shows("theirs " + std::to_string(i))) << "lost";
    EXPECT_TRUE(window.notice().text().contains(QStringLiteral("mine.snuglab")))
        << "change " << i << " is not said";
    EXPECT_FALSE(session.is_dirty());
  }
  QTest::qWait(250); // what comes late would be one too many
  EXPECT_EQ(read.size(), times);
  EXPECT_TRUE(told.isEmpty()) << told.value(0).value(0).value<Notice>().text.toStdString();
  int steps = 0;
  for (; session.can_undo(); ++steps) session.undo();
  EXPECT_EQ(steps, times);
}

// In place behind a rename: the watch is on the file that has the name.
TEST_P(Watch, ARenameDoesNotHideWhatIsWrittenInPlaceAfterIt) {
  for (int i = 1; i <= scaled(50); ++i) {
    rewrite("theirs " + std::to_string(i));
    ASSERT_TRUE(shows("theirs " + std::to_string(i)));
    lab.facts.title = "in place " + std::to_string(i);
    std::ofstream(file(), std::ios::trunc) << write_lab(lab);
    ASSERT_TRUE(shows(lab.facts.title)) << "lost";
  }
}

TEST_P(Watch, WithChangesOfOnesOwnOneQuestionStandsForAll) {
  Session& session = window.session();
  ASSERT_TRUE(session.perform(set_memory(session.lab(), machine(session.lab(), "beacon").id, 6144)));
  const QSignalSpy said(&window.notice(), &NoticeBar::changed);
  for (int i = 1; i <= scaled(100); ++i) {
    const auto before = said.size();
    rewrite("theirs " + std::to_string(i));
    ASSERT_TRUE(QTest::qWaitFor([&] { return said.size() > before; }, kLimit)) << "lost";
  }
  EXPECT_EQ(window.notice().text().count(QLatin1Char('\n')), 0) << window.notice().text().toStdString();
  EXPECT_EQ(machine(session.lab(), "beacon").memory, 6144);
  QPushButton* theirs = nullptr;
  for (auto* b : window.notice().findChildren<QPushButton*>())
    if (b->isVisible() && b->text() == QStringLiteral("Read it again")) theirs = b;
  ASSERT_NE(theirs, nullptr);
  QTest::mouseClick(theirs, Qt::LeftButton);
  EXPECT_EQ(session.lab().facts.title, lab.facts.title) << "the last that was written";
  session.undo();
  EXPECT_EQ(machine(session.lab(), "beacon").memory, 6144) << "what was one's own is not lost";
}

INSTANTIATE_TEST_SUITE_P(Ways, Watch,
                         ::testing::Values(Way::in_place, Way::by_rename, Way::by_rename_keeping_a_link));

} // namespace
} // namespace snug::test
