#include "core/document/recovery.h"

#include "core/document/write.h"
#include "core/edit/build.h"
#include "core/text/model_text.h"
#include "tests/support/journal_session.h"
#include "tests/support/scale.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

namespace snug {
namespace {

using test::head_of;
using test::Random;
using test::TempFolder;

// A small journal, and the lab after each step.
struct Written {
  TempFolder folder;
  std::string bytes;
  std::vector<std::size_t> ends; // of the lines
  std::vector<Lab> labs;         // before the first step, after it, …

  Written() : labs(1) {
    Lab& lab = labs.back();
    auto journal = Journal::begin(folder.path("live"), head_of(lab, ""), {});
    EXPECT_TRUE(journal) << english(journal.error());
    History history;
    Machine deck;
    deck.name = "deck-a";
    EditBuilder b(labs[0]);
    const MachineId id = b.add(deck);
    const Edit add = std::move(b).take(say(text::label_add, "deck-a"));
    const auto edit = [&](const Edit& e, bool merge) {
      Lab next = labs.back();
      EXPECT_TRUE(history.perform(next, e, merge));
      EXPECT_TRUE(journal->edited(e, history.recorded(), {}));
      labs.push_back(next);
    };
    edit(add, false);
    edit(set_field(labs.back(), id, "name", std::string("deck-b")), true);
    edit(set_field(labs.back(), id, "name", std::string("deck-\xC3\x9F")), true);
    const Edit step = *history.undo_step();
    labs.push_back(labs.back());
    history.undo(labs.back());
    EXPECT_TRUE(journal->undone(step, {}));
    labs.push_back(labs.back());
    history.redo(labs.back());
    EXPECT_TRUE(journal->redone(step, {}));
    edit(remove_elements(labs.back(), std::array<AnyId, 1>{id}), false);
    bytes = test::bytes_of(journal->path());
    for (std::size_t i = 0; i < bytes.size(); ++i)
      if (bytes[i] == '\n') ends.push_back(i + 1);
  }

