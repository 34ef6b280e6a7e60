#include "core/document/read.h"
#include "core/document/recovery.h"
#include "core/document/write.h"
#include "tests/support/journal_session.h"
#include "tests/support/scale.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::head_of;
using test::JournalSession;
using test::Random;
using test::TempFolder;

Lab first_lab(std::uint64_t seed) {
  Random r(seed);
  return test::random_lab(r, 4);
}

// Takes back everything and does it again, in step with the history that was never lost. What was done before
// the last save, or taken back before it, stands in the recovered one only where it was needed since.
void same_history(JournalSession& live, Replayed& back, std::uint64_t seed) {
  while (back.history.can_undo()) {
    ASSERT_TRUE(live.history.can_undo()) << seed;
    ASSERT_TRUE(live.history.undo_step()->steps == back.history.undo_step()->steps) << seed;
    live.history.undo(live.lab);
    back.history.undo(back.lab);
    ASSERT_TRUE(live.lab == back.lab) << seed;
  }
  while (back.history.can_redo()) {
    ASSERT_TRUE(live.history.can_redo()) << seed;
    live.history.redo(live.lab);
    back.history.redo(back.lab);
    ASSERT_TRUE(live.lab == back.lab) << seed;
  }
}

// Whatever was done, the lab that is recovered is the one that was lost, and so is what can be taken back.
TEST(Replay, GivesTheLabAndTheHistoryThatWereLost) {
  int saves = 0, joins = 0, earlier = 0;
  for (int i = 0; i < test::scaled(300); ++i) {
    const auto seed = static_cast<std::uint64_t>(i);
    const TempFolder f;
    const bool titled = i % 2 == 0;
    const std::string document = titled ? f.path("a.snuglab") : "";
    const Lab first = first_lab(seed);
    test::put_bytes(f.path("a.snuglab"), write_lab(first));
    JournalSession live(seed, first, document);
    std::string path;
    {
      auto journal = Journal::begin(f.path("state"), head_of(first, document), {});
      ASSERT_TRUE(journal) << english(journal.error());
      path = journal->path();
      for (int n = 0; n < 40; ++n) ASSERT_TRUE(live.act(&*journal)) << english(*live.problem);
    }
    const std::string before = test::bytes_of(f.path("a.snuglab"));
    auto recovered = recover(path);
    ASSERT_TRUE(recovered) << seed << english(recovered.error());
    ASSERT_FALSE(recovered->damage) << seed << english(*recovered->damage);
    for (const JournalStep& s : recovered->steps) earlier += s.what == JournalStep::What::undo && s.edit;
    auto back = replay(*recovered);
    ASSERT_TRUE(back) << seed << english(back.error());
    ASSERT_FALSE(back->stopped) << seed << english(*back->stopped);
    ASSERT_TRUE(back->lab == live.lab) << seed;
    ASSERT_EQ(back->base.document, document);
    same_history(live, *back, seed);
    EXPECT_EQ(test::bytes_of(f.path("a.snuglab")), before);
    saves += live.saves;
    joins += live.joins;
  }
  EXPECT_GT(saves, 10);
  EXPECT_GT(joins, 10);
  EXPECT_GT(earlier, 0);
}

// A journal that goes on after a crash, and after another one.
TEST(Replay, GoesOnInTheSameJournal) {
  for (int i = 0; i < test::scaled(200); ++i) {
    const auto seed = static_cast<std::uint64_t>(i) + 5000;
    const TempFolder f;
    const Lab first = first_lab(seed);
    JournalSession live(seed, first, "");
    auto journal = Journal::begin(f.path("state"), head_of(first, ""), {});
    ASSERT_TRUE(journal);
    const std::string path = journal->path();
    for (int round = 0; round < 4; ++round) {
      for (int n = 0; n < 8; ++n) ASSERT_TRUE(live.act(&*journal)) << english(*live.problem);
      journal = fail(Problem{}); // it ends without a word
      test::put_bytes(path, test::bytes_of(path) + "0000 torn");
      auto recovered = recover(path);
      ASSERT_TRUE(recovered) << english(recovered.error());
      EXPECT_EQ(recovered->damage->message.id(), "journal-torn");
      auto back = replay(*recovered);
      ASSERT_TRUE(back && !back->stopped);
      ASSERT_TRUE(back->lab == live.lab) << seed;
      journal = Journal::resume(std::move(*recovered), *back, {});
      ASSERT_TRUE(journal) << english(journal.error());
    }
    ASSERT_TRUE(std::move(*journal).remove());
    journal = fail(Problem{});
    EXPECT_TRUE(std::filesystem::is_empty(f.path("state")));
  }
}

