// What a hypervisor's card carries, pulled from its pin: to a rail it carries that one as well, off all rails
// a hollow pin goes.

#include "core/gesture/carry.h"
#include "core/text/hand_text.h"
#include "ui/canvas/gesture.h"
#include "ui/session/words.h"

#include <QStringList>

namespace snug {

namespace {

class CarryPull : public Gesture {
 public:
  CarryPull(Session& session, CardId card, SegmentId from, QPointF pin)
      : Gesture(session, snug::words(text::hand_carriage, name_of(session.lab(), card))), card_(card),
        from_(from), pin_(pin) {}
  std::optional<QPointF> line_from() const override { return pin_; }

 protected:
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    constexpr qreal kSlip = 40; // beside a rail, not away from all
    if (const SegmentId rail = rail_at(before, at)) return {rail == from_ ? AnyId{} : AnyId(rail), 0};
    const bool away = from_ && (at - pin_).manhattanLength() > kSlip;
    return {away ? AnyId(card_) : AnyId{}, 1};
  }
  Result<Edit> edit_for(const Aim& a) override {
    segment_ = a.target.kind == Kind::segment ? SegmentId{a.target.number} : from_;
    return a.target.kind == Kind::segment ? carry(session().lab(), card_, segment_)
                                          : carry_no_more(session().lab(), card_, segment_);
  }
  void done(const Aim&) override { session().select({AnyId(card_)}); }
  QString gain() const override {
    QStringList lines;
    for (const Message& m : carriage_says(session().analysis(), session().shown(), card_, segment_))
      lines << snug::words(m);
    return lines.join(QLatin1Char('\n'));
  }

 private:
  CardId card_;
  SegmentId from_, segment_; // from_: none where the pin is not hollow
  QPointF pin_;
};

} // namespace

std::unique_ptr<Gesture> pull_carriage(Session& s, CardId card, SegmentId from, QPointF pin) {
  return std::make_unique<CarryPull>(s, card, from, pin);
}

} // namespace snug
