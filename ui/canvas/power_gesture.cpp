// A power mark under the hand: what switching brings is shown while it is pressed.

#include "core/gesture/power.h"
#include "ui/canvas/gesture.h"
#include "ui/session/words.h"

#include <QLineF>
#include <QStringList>

namespace snug {

namespace {

class PowerPress : public Gesture {
 public:
  PowerPress(Session& session, MachineId machine, qreal reach)
      : Gesture(session, as_qt(name_of(session.lab(), machine))), machine_(machine), reach_(reach) {}
  bool goes_there() const override { return false; }

 protected:
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    return {power_under(before, at, reach_) == machine_ ? AnyId(machine_) : AnyId{}, 0};
  }
  Result<Edit> edit_for(const Aim&) override {
    auto switched = switch_over(session().lab(), session().exercise(), machine_);
    if (!switched) return fail(switched.error());
    switched_ = std::move(*switched);
    return switched_.edit;
  }
  void done(const Aim&) override { tell_along(session(), machine_, switched_); }
  QString gain() const override {
    QStringList lines;
    for (const Message& m : says(session().lab(), session().exercise(), machine_, switched_))
      lines << snug::words(m);
    return lines.join(QLatin1Char('\n'));
  }

 private:
  MachineId machine_;
  qreal reach_;
  Switched switched_;
};

} // namespace

MachineId power_under(const Drawing& drawing, QPointF at, qreal reach) {
  const AnyId machine = ground(drawing, at);
  if (machine.kind != Kind::machine) return {};
  for (const Group& g : drawing.groups) {
    if (g.of != machine) continue;
    for (std::uint32_t i = g.first; i < g.end; ++i) {
      const auto* mark = std::get_if<CircleShape>(&drawing.shapes[i]);
      if (mark && mark->of == machine && mark->part == Part::power)
        return QLineF(at, QPointF(mark->centre.x, mark->centre.y)).length() <= reach
                   ? MachineId{machine.number}
                   : MachineId{};
    }
    return {};
  }
  return {};
}

void tell_along(Session& session, MachineId machine, const Switched& switched) {
  const Message along = said(session.lab(), session.exercise(), machine, switched);
  if (!along.empty()) session.tell(Notice::Kind::told, whole_words(along));
}

std::unique_ptr<Gesture> press_power(Session& s, MachineId machine, qreal reach) {
  return std::make_unique<PowerPress>(s, machine, reach);
}

} // namespace snug
