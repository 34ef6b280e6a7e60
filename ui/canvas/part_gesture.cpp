#include "ui/canvas/part_gesture.h"

#include "core/gesture/names.h"
#include "core/gesture/own_part.h"
#include "core/text/gesture_text.h"
#include "core/text/window_text.h"
#include "ui/canvas/spot_finder.h"
#include "ui/session/words.h"

#include <QStringList>

#include <algorithm>

namespace snug {

namespace {

class PartPlace : public Gesture {
 public:
  enum class Often : std::uint8_t { once, counted };
  PartPlace(Session& session, Lab part, Often often)
      : Gesture(session, as_qt(part.facts.title)), part_(std::move(part)), finder_(session.lab(), {}),
        often_(often) {}
  int count() const override { return often_ == Often::counted ? count_ : 0; }

 protected:
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    segment_ = rail_at(before, at);
    if (!ground(before, at) && !segment_) return {};
    spot_ = segment_ ? Spot{} : finder_.at(before, at);
    if (segment_) return {segment_, 1};
    const std::uint64_t key = (std::uint64_t{spot_.before.number} << 8U) + 2U +
                              (static_cast<std::uint64_t>(spot_.band & 0xff) << 40U);
    return {spot_.carrier ? AnyId(spot_.carrier) : AnyId{Kind::pc, 0}, key};
  }
  Result<Edit> edit_for(const Aim&) override {
    auto placed = place_part(session().lab(), part_, count_, spot_, session().exercise(), segment_);
    if (!placed) return fail(placed.error());
    made_ = std::move(placed->made);
    changed_ = std::move(placed->changed);
    return std::move(placed->edit);
  }
  void done(const Aim&) override {
    session().select(made_);
    QStringList lines;
    for (const Message& m : changed_) lines << whole_words(m);
    if (!lines.isEmpty()) session().tell(Notice::Kind::told, lines.join(QLatin1Char('\n')));
  }
  void take_count(int count) override { count_ = counted(count, part_.facts.title); }
  const Template* nowhere() const override { return &text::gesture_machine_place; }
  bool tells_nowhere() const override { return true; }

 private:
  Lab part_;
  SpotFinder finder_;
  Spot spot_;
  SegmentId segment_;
  Often often_;
  int count_ = 1;
  std::vector<AnyId> made_;
  std::vector<Message> changed_;
};

} // namespace

std::unique_ptr<Gesture> place_own_part(Session& s, const Lab& part) {
  return std::make_unique<PartPlace>(s, part, PartPlace::Often::counted);
}

std::unique_ptr<Gesture> place_copies(Session& s, Lab copied) {
  std::vector<AnyId> all;
  for (const Machine& m : copied.machines) all.emplace_back(m.id);
  copied.facts.title = names_of(copied, outermost(copied, all));
  return std::make_unique<PartPlace>(s, std::move(copied), PartPlace::Often::once);
}

} // namespace snug
