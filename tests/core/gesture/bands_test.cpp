#include "core/gesture/bands.h"

#include "core/gesture/move.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct Bands {
  Lab lab = sample("skerry-ferries");
  MachineId id(const char* name) const { return machine(lab, name).id; }
  Lab after(const Edit& edit) const {
    Lab out = lab;
    EXPECT_TRUE(apply(out, edit));
    Lab back = out;
    EXPECT_TRUE(apply(back, inverse(edit)));
    EXPECT_EQ(back, lab);
    return out;
  }
  // Names of the bands of the PC, from the top.
  std::string rows() const {
    std::string out;
    for (const std::int32_t b : bands_of(lab, {})) {
      for (const MachineId m : machines_of(lab, {{}, b})) out += name_of(lab, m) + " ";
      out += "/ ";
    }
    return out;
  }
};

TEST(Bands, MachinesGetARowOfTheirOwnAndRowsMove) {
  Bands b;
  ASSERT_EQ(b.rows(), "beacon wheelhouse hold gangway deck-a deck-b / ");
  const std::vector<MachineId> decks{b.id("deck-a"), b.id("deck-b")};
  const Edit own = own_band(b.lab, decks);
  EXPECT_EQ(english(own.label), "Give 2 machines a row of their own");
  b.lab = b.after(own);
  EXPECT_EQ(b.rows(), "beacon wheelhouse hold gangway / deck-a deck-b / ");
  EXPECT_TRUE(own_band(b.lab, decks).empty());
  const std::vector<MachineId> one{b.id("hold")};
  b.lab = b.after(own_band(b.lab, one));
  EXPECT_EQ(b.rows(), "beacon wheelhouse gangway / hold / deck-a deck-b / ");
  const Edit up = move_band(b.lab, {{}, 2}, 0);
  EXPECT_EQ(english(up.label), "Move the row of 2 machines");
  b.lab = b.after(up);
  EXPECT_EQ(b.rows(), "deck-a deck-b / beacon wheelhouse gangway / hold / ");
  b.lab = b.after(move_band(b.lab, {{}, 0}, std::nullopt));
  EXPECT_EQ(b.rows(), "beacon wheelhouse gangway / hold / deck-a deck-b / ");
  b.lab = b.after(shift_band(b.lab, {{}, 0}, true));
  EXPECT_EQ(b.rows(), "hold / beacon wheelhouse gangway / deck-a deck-b / ");
  b.lab = b.after(shift_band(b.lab, {{}, 2}, false));
  EXPECT_EQ(b.rows(), "hold / deck-a deck-b / beacon wheelhouse gangway / ");
}

TEST(Bands, NothingToDoIsNoEdit) {
  Bands b;
  b.lab = b.after(own_band(b.lab, std::vector<MachineId>{b.id("hold")}));
  EXPECT_TRUE(move_band(b.lab, {{}, 0}, 0).empty());
  EXPECT_TRUE(move_band(b.lab, {{}, 0}, 1).empty());
  EXPECT_TRUE(move_band(b.lab, {{}, 1}, std::nullopt).empty());
  EXPECT_TRUE(shift_band(b.lab, {{}, 0}, false).empty());
  EXPECT_TRUE(shift_band(b.lab, {{}, 1}, true).empty());
  EXPECT_TRUE(own_band(b.lab, {}).empty());
}

TEST(Bands, AWholeBandIsKnown) {
  Bands b;
  const std::vector<AnyId> hold{b.id("hold")};
  EXPECT_FALSE(whole_band(b.lab, hold));
  b.lab = b.after(own_band(b.lab, std::vector<MachineId>{b.id("hold")}));
  EXPECT_EQ(whole_band(b.lab, hold), (Band{{}, 1}));
  EXPECT_FALSE(whole_band(b.lab, std::vector<AnyId>{b.id("beacon")})) << "a part of its row";
  EXPECT_FALSE(whole_band(b.lab, std::vector<AnyId>{b.lab.segments.front().id}));
  EXPECT_FALSE(whole_band(b.lab, {}));
}

} // namespace
} // namespace snug::test
