#include "core/document/write.h"

#include "core/document/read.h"
#include "tests/support/any_lab.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace snug {
namespace {

using test::Random;

// Gives some elements, rows and singletons members that no version knows.
void add_unknown(Random& r, Lab& lab) {
  static constexpr std::array<std::string_view, 4> kMembers{"\"later\":1.50",
                                                            "\"a b\":{\"x\":[null,-0]},\"\":\"\\u00e9\"",
                                                            "\"~/\":[]", "\"n\":123456789012345678901"};
  const auto members = [&r] { return Unknown(std::string(kMembers[r.below(kMembers.size())])); };
  if (r.chance(50)) lab.unknown = members();
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab); ++i)
      if (r.chance(30)) store.table->unknown(store.at(lab, i)) = members();
  }
  for (Card& c : lab.cards)
    for (CardAddress& a : c.addresses)
      if (r.chance(30)) a.unknown = members();
}

// RELIABILITY row 18 of the design: load(save(m)) = m; two saves give the same octets.
TEST(Write, WhatIsWrittenIsReadBack) {
  const int cases = test::scaled(100'000);
  for (int i = 0; i < cases; ++i) {
    Random r(static_cast<std::uint64_t>(i));
    Lab lab = test::random_lab(r, i % 20 == 0 ? 6 : 1);
    add_unknown(r, lab);
    const std::string bytes = write_lab(lab);
    const auto again = read_lab(bytes, "x");
    ASSERT_TRUE(again) << "seed " << i << ": " << english(again.error()) << "\n" << bytes;
    ASSERT_EQ(*again, lab) << "seed " << i << "\n" << bytes;
    ASSERT_EQ(write_lab(*again), bytes) << "seed " << i;
  }
}

RC_GTEST_PROP(Write, PropertyRoundTrip, ()) {
  const Lab lab = *test::any_lab();
  const std::string bytes = write_lab(lab);
  const auto again = read_lab(bytes, "x");
  RC_ASSERT(again.has_value());
  RC_ASSERT(*again == lab);
  RC_ASSERT(write_lab(lab) == bytes);
}

TEST(Write, LayoutOfTheDocument) {
  Lab lab;
  EXPECT_EQ(write_lab(lab), "{\n  \"format\": \"snuglab\",\n  \"version\": 1\n}\n");
  lab.facts.uid = "00112233445566778899aabbccddeeff";
  lab.facts.title = "A \"small\" lab";
  lab.machines.resize(2);
  lab.machines[0].id.number = 1;
  lab.machines[0].name = "beacon";
  lab.machines[0].memory = 2048;
  lab.machines[1].id.number = 2;
  lab.machines[1].carrier = lab.machines[0].id;
  lab.machines[1].unknown = Unknown("\"later\":[1]");
  lab.pc.unknown = Unknown("\"colour\":\"blue\"");
  lab.unknown = Unknown("\"more\":{}");
  EXPECT_EQ(write_lab(lab), R"({
  "format": "snuglab",
  "version": 1,
  "lab": {
    "uid": "00112233445566778899aabbccddeeff",
    "title": "A \"small\" lab"
  },
  "pc": {
    "colour":"blue"
  },
  "machines": [
    {"id": "m1", "name": "beacon", "memory": 2048},
    {"id": "m2", "carrier": "m1", "later":[1]}
  ],
  "more":{}
}
)");
}

} // namespace
} // namespace snug
