#pragma once
// What a hand does on the canvas between press and release. A gesture asks core for the edit that the drop
// would make, shows it, and performs it when dropped.

#include "core/gesture/plug.h"
#include "core/gesture/power.h"
#include "ui/canvas/duty_slots.h"
#include "ui/canvas/shapes.h"
#include "ui/session/session.h"

#include <QString>

#include <memory>

namespace snug {

class Gesture {
 public:
  virtual ~Gesture() = default;

  // The pointer is at a point of the drawing. `before` is the drawing as it was when the gesture began, `now`
  // as it is shown.
  void move(const Drawing& before, const Drawing& now, QPointF at);
  // Performs; false when refused, which has been told.
  bool drop();
  // Words beside the pointer: the name of what is moved, what the drop would bring or why it is refused.
  const QString& title() const { return title_; }
  QString words() const;
  // Said below everything else: the keys that aim it.
  void set_help(QString help) { help_ = std::move(help); }
  bool is_refused() const { return refused_; }
  // What the drop is aimed at, to be outlined.
  AnyId target() const { return target_; }
  // How many are placed at once, where that can be chosen; 0: it cannot. The next move shows it.
  virtual int count() const { return 0; }
  void set_count(int count);
  // A line is drawn from here to the pointer; null: none.
  virtual std::optional<QPointF> line_from() const { return std::nullopt; }
  // A band is drawn from here to the pointer.
  virtual std::optional<QPointF> band_from() const { return std::nullopt; }
  // Duties on segments that what is in the hand can be given, as places of the drawing; the one it is over.
  const std::vector<DutySlot>& duties() const { return duties_; }
  void offer_duties(std::vector<DutySlot> duties) { duties_ = std::move(duties); }
  // Not while it is over a machine: there they would cover what is looked at.
  bool shows_duties() const { return target_.kind != Kind::machine; }
  const DutySlot* duty() const { return aim_ ? duty_of(*aim_) : nullptr; }
  // What is outlined as chosen meanwhile: what is moved.
  virtual std::vector<AnyId> in_hand() const { return {}; }
  // What can be taken into another window; empty: it stays in this one.
  virtual std::vector<MachineId> machines() const { return {}; }
  // The view goes to what is selected after the drop.
  virtual bool goes_there() const { return true; }

 protected:
  Gesture(Session& session, QString title) : session_(session), title_(std::move(title)) {}
  Session& session() const { return session_; }
  struct Aim {
    AnyId target;
    std::uint64_t key = 0; // aims with the same key and target give the same edit
  };
  // An aim at one of the duties offered; what it is at; who it is given to makes the edit.
  std::optional<Aim> aim_at_duty(QPointF at) const;
  const DutySlot* duty_of(const Aim&) const;
  virtual Aim aim(const Drawing& before, const Drawing& now, QPointF at) = 0;
  virtual Result<Edit> edit_for(const Aim&) = 0;
  virtual void done(const Aim&) {}
  virtual void take_count(int) {}
  // How many of `name` are placed, as far as that is allowed; the title says so.
  int counted(int count, const std::string& name);
  // Why nothing can be put down where there is no target; null: the drop there just ends it.
  virtual const Template* nowhere() const { return nullptr; }
  virtual bool tells_nowhere() const { return false; } // also after the drop
  // Said first, before the consequences; the preview shows the lab after the drop.
  virtual QString gain() const { return {}; }

 private:
  void show(const Aim&);
  Session& session_;
  QString title_, words_, help_;
  bool refused_ = false;
  AnyId target_;
  std::optional<Aim> aim_;
  std::vector<DutySlot> duties_;
  std::optional<Edit> edit_;
};

// Machines, to a hypervisor, the PC or another place among their neighbours.
std::unique_ptr<Gesture> drag_machines(Session&, std::vector<MachineId>);
// A pin, to another rail. `pin` is where it stands.
std::unique_ptr<Gesture> drag_pin(Session&, CardId, const Drawing&, QPointF pin);
// A band of machines by its name, which is of its first machine.
std::unique_ptr<Gesture> drag_band(Session&, MachineId first);
// The mark of a duty, from one card to another.
std::unique_ptr<Gesture> drag_duty(Session&, Duty, SegmentId, QPointF from);
// What the duty shown brings, a line each.
QString duty_words(const Session&, Duty, SegmentId);
// What a hypervisor's card carries, from a pin: hollow for `from`, none: not hollow.
std::unique_ptr<Gesture> pull_carriage(Session&, CardId, SegmentId from, QPointF pin);
// A new card, from a machine to a rail.
std::unique_ptr<Gesture> pull_card(Session&, MachineId, QPointF from);
// The PC's socket: a new one (from none), or one that is on a segment, to another or away.
std::unique_ptr<Gesture> pull_socket(Session&, SegmentId from, QPointF at);
// A rail among the others; by its left end, through the frame to a LAN or anywhere outside, and back.
std::unique_ptr<Gesture> drag_rail(Session&, const Hit& pressed, const Drawing&, QPointF at);
// A machine's power mark, which reaches so far in the drawing's units.
std::unique_ptr<Gesture> press_power(Session&, MachineId, qreal reach);
MachineId power_under(const Drawing&, QPointF at, qreal reach);
// Says who was switched along, if anybody was.
void tell_along(Session&, MachineId, const Switched&);
// A new machine or segment.
std::unique_ptr<Gesture> place_role(Session&, const Role&);
std::unique_ptr<Gesture> place_segment(Session&, SegmentKind);
// A band around what is to be selected; with `keep` beside what is.
std::unique_ptr<Gesture> band_select(Session&, QPointF from, bool keep);

// The rail nearest to a point, within reach; none.
SegmentId rail_at(const Drawing&, QPointF at);
// The segment that a card's pin leads to.
SegmentId segment_of_pin(const Drawing&, CardId, QPointF pin);

} // namespace snug
