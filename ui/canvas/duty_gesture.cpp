// The mark of a duty under the hand: to another card on the segment, or off the rails.

#include "core/text/hand_text.h"
#include "ui/canvas/duty_slots.h"
#include "ui/canvas/gesture.h"
#include "ui/session/words.h"

#include <QStringList>

namespace snug {

namespace {

QString word(Duty duty) {
  return words(duty == Duty::gateway ? text::hand_slot_gateway : text::hand_slot_dhcp);
}

class DutyDrag : public Gesture {
 public:
  DutyDrag(Session& session, Duty duty, SegmentId segment, QPointF from)
      : Gesture(session,
                snug::words(text::hand_duty_of, word(duty).toStdString(), name_of(session.lab(), segment))),
        duty_(duty), segment_(segment), from_(from) {}
  std::optional<QPointF> line_from() const override { return from_; }

 protected:
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    constexpr qreal kReach = 10, kSlip = 40;
    const Hit h = hit(before, at, kReach);
    if (h.of.kind == Kind::card || h.of.kind == Kind::machine) return {h.of, 0};
    const bool away = !rail_at(before, at) && (at - from_).manhattanLength() > kSlip;
    return {away ? AnyId(segment_) : AnyId{}, 1};
  }
  Result<Edit> edit_for(const Aim& a) override {
    const Lab& lab = session().lab();
    if (a.target.kind == Kind::card) return give_duty(lab, duty_, segment_, CardId{a.target.number});
    if (a.target.kind == Kind::machine) return give_duty(lab, duty_, segment_, MachineId{a.target.number});
    return take_duty(lab, duty_, segment_);
  }
  void done(const Aim& a) override { session().select({a.target}); }
  QString gain() const override { return duty_words(session(), duty_, segment_); }

 private:
  Duty duty_;
  SegmentId segment_;
  QPointF from_;
};

} // namespace

QString duty_words(const Session& session, Duty duty, SegmentId segment) {
  QStringList lines;
  for (const Message& m : duty_says(session.lab(), session.shown().lab(), duty, segment))
    lines << snug::words(m);
  return lines.join(QLatin1Char('\n'));
}

std::unique_ptr<Gesture> drag_duty(Session& s, Duty duty, SegmentId segment, QPointF from) {
  return std::make_unique<DutyDrag>(s, duty, segment, from);
}

} // namespace snug
