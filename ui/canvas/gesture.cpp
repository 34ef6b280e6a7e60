#include "ui/canvas/gesture.h"

#include "core/gesture/consequence.h"
#include "core/gesture/names.h"
#include "core/gesture/stores.h"
#include "core/text/gesture_text.h"
#include "ui/canvas/spot_finder.h"
#include "ui/session/words.h"

#include <QStringList>

#include <algorithm>
#include <cmath>

namespace snug {

void Gesture::move(const Drawing& before, const Drawing& now, QPointF at) {
  const Aim next = aim(before, now, at);
  if (aim_ && aim_->target == next.target && aim_->key == next.key) return;
  show(next);
}

void Gesture::show(const Aim& next) {
  aim_ = next;
  edit_.reset();
  refused_ = false;
  target_ = next.target;
  words_.clear();
  const Analysis& now = session_.analysis();
  if (!next.target) {
    refused_ = nowhere() != nullptr;
    if (refused_) words_ = snug::words(*nowhere());
    return session_.end_preview();
  }
  auto edit = edit_for(next);
  if (!edit) {
    refused_ = true;
    words_ = snug::words(edit.error().message);
    return session_.end_preview();
  }
  edit_ = std::move(*edit);
  if (edit_->empty()) return session_.end_preview();
  session_.preview(*edit_, in_hand());
  QStringList lines;
  if (const QString first = gain(); !first.isEmpty()) lines << first;
  for (const Message& m : consequences(now, session_.shown(), session_.exercise())) lines << snug::words(m);
  if (count() == 1) lines << snug::words(text::gesture_count_help);
  words_ = lines.join(QLatin1Char('\n'));
}

namespace {
constexpr std::uint64_t kDutyKey = std::uint64_t{1} << 63U; // and the place among those offered
}

std::optional<Gesture::Aim> Gesture::aim_at_duty(QPointF at) const {
  const DutySlot* slot = slot_at(duties_, at);
  if (!slot) return std::nullopt;
  return Aim{AnyId(slot->segment), kDutyKey | static_cast<std::uint64_t>(slot - duties_.data())};
}

const DutySlot* Gesture::duty_of(const Aim& aim) const {
  return (aim.key & kDutyKey) != 0 ? &duties_[aim.key & ~kDutyKey] : nullptr;
}

QString Gesture::words() const {
  return help_.isEmpty() || words_.isEmpty() ? words_ + help_ : words_ + QLatin1Char('\n') + help_;
}

int Gesture::counted(int count, const std::string& name) {
  const int n = std::clamp(count, 1, kMostAtOnce);
  title_ = n == 1 ? as_qt(name) : snug::words(text::gesture_count, std::to_string(n), name);
  return n;
}

void Gesture::set_count(int count) {
  take_count(count);
  aim_.reset();
}

bool Gesture::drop() {
  if (!aim_ || !aim_->target) {
    session_.end_preview();
    if (tells_nowhere()) session_.tell(Notice::Kind::caution, whole_words(say(*nowhere())));
    return false;
  }
  if (!edit_) return session_.perform(edit_for(*aim_));
  if (!edit_->empty()) {
    session_.seal();
    if (!session_.perform(std::move(*edit_))) return false;
  }
  done(*aim_);
  return true;
}

SegmentId rail_at(const Drawing& drawing, QPointF at) {
  constexpr qreal kReach = 16;
  SegmentId found;
  qreal nearest = kReach;
  for (const AnyShape& s : drawing.shapes) {
    const auto* line = std::get_if<LineShape>(&s);
    if (!line || line->of.kind != Kind::segment || (line->part != Part::rail && line->part != Part::lane))
      continue;
    const QRectF r =
        QRectF(QPointF(line->from.x, line->from.y), QPointF(line->to.x, line->to.y)).normalized();
    const qreal dx = std::max({r.left() - at.x(), 0.0, at.x() - r.right()});
    const qreal away = std::hypot(dx, std::max({r.top() - at.y(), 0.0, at.y() - r.bottom()}));
    if (away >= nearest) continue;
    nearest = away;
    found = SegmentId{line->of.number};
  }
  return found;
}

SegmentId segment_of_pin(const Drawing& drawing, CardId card, QPointF pin) {
  for (const AnyShape& s : drawing.shapes) {
    const auto* joint = std::get_if<CircleShape>(&s);
    if (joint && joint->of == AnyId(card) && joint->part == Part::joint &&
        std::abs(joint->centre.x - pin.x()) < 8)
      return rail_at(drawing, QPointF(joint->centre.x, joint->centre.y));
  }
  return {};
}

namespace {

// "gets 172.22.10.13".
QString addresses_got(const Lab& lab, AnyId card) {
  const Card* c = card.kind == Kind::card ? find<Card>(lab, CardId{card.number}) : nullptr;
  std::vector<std::string> out;
  if (c)
    for (const CardAddress& row : c->addresses)
      if (row.address) out.push_back(to_text(*row.address));
  return out.empty() ? QString() : words(text::gesture_gets, std::move(out));
}

class MachineDrag : public Gesture {
 public:
  MachineDrag(Session& session, std::vector<MachineId> ids)
      : Gesture(session, as_qt(names_of(session.lab(), ids))), ids_(std::move(ids)),
        finder_(session.lab(), ids_) {}
  std::vector<MachineId> machines() const override { return ids_; }
  std::vector<AnyId> in_hand() const override { return {ids_.begin(), ids_.end()}; }

