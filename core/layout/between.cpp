#include "core/layout/between.h"

#include <cstddef>
#include <map>
#include <tuple>

namespace snug {

namespace {

using Key = std::tuple<AnyId, Part, std::size_t>;

Key key_of(const AnyShape& shape) {
  return std::visit([&](const Shape& s) { return Key(s.of, s.part, shape.index()); }, shape);
}

std::map<Key, std::vector<std::size_t>> places(const Drawing& d) {
  std::map<Key, std::vector<std::size_t>> out;
  for (std::size_t i = 0; i < d.shapes.size(); ++i) out[key_of(d.shapes[i])].push_back(i);
  return out;
}

class Mover {
 public:
  explicit Mover(int permille) : permille_(permille) {}

  void move(AnyShape& to, const AnyShape& from) const {
    std::visit([&](auto& shape) { set(shape, std::get<std::remove_reference_t<decltype(shape)>>(from)); },
               to);
  }

 private:
  void set(int& to, int from) const { to = from + (to - from) * permille_ / kArrived; }
  void set(Point& to, const Point& from) const {
    set(to.x, from.x);
    set(to.y, from.y);
  }
  void set(Box& to, const Box& from) const {
    set(to.x, from.x);
    set(to.y, from.y);
    set(to.w, from.w);
    set(to.h, from.h);
  }
  void set(BoxShape& to, const BoxShape& from) const { set(to.box, from.box); }
  void set(LineShape& to, const LineShape& from) const {
    set(to.from, from.from);
    set(to.to, from.to);
  }
  void set(CircleShape& to, const CircleShape& from) const { set(to.centre, from.centre); }
  void set(PolygonShape& to, const PolygonShape& from) const {
    for (std::size_t i = 0; i < to.points.size() && to.points.size() == from.points.size(); ++i)
      set(to.points[i], from.points[i]);
  }
  // Words keep their width: they only go with their place.
  void set(TextShape& to, const TextShape& from) const {
    set(to.box.x, from.box.x);
    set(to.box.y, from.box.y);
    set(to.baseline, from.baseline);
  }

  int permille_;
};

} // namespace

Drawing between(const Drawing& from, const Drawing& to, int permille) {
  Drawing out = to;
  if (permille >= kArrived) return out;
  const Mover mover(permille < 0 ? 0 : permille);
  const auto before = places(from);
  for (const auto& [key, now] : places(to)) {
    const auto then = before.find(key);
    if (then == before.end() || then->second.size() != now.size()) continue;
    for (std::size_t i = 0; i < now.size(); ++i) mover.move(out.shapes[now[i]], from.shapes[then->second[i]]);
  }
  return out;
}

} // namespace snug
