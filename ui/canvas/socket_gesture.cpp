// The PC's socket under the hand.

#include "core/text/gesture_text.h"
#include "ui/canvas/gesture.h"
#include "ui/session/words.h"

namespace snug {

namespace {

class SocketPull : public Gesture {
 public:
  SocketPull(Session& session, SegmentId from, QPointF at)
      : Gesture(session, snug::words(text::gesture_pull_socket, session.lab().pc.name)), from_(from),
        at_(at) {}
  std::optional<QPointF> line_from() const override { return at_; }

 protected:
  // Away from every rail means to take it off, not a slip beside its own.
  Aim aim(const Drawing& before, const Drawing&, QPointF at) override {
    const SegmentId rail = rail_at(before, at);
    if (rail) return {rail == from_ ? AnyId{} : AnyId(rail), 0};
    constexpr qreal kSlip = 40;
    const bool away = from_ && (at - at_).manhattanLength() > kSlip;
    return {away ? AnyId{Kind::pc, 0} : AnyId{}, 1};
  }
  Result<Edit> edit_for(const Aim& a) override {
    const bool off = a.target.kind == Kind::pc;
    return move_socket(session().lab(), from_, off ? SegmentId{} : SegmentId{a.target.number});
  }
  void done(const Aim& a) override {
    session().select({a.target.kind == Kind::segment ? a.target : AnyId(from_)});
  }

 private:
  SegmentId from_;
  QPointF at_;
};

} // namespace

std::unique_ptr<Gesture> pull_socket(Session& s, SegmentId from, QPointF at) {
  return std::make_unique<SocketPull>(s, from, at);
}

} // namespace snug