 protected:
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    if (const auto duty = aim_at_duty(at)) return *duty;
    if (!ground(before, at)) return {};
    spot_ = finder_.at(before, at);
    if (const MachineId plain = finder_.plain_under(before, at)) spot_ = {plain, 0, {}};
    return {spot_.carrier ? AnyId(spot_.carrier) : AnyId{Kind::pc, 0}, key_of(spot_)};
  }
  Result<Edit> edit_for(const Aim& a) override {
    if (const DutySlot* s = duty_of(a)) return give_duty(session().lab(), s->duty, s->segment, ids_.front());
    return move_machines(session().analysis().index(), ids_, spot_);
  }
  void done(const Aim&) override { session().select({ids_.begin(), ids_.end()}); }
  const Template* nowhere() const override { return &text::gesture_machine_inside; }
  QString gain() const override {
    if (const DutySlot* s = duty()) return duty_words(session(), s->duty, s->segment);
    QStringList lines;
    for (const Message& m : disks_say(session().lab(), session().shown().lab(), ids_))
      lines << snug::words(m);
    return lines.join(QLatin1Char('\n'));
  }

 private:
  std::vector<MachineId> ids_;
  SpotFinder finder_;
  Spot spot_;
};

class PinDrag : public Gesture {
 public:
  PinDrag(Session& session, CardId card, const Drawing& drawing, QPointF pin)
      : Gesture(session, as_qt(name_of(session.lab(), card))), card_(card), pin_(pin),
        from_(segment_of_pin(drawing, card, pin)) {}
  std::optional<QPointF> line_from() const override { return pin_; }
  std::vector<AnyId> in_hand() const override { return {AnyId(card_)}; }

 protected:
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    if (const auto duty = aim_at_duty(at)) return *duty;
    const SegmentId rail = rail_at(before, at);
    return {rail && rail != from_ ? AnyId(rail) : AnyId{}, 0};
  }
  Result<Edit> edit_for(const Aim& a) override {
    if (const DutySlot* s = duty_of(a)) return give_duty(session().lab(), s->duty, s->segment, card_);
    const SegmentId to{a.target.number};
    const Card& card = *find<Card>(session().lab(), card_);
    const bool carried = from_ && std::any_of(card.carries.begin(), card.carries.end(),
                                              [this](const SegmentTag& t) { return t.segment == from_; });
    return carried && (card.segment != from_ || only_carries(card))
               ? carry_instead(session().lab(), card_, from_, to)
               : plug_card(session().lab(), card_, to);
  }
  void done(const Aim&) override { session().select({AnyId(card_)}); }
  QString gain() const override {
    if (const DutySlot* s = duty()) return duty_words(session(), s->duty, s->segment);
    return addresses_got(session().shown().lab(), card_);
  }

 private:
  CardId card_;
  QPointF pin_;
  SegmentId from_;
};

class CardPull : public Gesture {
 public:
  CardPull(Session& session, MachineId machine, QPointF from)
      : Gesture(session, snug::words(text::gesture_pull_card, name_of(session.lab(), machine))),
        machine_(machine), from_(from) {}
  std::optional<QPointF> line_from() const override { return from_; }

 protected:
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override { return {rail_at(before, at), 0}; }
  Result<Edit> edit_for(const Aim& a) override {
    auto added = add_card(session().lab(), machine_, SegmentId{a.target.number});
    if (!added) return fail(added.error());
    made_ = added->id;
    return std::move(added->edit);
  }
  void done(const Aim&) override { session().select({made_}); }
  QString gain() const override { return addresses_got(session().shown().lab(), made_); }

 private:
  MachineId machine_;
  QPointF from_;
  AnyId made_;
};

class BandSelect : public Gesture {
 public:
  BandSelect(Session& session, QPointF from, bool keep) : Gesture(session, {}), from_(from) {
    if (keep) kept_ = session.selection();
  }
  std::optional<QPointF> band_from() const override { return from_; }
  std::vector<AnyId> in_hand() const override { return session().selection(); }

 protected:
  Aim aim(const Drawing&, const Drawing& now, QPointF at) override {
    const QRectF band = QRectF(from_, at).normalized();
    std::vector<AnyId> ids = kept_;
    for (const Group& g : now.groups)
      if (g.part == Part::machine && band.contains(as_rect(g.box)) &&
          std::find(ids.begin(), ids.end(), g.of) == ids.end())
        ids.push_back(g.of);
    session().select(std::move(ids));
    return {};
  }
  Result<Edit> edit_for(const Aim&) override { return Edit{}; }

 private:
  QPointF from_;
  std::vector<AnyId> kept_;
};

} // namespace

std::unique_ptr<Gesture> drag_machines(Session& s, std::vector<MachineId> ids) {
  return std::make_unique<MachineDrag>(s, std::move(ids));
}
std::unique_ptr<Gesture> drag_pin(Session& s, CardId card, const Drawing& drawing, QPointF pin) {
  return std::make_unique<PinDrag>(s, card, drawing, pin);
}
std::unique_ptr<Gesture> pull_card(Session& s, MachineId machine, QPointF from) {
  return std::make_unique<CardPull>(s, machine, from);
}
std::unique_ptr<Gesture> band_select(Session& s, QPointF from, bool keep) {
  return std::make_unique<BandSelect>(s, from, keep);
}

} // namespace snug
