// Whatever is done, undo leads back to the first bytes of the document and redo to the last.

#include "core/document/write.h"
#include "core/edit/history.h"
#include "tests/support/any_work.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

#include <map>

namespace snug::test {
namespace {

// Labs as people make them; now and then one of the samples.
Lab first_lab(Random& r, int seed) {
  static const std::vector<Lab> samples{sample("skerry-ferries"), sample("mistakes"), sample("old-pc")};
  if (seed % 5 == 0) return samples[r.below(samples.size())];
  return plausible_lab(r, 1 + r.below(6), r.below(4));
}

// Nothing is left to be filled in, and a menu can say it.
void expect_label(const Edit& step, std::string_view what) {
  const std::string label = english(step.label);
  EXPECT_FALSE(label.empty()) << what;
  EXPECT_EQ(label.find('{'), std::string::npos) << what << ": " << label;
}

TEST(AllWork, UndoAllGivesTheFirstBytesRedoAllTheLast) {
  std::map<std::string_view, int> done;
  const int sequences = scaled(10'000);
  for (int seed = 0; seed < sequences; ++seed) {
    Random r(static_cast<std::uint64_t>(seed));
    Lab lab = first_lab(r, seed);
    const Lab first_lab = lab;
    const std::string first = write_lab(lab);
    History history;
    for (std::size_t n = 4 + r.below(27); n > 0; --n) {
      const AnyWork& work = all_work()[r.below(all_work().size())];
      auto edit = work.act(r, lab);
      if (!edit || edit->steps.empty()) continue;
      const Lab before = lab;
      const auto changed = history.perform(lab, std::move(*edit), r.chance(20));
      if (!changed) {
        ASSERT_TRUE(work.any_value) << seed << ' ' << work.name << ": " << english(changed.error());
        ASSERT_TRUE(lab == before) << seed << ' ' << work.name;
      }
      if (!changed || !*changed) continue;
      ++done[work.name];
      if (history.can_undo()) expect_label(*history.undo_step(), work.name);
      if (r.chance(15) && history.can_undo()) history.undo(lab);
      if (r.chance(10) && history.can_redo()) history.redo(lab);
    }
    while (history.can_redo()) history.redo(lab);
    const std::string last = write_lab(lab);
    while (history.can_undo()) history.undo(lab);
    ASSERT_TRUE(write_lab(lab) == first) << seed;
    ASSERT_TRUE(lab == first_lab) << seed;
    while (history.can_redo()) history.redo(lab);
    ASSERT_TRUE(write_lab(lab) == last) << seed;
  }
  for (const AnyWork& work : all_work()) EXPECT_GE(done[work.name], sequences / 100) << work.name;
}

} // namespace
} // namespace snug::test