  Result<RecoveredJournal> recovered(std::string_view other) const {
    const std::string path = folder.path("lab-x-1.journal");
    test::put_bytes(path, other);
    return recover(path);
  }
};

// Torn at every octet: all whole lines are read, and the rest is said to be torn.
TEST(Recovery, TornAtEveryOctet) {
  const Written w;
  ASSERT_EQ(w.labs.size(), w.ends.size());
  for (std::size_t n = 0; n < w.bytes.size(); ++n) {
    const auto back = w.recovered(std::string_view(w.bytes).substr(0, n));
    const auto whole =
        static_cast<std::size_t>(std::upper_bound(w.ends.begin(), w.ends.end(), n) - w.ends.begin());
    if (whole == 0) {
      ASSERT_FALSE(back) << n;
      continue;
    }
    ASSERT_TRUE(back) << n << english(back.error());
    ASSERT_EQ(back->steps.size(), whole - 1) << n;
    const bool at_end = w.ends[whole - 1] == n;
    ASSERT_EQ(back->damage.has_value(), !at_end) << n;
    if (!at_end) {
      ASSERT_EQ(back->damage->message.id(), "journal-torn");
      ASSERT_EQ(back->damage->line, static_cast<int>(whole) + 1);
    }
    const auto lab = replay(*back);
    ASSERT_TRUE(lab) << n;
    ASSERT_TRUE(lab->lab == w.labs[whole - 1]) << n;
  }
}

// A changed octet anywhere: what is before its line is read, nothing of the line or after it.
TEST(Recovery, AFlippedOctetAnywhere) {
  const Written w;
  for (std::size_t n = 0; n < w.bytes.size(); ++n) {
    std::string other = w.bytes;
    other[n] = static_cast<char>(other[n] ^ (1 << (n % 8)));
    const auto back = w.recovered(other);
    const auto line = static_cast<std::size_t>(std::upper_bound(w.ends.begin(), w.ends.end(), n) -
                                               w.ends.begin()); // 0: the first
    if (line == 0) {
      ASSERT_FALSE(back) << n;
      continue;
    }
    ASSERT_TRUE(back) << n;
    ASSERT_EQ(back->steps.size(), line - 1) << n;
    ASSERT_TRUE(back->damage) << n;
    ASSERT_EQ(back->damage->line, static_cast<int>(line) + 1) << n;
  }
}

TEST(Recovery, LinesThatAreMissingOrStandTwice) {
  const Written w;
  ASSERT_GE(w.ends.size(), 4U);
  const std::string first = w.bytes.substr(0, w.ends[1]);
  const std::string second = w.bytes.substr(w.ends[0], w.ends[1] - w.ends[0]);
  for (const std::string& other : {first + second, first + w.bytes.substr(w.ends[2])}) {
    const auto back = w.recovered(other);
    ASSERT_TRUE(back);
    EXPECT_EQ(back->steps.size(), 1U);
    EXPECT_EQ(back->damage->message.id(), "journal-order");
  }
}

TEST(Recovery, RightChecksumsAroundNonsense) {
  const Written w;
  const std::string head = w.bytes.substr(0, w.ends[0]);
  const std::string edit =
      R"({"label": "x", "edits": [{"set": "pc", "field": "usable", "before": 1, "after": 2}]})";
  for (const std::string& json :
       {std::string("{}"), std::string("[]"), std::string("{\"undo\": true}"),
        std::string("{\"redo\": true}"), std::string("{\"edit\": true}"), std::string("{\"saved\": {}}"),
        std::string("{\"joins\": true}"), "{\"edit\": " + edit + ", \"joins\": true}",
        "{\"edit\": " + edit + ", \"undo\": true}", "{\"edit\": " + edit + ", \"joins\": false}",
        std::string("{\"edit\": {\"label\": \"x\", \"edits\": []}}"),
        std::string("{\"undo\": true, \"undo\": true}"), std::string("{\"done\": true}"),
        "{\"edit\": " + std::string(200, '[')}) {
    const auto back = w.recovered(head + detail::journal_line(2, json));
    ASSERT_TRUE(back) << json;
    EXPECT_TRUE(back->steps.empty()) << json;
    ASSERT_TRUE(back->damage) << json;
    EXPECT_EQ(back->damage->message.id(), "journal-line") << json;
    EXPECT_EQ(back->damage->line, 2) << json;
  }
}

TEST(Recovery, WhatIsNoJournal) {
  const Written w;
  const std::string head = R"({"format": "snuglab-journal", "version": 2, "program": "Snuglab 9"})";
  const std::string base = R"({"bytes": "x", "hash": "0000000000000000", "size": 1})";
  const auto id = [&w](std::string_view bytes) {
    const auto back = w.recovered(bytes);
    return back ? std::string("none") : std::string(back.error().message.id());
  };
  EXPECT_EQ(id(""), "journal-head");
  EXPECT_EQ(id("{}\n"), "journal-foreign");
  EXPECT_EQ(id(write_lab(Lab())), "journal-foreign");
  EXPECT_EQ(id(std::string(100'000, '\0')), "journal-head");
  EXPECT_EQ(id(detail::journal_line(1, "{}")), "journal-foreign");
  EXPECT_EQ(id(detail::journal_line(1, head)), "journal-newer");
  EXPECT_EQ(
      id(detail::journal_line(1, R"({"format": "snuglab-journal", "version": 1, "program": "", "uid": "",
 "base": )" + base + "}")),
      "journal-head"); // a line break within the line
  EXPECT_EQ(id(detail::journal_line(
                1, R"({"format": "snuglab-journal", "version": 1, "program": "", "uid": "", "base": )" +
                       base + "}")),
            "edit-form"); // the content does not have the hash
  EXPECT_EQ(id(detail::journal_line(2, R"({"format": "snuglab-journal", "version": 1})")), "journal-head");
}

TEST(Recovery, MoreThanAJournalHolds) {
  const Written w;
  const std::string path = w.folder.path("lab-x-1.journal");
  test::put_bytes(path, w.bytes);
  ASSERT_EQ(::truncate(path.c_str(), 256 * 1024 * 1024 + 1), 0);
  const auto back = recover(path);
  ASSERT_FALSE(back);
  EXPECT_EQ(back.error().message.id(), "document-large");
}

TEST(Recovery, OddTargets) {
  const TempFolder f;
  std::filesystem::create_directory(f.path("lab-d.journal"));
  ASSERT_EQ(::mkfifo(f.path("lab-p.journal").c_str(), 0600), 0);
  for (const auto& [name, id] : {std::pair{"lab-d.journal", "file-folder"},
                                 {"lab-p.journal", "file-special"},
                                 {"lab-none.journal", "file-missing"}}) {
    const auto back = recover(f.path(name));
    ASSERT_FALSE(back) << name;
    EXPECT_EQ(back.error().message.id(), id);
  }
  EXPECT_TRUE(find_journals(f.path()).empty());
  EXPECT_TRUE(find_journals(f.path("nowhere")).empty());
}

TEST(Recovery, ListsWhatNobodyHoldsAndTidiesUp) {
  const TempFolder f;
  const std::string state = f.path("state");
  auto running = Journal::begin(state, head_of(Lab(), ""), {});
  auto left = Journal::begin(state, head_of(Lab(), ""), {});
  ASSERT_TRUE(running && left);
  const std::string path = left->path();
  left = fail(Problem{});
  test::put_bytes(state + "/.lab-gone-1.journal.lock", "process 1 on elsewhere");
  test::put_bytes(state + "/.lab-gone-1.journal.saving", "x");
  test::put_bytes(state + "/.lab-gone-1.journal.saving-17-0", "x");
  test::put_bytes(state + "/notes", "somebody else's");
  const auto found = find_journals(state);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].path, path);
  const auto age = std::chrono::system_clock::now() - found[0].changed;
  EXPECT_LT(age, std::chrono::minutes(5));
  EXPECT_GT(age, std::chrono::minutes(-5));
  {
    auto once = recover(path);
    ASSERT_TRUE(once);
    EXPECT_TRUE(find_journals(state).empty()) << "somebody looks at it already";
    ASSERT_TRUE(discard(std::move(*once)));
  }
  ASSERT_TRUE(std::move(*running).remove());
  running = fail(Problem{});
  std::vector<std::string> names;
  for (const auto& e : std::filesystem::directory_iterator(state)) names.push_back(e.path().filename());
  EXPECT_EQ(names, std::vector<std::string>{"notes"});
}

// Anything may stand in the file: an answer, never a crash.
TEST(Recovery, RandomDamage) {
  const Written w;
  Random r(9);
  for (int i = 0; i < test::scaled(5'000); ++i) {
    std::string other = w.bytes;
    for (std::size_t n = 1 + r.below(3); n > 0; --n) {
      const std::size_t at = r.below(other.size());
      if (r.chance(50)) {
        other[at] = static_cast<char>(r.below(256));
      } else {
        other.erase(at, r.below(40));
      }
    }
    const auto back = w.recovered(other);
    if (!back) continue;
    const auto lab = replay(*back);
    ASSERT_TRUE(lab) << english(lab.error());
    ASSERT_FALSE(lab->stopped);
  }
}

} // namespace
} // namespace snug