struct Kept {
  explicit Kept(std::string_view name = "a.snuglab") : document(folder.path(name)) {
    lab = first_lab(3);
    bytes = write_lab(lab);
    test::put_bytes(document, bytes);
    auto begun = Journal::begin(folder.path("state"), head_of(lab, document), {});
    EXPECT_TRUE(begun) << english(begun.error());
    journal.emplace(std::move(*begun));
    path = journal->path();
  }
  void set_memory(std::int64_t mib) {
    const Edit e = set_field(lab, AnyId{Kind::pc, 0}, "usable", mib);
    ASSERT_TRUE(history.perform(lab, e));
    ASSERT_TRUE(journal->edited(e, history.recorded(), {}));
  }
  Result<Replayed> back() {
    journal.reset();
    auto recovered = recover(path);
    if (!recovered) return fail(recovered.error());
    return replay(*recovered);
  }

  TempFolder folder;
  std::string document, path, bytes;
  Lab lab;
  History history;
  std::optional<Journal> journal;
};

TEST(Replay, RefusesADocumentThatChangedAndNamesBoth) {
  Kept k;
  k.set_memory(65'536);
  test::put_bytes(k.document, k.bytes + "\n");
  const auto back = k.back();
  ASSERT_FALSE(back);
  EXPECT_EQ(back.error().message.id(), "journal-base-changed");
  const std::string words = english(back.error());
  for (const std::string& part :
       {k.document, std::to_string(k.bytes.size()), hash_text(content_hash(k.bytes)),
        std::to_string(k.bytes.size() + 1), hash_text(content_hash(k.bytes + "\n"))})
    EXPECT_NE(words.find(part), std::string::npos) << part << " in " << words;
  EXPECT_EQ(test::bytes_of(k.document), k.bytes + "\n");
  test::put_bytes(k.document, k.bytes); // as it was: now it fits
  const auto again = k.back();
  ASSERT_TRUE(again) << english(again.error());
  EXPECT_TRUE(again->lab == k.lab);
}

TEST(Replay, RefusesADocumentThatIsGone) {
  Kept k;
  k.set_memory(65'536);
  std::filesystem::remove(k.document);
  const auto back = k.back();
  ASSERT_FALSE(back);
  EXPECT_EQ(back.error().message.id(), "journal-base-gone");
}

// The program ended between writing the document and beginning the journal anew, or before writing it.
TEST(Replay, KnowsWhetherTheLastSaveHappened) {
  for (const bool written : {false, true}) {
    Kept k;
    k.set_memory(65'536);
    const std::string next = write_lab(k.lab);
    ASSERT_TRUE(k.journal->will_save(journal_base(k.document, next), {}));
    if (written) test::put_bytes(k.document, next);
    const auto at_save = k.back();
    ASSERT_TRUE(at_save) << english(at_save.error());
    EXPECT_TRUE(at_save->lab == k.lab);
    EXPECT_EQ(at_save->again, written ? 0U : 1U);
    EXPECT_EQ(at_save->history.is_clean(), written);
    EXPECT_TRUE(at_save->history.can_undo());
  }
}

TEST(Replay, FollowsTheDocumentToAnotherName) {
  Kept k;
  k.set_memory(65'536);
  const std::string other = k.folder.path("b\xff.snuglab"); // no UTF-8: names of files need not be
  const std::string next = write_lab(k.lab);
  ASSERT_TRUE(k.journal->will_save(journal_base(other, next), {}));
  test::put_bytes(other, next);
  k.set_memory(32'768);
  const auto unturned = k.back();
  ASSERT_TRUE(unturned) << english(unturned.error());
  EXPECT_EQ(unturned->base.document, other);
  EXPECT_TRUE(unturned->lab == k.lab);
  EXPECT_EQ(unturned->again, 1U);
}

// What another program wrote into a journal with right checksums cannot break the lab.
TEST(Replay, StopsAtAStepThatDoesNotFit) {
  Kept k;
  k.set_memory(65'536);
  const Lab good = k.lab;
  Edit wrong = set_field(k.lab, AnyId{Kind::pc, 0}, "usable", std::int64_t{4096});
  std::get<SetField>(wrong.steps[0]).before = std::int64_t{1234};
  ASSERT_TRUE(k.journal->edited(wrong, Recorded::step, {}));
  k.journal.reset();
  auto recovered = recover(k.path);
  ASSERT_TRUE(recovered);
  const auto back = replay(*recovered);
  ASSERT_TRUE(back);
  ASSERT_TRUE(back->stopped);
  EXPECT_EQ(back->stopped->message.id(), "journal-step");
  EXPECT_TRUE(back->lab == good);
  EXPECT_EQ(back->used, 1U);
  EXPECT_EQ(back->again, 1U);
  ASSERT_TRUE(Journal::resume(std::move(*recovered), *back, {}));
  EXPECT_EQ(recover(k.path)->steps.size(), 1U);
}

TEST(Replay, BeyondTheStepsThatAHistoryKeeps) {
  Kept k;
  constexpr std::size_t kMore = 20;
  for (std::size_t i = 0; i < History::kMostSteps + kMore; ++i)
    k.set_memory(4096 + static_cast<std::int64_t>(i % 7 + 1) * 256);
  const auto back = k.back();
  ASSERT_TRUE(back && !back->stopped);
  EXPECT_TRUE(back->lab == k.lab);
  EXPECT_EQ(back->history.size(), k.history.size());
}

} // namespace
} // namespace snug
