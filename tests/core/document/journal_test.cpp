#include "core/document/journal.h"

#include "core/document/recovery.h"
#include "core/document/write.h"
#include "tests/support/journal_session.h"
#include "tests/support/temp_folder.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

namespace snug {
namespace {

using test::head_of;
using test::TempFolder;
using Time = Journal::Time;

Edit usable(Lab& lab, History& history, std::int64_t mib) {
  Edit e = set_field(lab, AnyId{Kind::pc, 0}, "usable", mib);
  EXPECT_TRUE(history.perform(lab, e));
  return e;
}

struct Work {
  TempFolder folder;
  Lab lab;
  History history;
  std::string state = folder.path("state");
  Result<Journal> journal = Journal::begin(state, head_of(lab, ""), Time{});

  Result<void> change(std::int64_t mib, Time now = Time{}) {
    return journal->edited(usable(lab, history, mib), history.recorded(), now);
  }
  // What a crash now would leave.
  std::size_t steps_kept() const {
    const std::string copy = folder.path("lab-copy.journal");
    test::put_bytes(copy, test::bytes_of(journal->path()));
    const auto recovered = recover(copy);
    return recovered && !recovered->damage ? recovered->steps.size() : SIZE_MAX;
  }
};

TEST(Journal, EveryStepIsInTheFileAtOnce) {
  Work w;
  ASSERT_TRUE(w.journal) << english(w.journal.error());
  for (std::size_t i = 1; i <= 5; ++i) {
    ASSERT_TRUE(w.change(1024 * static_cast<std::int64_t>(i)));
    EXPECT_EQ(w.steps_kept(), i);
  }
  const Edit last = *w.history.undo_step();
  w.history.undo(w.lab);
  ASSERT_TRUE(w.journal->undone(last, {}));
  EXPECT_EQ(w.steps_kept(), 6U);
  EXPECT_FALSE(w.journal->not_kept_since());
}

TEST(Journal, LinesAreTextWithAPublishedChecksum) {
  Work w;
  w.lab.facts.uid = "0123456789abcdef0123456789abcdef";
  ASSERT_TRUE(w.change(2048));
  const std::string bytes = test::bytes_of(w.journal->path());
  const std::string line = bytes.substr(bytes.find('\n') + 1);
  // The checksum was worked out with Python, bit by bit from RFC 3720's polynomial.
  EXPECT_EQ(line,
            "1c5604c6 2 {\"edit\": {\"label\": \"Change memory usable of this PC\", \"edits\": [{\"set\": "
            "\"pc\", \"field\": \"usable\", \"before\": null, \"after\": 2048}]}}\n");
}

TEST(Journal, IsForItsOwnerAndTakesNobodysPlace) {
  Work w;
  struct stat facts {};
  ASSERT_EQ(::stat(w.state.c_str(), &facts), 0);
  EXPECT_EQ(facts.st_mode & 0777U, 0700U);
  const auto other = Journal::begin(w.state, head_of(w.lab, ""), Time{});
  ASSERT_TRUE(other);
  EXPECT_NE(other->path(), w.journal->path());
  EXPECT_FALSE(recover(w.journal->path())) << "it is in use";
}

TEST(Journal, LeftBehindItIsNotOverwritten) {
  Work w;
  ASSERT_TRUE(w.change(2048));
  const std::string path = w.journal->path();
  w.journal = fail(Problem{});
  const std::string bytes = test::bytes_of(path);
  const auto next = Journal::begin(w.state, head_of(w.lab, ""), Time{});
  ASSERT_TRUE(next);
  EXPECT_NE(next->path(), path);
  EXPECT_EQ(test::bytes_of(path), bytes);
}

TEST(Journal, BeginsAnewWhenSaved) {
  Work w;
  const std::string document = w.folder.path("a.snuglab");
  ASSERT_TRUE(w.change(2048));
  const std::string bytes = write_lab(w.lab);
  ASSERT_TRUE(w.journal->will_save(journal_base(document, bytes), {}));
  test::put_bytes(document, bytes);
  w.history.mark_clean();
  ASSERT_TRUE(w.journal->saved(head_of(w.lab, document), {}));
  EXPECT_EQ(w.steps_kept(), 0U);
  ASSERT_TRUE(w.change(4096));
  EXPECT_EQ(w.steps_kept(), 1U);
  const std::string path = w.journal->path();
  ASSERT_TRUE(std::move(*w.journal).remove());
  w.journal = fail(Problem{});
  EXPECT_FALSE(std::filesystem::exists(path));
  EXPECT_TRUE(std::filesystem::is_empty(w.state));
}

TEST(Journal, AFolderThatCannotBeUsedIsSaid) {
  const TempFolder f;
  test::put_bytes(f.path("file"), "x");
  const auto journal = Journal::begin(f.path("file"), head_of(Lab(), ""), Time{});
  ASSERT_FALSE(journal);
  EXPECT_EQ(journal.error().message.id(), "journal-folder");
  EXPECT_NE(english(journal.error()).find(f.path("file")), std::string::npos);
}

// Somebody cleans the folder while the program runs: within kSyncEvery the journal is there again, whole.
TEST(Journal, RemovedByAnotherProgramItIsWrittenAnew) {
  Work w;
  ASSERT_TRUE(w.change(2048));
  std::filesystem::remove(w.journal->path());
  ASSERT_TRUE(w.change(4096));
  ASSERT_TRUE(w.journal->sync_if_due(Journal::kSyncEvery - Time{1}));
  EXPECT_FALSE(std::filesystem::exists(w.journal->path()));
  ASSERT_TRUE(w.journal->sync_if_due(Journal::kSyncEvery));
  EXPECT_EQ(w.steps_kept(), 2U);
  ASSERT_TRUE(w.change(8192));
  EXPECT_EQ(w.steps_kept(), 3U);
}

} // namespace
} // namespace snug
