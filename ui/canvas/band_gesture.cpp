// A band by its name, up and down among the others.

#include "core/gesture/bands.h"
#include "core/gesture/names.h"
#include "core/text/hand_text.h"
#include "ui/canvas/gesture.h"
#include "ui/session/words.h"

namespace snug {

namespace {

class BandDrag : public Gesture {
 public:
  BandDrag(Session& session, Band band, QString title) : Gesture(session, std::move(title)), band_(band) {}

 protected:
  // Before the first band whose name is below the pointer.
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    before_.reset();
    for (const AnyShape& shape : before.shapes) {
      const auto* name = std::get_if<TextShape>(&shape);
      if (!name || name->part != Part::band || name->baseline < at.y()) continue;
      const Machine* m = find<Machine>(session().lab(), MachineId{name->of.number});
      if (m && (!before_ || m->band < *before_)) before_ = m->band;
    }
    const std::uint64_t key = before_ ? static_cast<std::uint64_t>(*before_) + 1 : 0;
    return {AnyId(machines_of(session().lab(), band_).front()), key};
  }
  Result<Edit> edit_for(const Aim&) override { return move_band(session().lab(), band_, before_); }

 private:
  Band band_;
  std::optional<std::int32_t> before_;
};

} // namespace

std::unique_ptr<Gesture> drag_band(Session& s, MachineId first) {
  const Machine& m = *find<Machine>(s.lab(), first);
  const Band band{m.carrier, m.band};
  return std::make_unique<BandDrag>(s, band, as_qt(names_of(s.lab(), machines_of(s.lab(), band))));
}

} // namespace snug
