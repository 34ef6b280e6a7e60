#include "core/layout/way.h"

#include "core/layout/draw.h"
#include "tests/support/ferries.h"
#include "tests/support/told.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>

namespace snug::test {
namespace {

struct Ways : Ferries {
  Analysis analysis{lab};
  Drawing drawing = draw(analysis);
  CardId card(const char* name, const char* on) const {
    for (const Card& c : lab.cards)
      if (c.machine == machine(lab, name).id && c.segment == segment(on)) return c.id;
    ADD_FAILURE() << name << " on " << on;
    return {};
  }
  Point joint(CardId of) const {
    for (const AnyShape& s : drawing.shapes)
      if (const auto* c = std::get_if<CircleShape>(&s); c && c->part == Part::joint && c->of == AnyId(of))
        return c->centre;
    ADD_FAILURE() << "no joint";
    return {};
  }
  std::vector<WayLine> lines(std::vector<AnyId> passed) const {
    return lines_of_way(analysis.index(), drawing, passed);
  }
};

bool has(const std::vector<WayLine>& lines, Point from, Point to) {
  return std::find(lines.begin(), lines.end(), WayLine{from, to}) != lines.end();
}
// A wire that ends at this joint.
bool ends_at(const std::vector<WayLine>& lines, Point joint) {
  return std::any_of(lines.begin(), lines.end(), [joint](const WayLine& l) {
    return l.to == joint && l.from.x == joint.x && l.from.y < joint.y;
  });
}

TEST(LinesOfWay, AreTheWiresOfItsCardsAndTheRailBetween) {
  const Ways w;
  const CardId a = w.card("beacon", "Steering"), b = w.card("hold", "Steering");
  const auto lines = w.lines({machine(w.lab, "beacon").id, a, w.segment("Steering"), b});
  EXPECT_TRUE(ends_at(lines, w.joint(a)));
  EXPECT_TRUE(ends_at(lines, w.joint(b)));
  EXPECT_TRUE(has(lines, w.joint(a), w.joint(b)));
  EXPECT_EQ(lines.size(), 3U);
}

// An inner guest's frames leave by what its hypervisor carries.
TEST(LinesOfWay, GoByTheHypervisorsCard) {
  const Ways w;
  const CardId guest = w.card("tickets-1", "Passengers"), carrying = w.card("deck-a", "Passengers");
  const CardId other = w.card("gangway", "Passengers");
  const auto lines = w.lines({guest, w.segment("Passengers"), other});
  EXPECT_TRUE(ends_at(lines, w.joint(carrying)));
  EXPECT_TRUE(ends_at(lines, w.joint(other)));
  EXPECT_EQ(lines.size(), 3U);
}

TEST(LinesOfWay, GoUpTheRiserBetweenStretches) {
  Ways w;
  for (Machine& m : w.lab.machines)
    if (m.name == "hold") m.band = 1;
  const Analysis analysis(w.lab);
  w.drawing = draw(analysis);
  const CardId a = w.card("beacon", "Steering"), b = w.card("hold", "Steering");
  const auto lines = lines_of_way(analysis.index(), w.drawing, std::vector<AnyId>{a, b});
  const Point upper = w.joint(a), lower = w.joint(b);
  ASSERT_LT(upper.y, lower.y);
  const auto riser = std::find_if(lines.begin(), lines.end(), [&](const WayLine& l) {
    return l.from.x == l.to.x && l.from.y == upper.y && l.to.y == lower.y;
  });
  ASSERT_NE(riser, lines.end());
  EXPECT_TRUE(has(lines, upper, {riser->from.x, upper.y}));
  EXPECT_TRUE(has(lines, lower, {riser->from.x, lower.y}));
}

const LineShape& line_of(const Drawing& drawing, AnyId id, Part part) {
  for (const AnyShape& s : drawing.shapes)
    if (const auto* l = std::get_if<LineShape>(&s); l && l->of == id && l->part == part) return *l;
  throw std::runtime_error("no such line");
}

// Along the rail to the translator and on to the LAN that it leads to.
TEST(LinesOfWay, LeaveThroughTheTranslator) {
  const Ways w;
  const SegmentId crew = w.segment("Crew");
  const LanId lan = w.lab.lans.at(0).id;
  const CardId a = w.card("gangway", "Crew");
  const auto lines = w.lines({machine(w.lab, "gangway").id, a, crew, crew, lan, kOutside});
  const LineShape &rail = line_of(w.drawing, crew, Part::rail), &lane = line_of(w.drawing, crew, Part::lane);
  EXPECT_TRUE(has(lines, rail.from, w.joint(a)));
  EXPECT_TRUE(has(lines, lane.from, lane.to));
  const auto inside = w.lines({machine(w.lab, "gangway").id, a, crew});
  EXPECT_FALSE(has(inside, lane.from, lane.to)) << "it stays on the segment";
}

TEST(LinesOfWay, LeadToTheLanOfABridgedSegment) {
  const Ways w;
  const SegmentId house = w.segment("House LAN");
  const CardId a = w.card("wheelhouse", "House LAN");
  const auto lines = w.lines({a, house, w.lab.lans.at(0).id});
  const LineShape &rail = line_of(w.drawing, house, Part::rail),
                  &lane = line_of(w.drawing, house, Part::lane);
  EXPECT_TRUE(has(lines, rail.from, w.joint(a)));
  EXPECT_TRUE(has(lines, lane.from, lane.to));
}

TEST(LinesOfWay, EndAtTheSocketThatThePcUses) {
  const Ways w;
  const SegmentId steering = w.segment("Steering"), passengers = w.segment("Passengers");
  const CardId a = w.card("beacon", "Steering");
  const auto lines = w.lines({a, steering, AnyId{Kind::pc, 0}, steering, passengers});
  const LineShape& socket = line_of(w.drawing, steering, Part::socket);
  const LineShape& other = line_of(w.drawing, passengers, Part::socket);
  EXPECT_TRUE(has(lines, socket.from, socket.to));
  EXPECT_TRUE(has(lines, w.joint(a), socket.from));
  EXPECT_FALSE(has(lines, other.from, other.to));
}

TEST(LinesOfWay, NothingPassedIsNoLine) {
  const Ways w;
  EXPECT_TRUE(w.lines({}).empty());
  EXPECT_TRUE(w.lines({machine(w.lab, "beacon").id, w.segment("Steering")}).empty());
}

} // namespace
} // namespace snug::test
