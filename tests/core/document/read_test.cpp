#include "core/document/read.h"

#include "core/document/write.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

std::string document(std::string_view members) {
  return "{\"format\": \"snuglab\", \"version\": 1" + (members.empty() ? "" : ", " + std::string(members)) +
         "}";
}
std::string complaint(std::string_view members) {
  const auto lab = read_lab(document(members), "x");
  return lab ? "loaded" : english(lab.error());
}

TEST(Read, HeaderAloneIsADefaultLab) {
  const auto lab = read_lab(document(""), "x.snuglab");
  ASSERT_TRUE(lab) << english(lab.error());
  EXPECT_EQ(*lab, Lab());
}

TEST(Read, FieldsOfEveryType) {
  const auto lab = read_lab(document(R"(
    "cards": [{"id": "c7", "machine": "m1", "addresses": [{"address": "192.0.2.10"}, {"kind": "dhcp", "length": 24}],
               "mac": "00-00-5E-00-53-01", "connected": false}],
    "lab": {"date": "2027-02-14", "local_prefix6": "fd00:1:2::/48", "next_id": 40, "sizes": "lean", "author": null},
    "exercises": [{"on": ["m1"], "id": "e9"}],
    "machines": [{"name": "beacon", "id": "m1", "memory": 2048}])"),
                            "x");
  // "author" is text: null is refused there
  EXPECT_FALSE(lab);
  const auto good = read_lab(document(R"(
    "cards": [{"id": "c7", "machine": "m1", "addresses": [{"address": "192.0.2.10"}, {"kind": "dhcp", "length": 24}],
               "mac": "00-00-5E-00-53-01", "connected": false}],
    "lab": {"date": "2027-02-14", "local_prefix6": "fd00:1:2::/48", "next_id": 40, "sizes": "lean"},
    "exercises": [{"on": ["m1"], "id": "e9"}],
    "machines": [{"name": "beacon", "id": "m1", "memory": 2048, "footprint": null}])"),
                             "x");
  ASSERT_TRUE(good) << english(good.error());
  Lab expected;
  expected.facts.date = Date{2027, 2, 14};
  expected.facts.local_prefix6 = parse_prefix("fd00:1:2::/48").value();
  expected.facts.next_id = 40;
  expected.facts.sizes = SizeSet::lean;
  Machine m;
  m.id.number = 1;
  m.name = "beacon";
  m.memory = 2048;
  expected.machines.push_back(m);
  Card c;
  c.id.number = 7;
  c.machine = m.id;
  c.addresses.push_back({{}, AddressKind::typed, parse_address("192.0.2.10").value(), std::nullopt});
  c.addresses.push_back({{}, AddressKind::dhcp, std::nullopt, 24});
  c.mac = parse_mac("00:00:5e:00:53:01").value();
  c.connected = false;
  expected.cards.push_back(c);
  Exercise e;
  e.id.number = 9;
  e.on = {m.id};
  expected.exercises.push_back(e);
  EXPECT_EQ(*good, expected);
}

TEST(Read, NextIdIsRaisedAboveTheIdsInUse) {
  const auto loaded = read_document(document(R"("lab": {"next_id": 3}, "machines": [{"id": "m41"}])"), "x");
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded->lab.facts.next_id, 42U);
  ASSERT_EQ(loaded->notes.size(), 1U);
  EXPECT_EQ(loaded->notes[0].id(), "next-id-raised");
  EXPECT_EQ(read_lab(document(R"("machines": [{"id": "m41"}])"), "x")->facts.next_id, 42U);
}

TEST(Read, UnknownMembersAreKeptInRawText) {
  const std::string text = document(
      R"("later": {"a" : [1.50, -0, 1E400000000000000000000000000], "b": "\u00e9 \" x"}, "pc": {"colour": 007})");
  EXPECT_FALSE(read_lab(text, "x")); // neither a number beyond every range nor leading zeros are JSON for us
  const auto lab = read_lab(
      document(
          R"("later": {"a" : [1.50, -0, 12345678901234567890123], "b": "\u00e9 \" x"}, "pc": {"colour": 1e2 },
             "machines": [{"id": "m1", "x": true, "routes": [{"y" : null, "metric": 3, "z": [ ]}], "w": "a  b"}])"),
      "x");
  ASSERT_TRUE(lab) << english(lab.error());
  EXPECT_EQ(lab->unknown.members(), R"("later":{"a":[1.50,-0,12345678901234567890123],"b":"\u00e9 \" x"})");
  EXPECT_EQ(lab->pc.unknown.members(), R"("colour":1e2)");
  EXPECT_EQ(lab->machines[0].unknown.members(), R"("x":true,"w":"a  b")");
  EXPECT_EQ(lab->machines[0].routes[0].unknown.members(), R"("y":null,"z":[])");
  EXPECT_EQ(lab->machines[0].routes[0].metric, 3);
  const auto again = read_lab(write_lab(*lab), "x");
  ASSERT_TRUE(again) << english(again.error());
  EXPECT_EQ(*again, *lab);
}

TEST(Read, SaysWhatIsWrongAndWhere) {
  EXPECT_EQ(complaint(R"("machines": [{"id": "m1", "memory": 0}])"),
            "x:1:73: /machines/0/memory: memory is 0 MiB; it must lie between 1 MiB and 65536 GiB");
  EXPECT_EQ(complaint("\n\"machines\": [\n {\"id\": \"m1\"},\n {\"id\": \"m1\"}]"),
            "x:4:9: /machines/1/id: the id m1 was given already at line 3, column 9: give this one an id of "
            "its own");
  EXPECT_EQ(complaint("\n\"machines\": [{\"id\": \"m1\",\n\"memory\": 5, \"memory\": 6}]"),
            "x:3:14: /machines/0/memory: \"memory\" stands twice in one object, first at line 3, column 1: "
            "take one of them away");
  EXPECT_EQ(complaint(R"("cards": [{"id": "c1", "trunk": [{"segment": "s4"}]}])"),
            "x:1:82: /cards/0/trunk/0/segment: segment names s4, but the document has no segment with this "
            "id: correct it, or add that segment");
}

} // namespace
} // namespace snug
