// New machines and segments on their way to the picture.

#include "core/gesture/names.h"
#include "core/roles/catalogue.h"
#include "core/text/gesture_text.h"
#include "core/text/hand_text.h"
#include "core/text/window_text.h"
#include "ui/canvas/gesture.h"
#include "ui/canvas/spot_finder.h"
#include "ui/session/words.h"

#include <algorithm>

namespace snug {

namespace {

class RolePlace : public Gesture {
 public:
  RolePlace(Session& session, const Role& role)
      : Gesture(session, as_qt(role.title)), role_(role), finder_(session.lab(), {}) {}
  int count() const override { return count_; }

 protected:
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    segment_ = rail_at(before, at);
    if (!ground(before, at) && !segment_) return {};
    spot_ = segment_ ? Spot{} : finder_.at(before, at);
    if (segment_) return {segment_, 2};
    return {spot_.carrier ? AnyId(spot_.carrier) : AnyId{Kind::pc, 0}, key_of(spot_)};
  }
  Result<Edit> edit_for(const Aim&) override {
    auto added = add_machines(session().lab(), role_, count_, spot_, session().exercise(), segment_);
    if (!added) return fail(added.error());
    made_.assign(added->ids.begin(), added->ids.end());
    return std::move(added->edit);
  }
  void done(const Aim&) override { session().select(made_); }
  QString gain() const override {
    const Lab& then = session().shown().lab();
    for (const Card& c : then.cards)
      if (!made_.empty() && AnyId(c.machine) == made_.front()) {
        const bool held = !c.addresses.empty() && c.addresses.front().address;
        return held ? snug::words(text::hand_gets_card, name_of(then, c.segment),
                                  to_text(*c.addresses.front().address))
                    : snug::words(text::hand_gets_bare_card, name_of(then, c.segment));
      }
    return {};
  }
  void take_count(int count) override { count_ = counted(count, role_.title); }
  const Template* nowhere() const override { return &text::gesture_machine_place; }
  bool tells_nowhere() const override { return true; }

 private:
  Role role_;
  SpotFinder finder_;
  Spot spot_;
  SegmentId segment_;
  int count_ = 1;
  std::vector<AnyId> made_;
};

class SegmentPlace : public Gesture {
 public:
  SegmentPlace(Session& session, SegmentKind kind, QString title)
      : Gesture(session, std::move(title)), kind_(kind) {}

 protected:
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    return {ground(before, at) ? AnyId{Kind::pc, 0} : AnyId{}, 0};
  }
  Result<Edit> edit_for(const Aim&) override {
    Added added = add_segment(session().lab(), kind_);
    made_ = added.id;
    return std::move(added.edit);
  }
  void done(const Aim&) override { session().select({made_}); }
  const Template* nowhere() const override { return &text::gesture_segment_place; }
  bool tells_nowhere() const override { return true; }

 private:
  SegmentKind kind_;
  AnyId made_;
};

} // namespace

std::unique_ptr<Gesture> place_role(Session& s, const Role& role) {
  return std::make_unique<RolePlace>(s, role);
}
std::unique_ptr<Gesture> place_segment(Session& s, SegmentKind kind) {
  const Template& title = kind == SegmentKind::bridged ? text::part_bridged
                          : kind == SegmentKind::nat   ? text::part_nat
                                                       : text::part_isolated;
  return std::make_unique<SegmentPlace>(s, kind, words(title));
}

} // namespace snug
