// What is to be painted again when one drawing takes the place of another.

#include "ui/canvas/shapes.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace snug {

namespace {

constexpr qreal kCapReach = 4; // of the end of a line

template <typename T>
auto tie(const T& s);
template <>
auto tie(const BoxShape& s) {
  return std::tie(s.box, s.radius, s.fill, s.stroke, s.stroke_width, s.dash);
}
template <>
auto tie(const LineShape& s) {
  return std::tie(s.from, s.to, s.ink, s.width, s.dash);
}
template <>
auto tie(const CircleShape& s) {
  return std::tie(s.centre, s.radius, s.fill, s.stroke, s.stroke_width);
}
template <>
auto tie(const PolygonShape& s) {
  return std::tie(s.points, s.fill, s.stroke, s.stroke_width);
}
template <>
auto tie(const TextShape& s) {
  return std::tie(s.box, s.baseline, s.size, s.weight, s.anchor, s.ink, s.length, s.text);
}

bool same(const AnyShape& a, const AnyShape& b) {
  if (a.index() != b.index()) return false;
  return std::visit([&b](const auto& x) { return tie(x) == tie(std::get<std::decay_t<decltype(x)>>(b)); }, a);
}

std::uint64_t digest(std::size_t kind, const QRectF& r) {
  std::uint64_t h = kind * 0x9e3779b97f4a7c15ULL;
  for (const qreal v : {r.x(), r.y(), r.width(), r.height()})
    h = (h ^ static_cast<std::uint64_t>(static_cast<std::int64_t>(v * 4))) * 0x100000001b3ULL;
  return h;
}

using Some = std::vector<const AnyShape*>;

// Those shapes of `of` that `other` has not.
Some only_in(std::span<const AnyShape> of, std::span<const AnyShape> other, const QRectF& within) {
  std::vector<std::pair<std::uint64_t, const AnyShape*>> known;
  known.reserve(other.size());
  for (const AnyShape& s : other)
    if (const QRectF r = bounds(s); r.intersects(within)) known.emplace_back(digest(s.index(), r), &s);
  std::sort(known.begin(), known.end());
  Some out;
  for (const AnyShape& s : of) {
    const QRectF r = bounds(s);
    if (!r.intersects(within)) continue;
    const std::uint64_t d = digest(s.index(), r);
    auto at = std::lower_bound(known.begin(), known.end(), d,
                               [](const auto& k, std::uint64_t v) { return k.first < v; });
    bool found = false;
    for (; at != known.end() && at->first == d && !found; ++at) found = same(*at->second, s);
    if (!found) out.push_back(&s);
  }
  return out;
}

// Between two edges that differ, as far as either box reaches, with the rounded corners.
void add_edges(const BoxShape& a, const BoxShape& b, std::vector<QRectF>& out) {
  const QRectF x = bounds(a), y = bounds(b), all = x.united(y);
  const qreal pad = a.radius + 2;
  const auto upright = [&](qreal from, qreal to) {
    if (from != to)
      out.emplace_back(QPointF(std::min(from, to) - pad, all.top()),
                       QPointF(std::max(from, to) + pad, all.bottom()));
  };
  const auto level = [&](qreal from, qreal to) {
    if (from != to)
      out.emplace_back(QPointF(all.left(), std::min(from, to) - pad),
                       QPointF(all.right(), std::max(from, to) + pad));
  };
  upright(x.left(), y.left());
  upright(x.right(), y.right());
  level(x.top(), y.top());
  level(x.bottom(), y.bottom());
}

// A shape that only became larger or smaller is painted again where it did; false: it did more than that.
bool add_growth(const AnyShape& a, const AnyShape& b, std::vector<QRectF>& out) {
  const auto* box = std::get_if<BoxShape>(&a);
  const auto* other_box = std::get_if<BoxShape>(&b);
  if (box && other_box && bounds(a).intersects(bounds(b))) {
    BoxShape moved = *other_box;
    moved.box = box->box;
    if (box->dash != Dash::solid || !(tie(moved) == tie(*box))) return false;
    add_edges(*box, *other_box, out);
    return true;
  }
  const auto* line = std::get_if<LineShape>(&a);
  const auto* other_line = std::get_if<LineShape>(&b);
  if (!line || !other_line || !(line->from == other_line->from)) return false;
  LineShape cut = *other_line;
  cut.to = line->to;
  const bool level = line->from.y == line->to.y && line->from.y == other_line->to.y &&
                     line->from.x < line->to.x && line->from.x < other_line->to.x;
  if (!level || !(tie(cut) == tie(*line))) return false;
  cut.from.x = std::min(line->to.x, other_line->to.x);
  cut.to.x = std::max(line->to.x, other_line->to.x);
  out.push_back(bounds(cut).adjusted(-kCapReach, 0, 0, 0));
  return true;
}

using Key = std::tuple<AnyId, Part, std::size_t>;
std::map<Key, Some> by_element(const Some& shapes) {
  std::map<Key, Some> out;
  for (const AnyShape* s : shapes) out[{shape_of(*s).of, shape_of(*s).part, s->index()}].push_back(s);
  return out;
}

} // namespace

std::vector<QRectF> differences(const Drawing& before, const Drawing& after, const QRectF& within) {
  const std::span<const AnyShape> a(before.shapes), b(after.shapes);
  std::size_t first = 0;
  while (first < a.size() && first < b.size() && same(a[first], b[first])) ++first;
  std::size_t end = 0;
  while (end < a.size() - first && end < b.size() - first &&
         same(a[a.size() - 1 - end], b[b.size() - 1 - end]))
    ++end;
  const auto changed_a = a.subspan(first, a.size() - first - end);
  const auto changed_b = b.subspan(first, b.size() - first - end);
  std::map<Key, Some> gone = by_element(only_in(changed_a, changed_b, within));
  std::vector<QRectF> out;
  for (auto& [key, come] : by_element(only_in(changed_b, changed_a, within))) {
    Some& left = gone[key];
    const bool pairs = left.size() == come.size();
    for (std::size_t i = 0; i < come.size(); ++i) {
      if (pairs && add_growth(*left[i], *come[i], out)) {
        left[i] = nullptr;
        continue;
      }
      out.push_back(bounds(*come[i]));
    }
  }
  for (const auto& [key, left] : gone)
    for (const AnyShape* s : left)
      if (s) out.push_back(bounds(*s));
  return out;
}

} // namespace snug
