#include "core/layout/draw.h"

#include "core/embedded/embedded.h"
#include "tests/support/overlaps.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

#include <map>

namespace snug {
namespace {

std::string first_lines(const std::vector<std::string>& lines) {
  std::string out = std::to_string(lines.size()) + " overlaps";
  for (std::size_t i = 0; i < lines.size() && i < 6; ++i) out += "\n  " + lines[i];
  return out;
}

std::vector<DrawOptions> variants() {
  DrawOptions screen;
  screen.full_addresses = screen.inner_addresses = screen.show_ruler = screen.show_legend = false;
  return {DrawOptions{}, screen};
}

void expect_clear(const Lab& lab, const std::string& what) {
  const Analysis analysis(lab);
  for (const DrawOptions& options : variants()) {
    const auto found = test::overlaps(draw(analysis, options));
    EXPECT_TRUE(found.empty()) << what << ": " << first_lines(found);
  }
}

TEST(Draw, MeasureFindsOverlaps) {
  Drawing d;
  d.width = d.height = 100;
  TextShape a;
  a.part = Part::address;
  a.box = {10, 10, 20, 10};
  TextShape b = a;
  b.box = {25, 12, 20, 10};
  LineShape wire;
  wire.part = Part::wire;
  wire.from = {15, 0};
  wire.to = {15, 50};
  wire.width = 18;
  d.shapes = {a, b, wire};
  d.groups = {{MachineId{1}, Part::machine, 0, 0, {5, 30, 20, 20}, "", ""},
              {MachineId{2}, Part::machine, 0, 0, {20, 40, 20, 20}, "", ""}};
  EXPECT_EQ(test::overlaps(d).size(), 4U); // label/label, label/wire, wire/card, card/card
}

TEST(Draw, SamplesHaveNoOverlap) {
  for (const EmbeddedFile& file : embedded_samples()) {
    const Lab lab = test::sample(file.name);
    expect_clear(lab, std::string(file.name));
    for (const Exercise& e : lab.exercises) {
      DrawOptions options;
      options.exercise = e.id;
      const Analysis analysis(lab);
      const auto found = test::overlaps(draw(analysis, options));
      EXPECT_TRUE(found.empty()) << file.name << ", " << e.name << ": " << first_lines(found);
    }
  }
}

TEST(Draw, PlausibleLabsHaveNoOverlap) {
  for (int i = 0; i < test::scaled(200); ++i) {
    test::Random random(static_cast<std::uint64_t>(i) + 1);
    expect_clear(test::plausible_lab(random, random.below(40), 1 + random.below(14)),
                 "lab " + std::to_string(i));
  }
}

TEST(Draw, AnyLabHasNoOverlap) {
  for (int i = 0; i < test::scaled(300); ++i) {
    test::Random random(static_cast<std::uint64_t>(i) + 1);
    expect_clear(test::random_lab(random, 12), "lab " + std::to_string(i));
  }
}

TEST(Draw, NoOverlapAfterRandomEdits) {
  for (const EmbeddedFile& file : embedded_samples()) {
    Lab lab = test::sample(file.name);
    test::Random random(25);
    for (int i = 0; i < test::scaled(200); ++i) {
      ASSERT_TRUE(apply(lab, test::random_edit(random, lab)));
      if (i % 5 == 0)
        expect_clear(lab, std::string(file.name) + " after " + std::to_string(i + 1) + " edits");
    }
  }
}

TEST(Draw, SameLabSamePicture) {
  const Lab lab = test::sample("skerry-ferries");
  const Lab again = test::sample("skerry-ferries");
  const Drawing a = draw(Analysis(lab));
  const Drawing b = draw(Analysis(again));
  ASSERT_EQ(a.shapes.size(), b.shapes.size());
  ASSERT_EQ(a.groups.size(), b.groups.size());
  for (std::size_t i = 0; i < a.groups.size(); ++i) EXPECT_EQ(a.groups[i].box, b.groups[i].box);
}

TEST(Draw, EveryMachineSegmentAndLanIsAGroupOnce) {
  for (const EmbeddedFile& file : embedded_samples()) {
    const Lab lab = test::sample(file.name);
    std::map<AnyId, int> times;
    std::uint32_t last = 0;
    for (const Group& g : draw(Analysis(lab)).groups) {
      EXPECT_GE(g.first, last) << "groups are ordered and do not cut each other";
      EXPECT_GE(g.end, g.first);
      last = g.end;
      if (g.of) ++times[g.of];
    }
    for (const Machine& m : lab.machines) EXPECT_EQ(times[m.id], 1) << m.name;
    for (const Segment& s : lab.segments) EXPECT_EQ(times[s.id], 1) << s.name;
    for (const Lan& l : lab.lans) EXPECT_EQ(times[l.id], 1) << l.name;
    const AnyId pc{Kind::pc, 0};
    EXPECT_EQ(times[pc], 1);
  }
}

using Boxes = std::map<AnyId, Box>;
Boxes machine_boxes(const Lab& lab) {
  Boxes out;
  for (const Group& g : draw(Analysis(lab)).groups)
    if (g.part == Part::machine) out[g.of] = g.box;
  return out;
}

auto place_key(const Machine& m) { return std::tuple(m.band, m.order, m.id); }

Point relative(const Boxes& boxes, const Machine& m) {
  const Box& own = boxes.at(m.id);
  if (!m.carrier) return {own.x, own.y};
  const Box& carrier = boxes.at(m.carrier);
  return {own.x - carrier.x, own.y - carrier.y};
}

bool inside(const Lab& lab, const Machine& guest, MachineId carrier) {
  for (MachineId at = guest.carrier; at; at = find<Machine>(lab, at)->carrier)
    if (at == carrier) return true;
  return false;
}

// DECISIONS 10: cards before the touched one in its band and all other carriers keep their place, measured
// from their carrier's corner; machines on the PC before the touched one or what carries it stay where they
// are.
void expect_stable(const Lab& before, const Lab& after, const Machine& touched, const std::string& what) {
  const Boxes a = machine_boxes(before);
  const Boxes b = machine_boxes(after);
  for (const Machine& m : before.machines) {
    if (b.find(m.id) == b.end() || m.id == touched.id || inside(before, touched, m.id)) continue;
    const bool same_carrier = m.carrier == touched.carrier;
    const bool earlier = same_carrier && m.band == touched.band && place_key(m) < place_key(touched);
    const bool other_carrier =
        m.carrier && !same_carrier && m.carrier != touched.id && !inside(before, touched, m.carrier);
    if (!earlier && !other_carrier) continue;
    EXPECT_EQ(relative(a, m), relative(b, m)) << what << ": " << m.name << " moved";
  }
}

TEST(Draw, OneEditLeavesWhatStandsBeforeInPlace) {
  for (int i = 0; i < test::scaled(400); ++i) {
    test::Random random(static_cast<std::uint64_t>(i) + 77);
    Lab lab = test::plausible_lab(random, 10 + random.below(20), 1 + random.below(9));
    for (Machine& m : lab.machines) m.band = static_cast<std::int32_t>(random.below(2));
    const Machine touched = lab.machines[random.below(lab.machines.size())];
    Lab after = lab;
    const auto kind = random.below(3);
    if (kind == 0) {
      ASSERT_TRUE(apply(after, set_field(after, touched.id, "name", std::string(1 + random.below(40), 'w'))));
    } else if (kind == 1) {
      ASSERT_TRUE(apply(after, set_field(after, touched.id, "memory", std::int64_t{131072})));
    } else {
      EditBuilder builder(after);
      Card card;
      card.machine = touched.id;
      card.segment = lab.segments[random.below(lab.segments.size())].id;
      card.addresses.push_back({{}, AddressKind::typed, Address::v4(0x0a00'00fdU), std::nullopt});
      builder.add(card);
      ASSERT_TRUE(apply(after, std::move(builder).take({})));
    }
    expect_stable(lab, after, touched, "lab " + std::to_string(i) + " edit " + std::to_string(kind));
  }
}

TEST(Draw, RemovingAMachineLeavesWhatStandsBeforeInPlace) {
  for (int i = 0; i < test::scaled(100); ++i) {
    test::Random random(static_cast<std::uint64_t>(i) + 5);
    const Lab lab = test::plausible_lab(random, 22, 5);
    const Machine touched = lab.machines[random.below(lab.machines.size())];
    Lab after = lab;
    const AnyId ids[] = {touched.id};
    ASSERT_TRUE(apply(after, remove_elements(after, ids)));
    expect_stable(lab, after, touched, "lab " + std::to_string(i));
  }
}

TEST(Draw, EmptyLab) {
  const Lab lab;
  const Drawing d = draw(Analysis(lab));
  EXPECT_GT(d.width, 0);
  EXPECT_GT(d.height, 0);
  EXPECT_TRUE(test::overlaps(d).empty());
}

TEST(Draw, DeepNesting) {
  Lab lab;
  for (std::uint32_t i = 1; i <= 300; ++i) {
    Machine m;
    m.id.number = i;
    m.carrier.number = i - 1;
    m.name = "level " + std::to_string(i);
    lab.machines.push_back(m);
  }
  lab.facts.next_id = 301;
  EXPECT_TRUE(test::overlaps(draw(Analysis(lab))).empty());
}

} // namespace
} // namespace snug
