// A rail under the hand: up and down among the others, its left end through the frame and back.

#include "core/gesture/rails.h"
#include "core/text/gesture_text.h"
#include "ui/canvas/gesture.h"
#include "ui/session/words.h"

#include <algorithm>
#include <cmath>

namespace snug {

namespace {

class RailDrag : public Gesture {
 public:
  RailDrag(Session& session, SegmentId rail)
      : Gesture(session, as_qt(name_of(session.lab(), rail))), rail_(rail),
        order_(rails_in_order(session.lab())) {}

 protected:
  // Above the rail that is nearest, or below it.
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    const LineShape* nearest = nullptr;
    for (const AnyShape& shape : before.shapes)
      if (const auto* line = std::get_if<LineShape>(&shape); line && line->part == Part::rail)
        if (!nearest || std::abs(line->from.y - at.y()) < std::abs(nearest->from.y - at.y())) nearest = line;
    if (!nearest || nearest->of == AnyId(rail_)) return {};
    before_ = SegmentId{nearest->of.number};
    if (at.y() > nearest->from.y) {
      const auto next = std::find(order_.begin(), order_.end(), before_) + 1;
      before_ = next == order_.end() ? SegmentId{} : *next;
    }
    return {AnyId(rail_), before_.number};
  }
  Result<Edit> edit_for(const Aim&) override { return move_rail(session().lab(), rail_, before_); }
  void done(const Aim&) override { session().select({AnyId(rail_)}); }

 private:
  SegmentId rail_, before_;
  std::vector<SegmentId> order_;
};

class EndPull : public Gesture {
 public:
  EndPull(Session& session, SegmentId rail, QPointF from)
      : Gesture(session, snug::words(text::gesture_end, name_of(session.lab(), rail))), rail_(rail),
        from_(from) {}
  std::optional<QPointF> line_from() const override { return from_; }

 protected:
  // On a LAN, as it stood or as it is shown: one network with it. Elsewhere outside: by translation. Inside
  // the frame: nowhere.
  Aim aim(const Drawing& before, const Drawing& now, QPointF at) override {
    lan_ = {};
    kind_ = SegmentKind::isolated;
    if (at.x() < box_of(before, {Kind::pc, 0}).x) kind_ = SegmentKind::nat;
    for (const Drawing* d : {&before, &now})
      for (const Group& g : d->groups)
        if (kind_ == SegmentKind::nat && g.part == Part::lan && as_rect(g.box).contains(at)) {
          kind_ = SegmentKind::bridged;
          lan_ = g.of.kind == Kind::lan ? LanId{g.of.number} : LanId{};
        }
    return {AnyId(rail_), std::uint64_t{lan_.number} << 8U | static_cast<std::uint64_t>(kind_)};
  }
  Result<Edit> edit_for(const Aim&) override { return lead_out(session().lab(), rail_, kind_, lan_); }
  void done(const Aim&) override { session().select({AnyId(rail_)}); }
  QString gain() const override {
    if (kind_ == SegmentKind::isolated) return snug::words(text::gesture_isolated_is);
    if (kind_ == SegmentKind::nat) return snug::words(text::gesture_translated_is);
    const Lab& then = session().shown().lab();
    return snug::words(text::gesture_bridged_is, name_of(then, find<Segment>(then, rail_)->lan));
  }

 private:
  SegmentId rail_;
  QPointF from_;
  SegmentKind kind_ = SegmentKind::isolated;
  LanId lan_;
};

// The left end of a rail: what leads out there, or the first bit of it inside the frame.
bool is_end(const Drawing& drawing, const Hit& pressed, QPointF at) {
  constexpr qreal kNear = 26;
  if (pressed.part == Part::translator || pressed.part == Part::lane) return true;
  if (pressed.part != Part::rail && pressed.part != Part::rail_end) return false;
  const snug::Box frame = box_of(drawing, {Kind::pc, 0});
  for (const AnyShape& shape : drawing.shapes)
    if (const auto* line = std::get_if<LineShape>(&shape);
        line && line->part == Part::rail && line->of == pressed.of)
      return at.x() < std::max(frame.x, line->from.x) + kNear;
  return false;
}

} // namespace

std::unique_ptr<Gesture> drag_rail(Session& s, const Hit& pressed, const Drawing& drawing, QPointF at) {
  const SegmentId rail{pressed.of.number};
  if (is_end(drawing, pressed, at)) return std::make_unique<EndPull>(s, rail, at);
  return std::make_unique<RailDrag>(s, rail);
}

} // namespace snug
