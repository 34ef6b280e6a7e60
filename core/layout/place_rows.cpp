#include "core/layout/metrics.h"
#include "core/layout/place.h"

#include <algorithm>

namespace snug::layout {

namespace {

// How far right wires and labels reach in a row, rail by rail. A wire to rail r passes the labels of all
// rails above r.
class Reach {
 public:
  explicit Reach(int left) : left_(left) {}

  // The first x that a wire to `rail` may have.
  int first(std::uint32_t rail) const {
    int x = std::max(next_wire_, left_);
    for (const Label& label : labels_)
      if (label.rail <= rail) x = std::max(x, label.end);
    return x;
  }
  void put(const Plug& plug, int x) {
    next_wire_ = x + kPinPitch;
    if (plug.rail == kNone || plug.lines_width == 0) return;
    const int end = x + kLabelGap + plug.lines_width + kLabelGap;
    const auto known = std::find_if(labels_.begin(), labels_.end(),
                                    [&plug](const Label& label) { return label.rail == plug.rail; });
    if (known == labels_.end())
      labels_.push_back({plug.rail, end});
    else
      known->end = end;
    right_ = std::max(right_, end);
  }
  int right() const { return std::max(right_, next_wire_); }

 private:
  struct Label {
    std::uint32_t rail;
    int end; // of the last one on the rail
  };
  std::vector<Label> labels_; // of the few rails that the row has used
  int left_;
  int next_wire_ = 0;
  int right_ = 0;
};

// Pins use the width of their card, but stand together as one bundle.
int pitch_of(const MachineText& m, int width) {
  const int gaps = static_cast<int>(m.plugs.size()) - 1;
  return gaps < 1 ? kPinPitch : std::clamp((width - 2 * kPinInset) / gaps, kPinPitch, kMostPitch);
}

// The x of each pin when the first may not stand left of `x`; `reach` is after them.
std::vector<int> string_pins(const MachineText& m, Reach& reach, int x, int pitch) {
  std::vector<int> pins;
  for (const Plug& plug : m.plugs) {
    const std::uint32_t rail = plug.rail == kNone ? 0 : plug.rail;
    x = std::max(x, plug.rail == kNone ? x : reach.first(rail));
    pins.push_back(x);
    reach.put(plug, x);
    x += pitch;
  }
  return pins;
}

class RowFiller {
 public:
  RowFiller(const Content& content, Places& places, int left)
      : content_(content), places_(places), left_(left), reach_(left), x_(left) {}
  void band_begins() { close(); }
  void add(std::uint32_t machine, int most) {
    if (!row_.machines.empty() && !try_add(machine, left_ + most)) {
      close();
      try_add(machine, kUnlimited);
    } else if (row_.machines.empty()) {
      try_add(machine, kUnlimited);
    }
  }
  void close() {
    if (row_.machines.empty()) return;
    row_.right = std::max(row_.right, reach_.right());
    places_.rows.push_back(std::move(row_));
    row_ = Row{};
    reach_ = Reach(left_);
    x_ = left_;
  }

 private:
  static constexpr int kUnlimited = 0x7fff'ffff;
  bool try_add(std::uint32_t machine, int most_right) {
    const MachineText& m = content_.machines[machine];
    MachinePlace& place = places_.machines[machine];
    Reach reach = reach_;
    const int pitch = pitch_of(m, place.box.w);
    std::vector<int> pins = string_pins(m, reach, x_ + kPinInset, pitch);
    int width = place.box.w;
    int x = x_;
    if (!pins.empty()) {
      const int span = pins.back() - pins.front();
      width = std::max(width, span + 2 * kPinInset);
      const int middle = (width - span) / 2; // of the first pin, in a card that stands at x
      int first = std::max(pins.front(), x_ + middle);
      x = std::max(x_, first - (width - span - kPinInset));
      reach = reach_;
      pins = string_pins(m, reach, first, pitch);
      width = std::max(width, pins.back() + kPinInset - x);
    }
    if (x + width > most_right) return false;
    take(machine, {x, 0, width, place.box.h}, pins);
    reach_ = std::move(reach);
    return true;
  }
  void take(std::uint32_t machine, Box box, const std::vector<int>& pins) {
    MachinePlace& place = places_.machines[machine];
    const int grown = box.w - place.box.w;
    place.box = box;
    place.bar.w += grown;
    if (place.room.w > 0) place.room.w += grown;
    for (const int pin : pins) place.plugs.push_back({pin, box.h});
    row_.machines.push_back(machine);
    row_.right = std::max(row_.right, box.right());
    row_.cards_bottom = std::max(row_.cards_bottom, box.h);
    x_ = box.right() + kCardGap;
  }
  const Content& content_;
  Places& places_;
  int left_;
  Reach reach_;
  int x_;
  Row row_;
};

} // namespace

void fill_rows(const Content& content, Places& places, int left) {
  RowFiller filler(content, places, left);
  const int most = row_width(content.top.size(), kPcRow, kPcFew);
  int band = content.top.empty() ? 0 : content.machines[content.top.front()].band;
  for (const std::uint32_t m : content.top) {
    if (content.machines[m].band != band) filler.band_begins();
    band = content.machines[m].band;
    filler.add(m, most);
  }
  filler.close();
  if (places.rows.empty()) places.rows.push_back(Row{0, 60, 0, left + 200, {}, {}});
}

int lines_above(const Content& content, const Row& row, std::uint32_t rail) {
  std::size_t lines = 1;
  for (const std::uint32_t m : row.machines)
    for (const Plug& plug : content.machines[m].plugs)
      if (plug.rail == rail) lines = std::max(lines, plug.lines.size());
  return static_cast<int>(lines);
}

} // namespace snug::layout
