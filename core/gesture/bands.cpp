#include "core/gesture/bands.h"

#include "core/gesture/move.h"
#include "core/gesture/names.h"
#include "core/text/hand_text.h"

#include <algorithm>

namespace snug {

std::vector<std::int32_t> bands_of(const Lab& lab, MachineId carrier) {
  std::vector<std::int32_t> out;
  for (const Machine& m : lab.machines)
    if (m.carrier == carrier) out.push_back(m.band);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

std::vector<MachineId> machines_of(const Lab& lab, Band band) {
  std::vector<MachineId> out = guests_in_order(lab, band.carrier);
  std::erase_if(out, [&](MachineId m) { return find<Machine>(lab, m)->band != band.number; });
  return out;
}

std::optional<Band> whole_band(const Lab& lab, std::span<const AnyId> ids) {
  const Machine* first = !ids.empty() && ids.front().kind == Kind::machine
                             ? find<Machine>(lab, MachineId{ids.front().number})
                             : nullptr;
  if (!first || bands_of(lab, first->carrier).size() < 2) return std::nullopt;
  const Band band{first->carrier, first->band};
  const std::vector<MachineId> all = machines_of(lab, band);
  const auto chosen = [ids](MachineId m) { return std::find(ids.begin(), ids.end(), AnyId(m)) != ids.end(); };
  if (all.size() != ids.size() || !std::all_of(all.begin(), all.end(), chosen)) return std::nullopt;
  return band;
}

namespace {

// Numbers machines' bands by their place in `order`.
Edit number_bands(const Lab& lab, MachineId carrier, const std::vector<std::int32_t>& order, Message label) {
  EditBuilder edit(lab);
  for (const Machine& m : lab.machines) {
    if (m.carrier != carrier) continue;
    const auto at = std::find(order.begin(), order.end(), m.band) - order.begin();
    edit.set(m.id, "band", std::int64_t{at});
  }
  return std::move(edit).take(std::move(label));
}

} // namespace

Edit move_band(const Lab& lab, Band band, std::optional<std::int32_t> before) {
  const std::vector<std::int32_t> was = bands_of(lab, band.carrier);
  if (before == band.number) return {};
  std::vector<std::int32_t> order = was;
  std::erase(order, band.number);
  order.insert(before ? std::find(order.begin(), order.end(), *before) : order.end(), band.number);
  if (order == was) return {};
  return number_bands(lab, band.carrier, order,
                      say(text::hand_band_moved, names_of(lab, machines_of(lab, band))));
}

Edit shift_band(const Lab& lab, Band band, bool later) {
  const std::vector<std::int32_t> order = bands_of(lab, band.carrier);
  const auto at = std::find(order.begin(), order.end(), band.number);
  if (at == order.end() || (later ? at + 1 == order.end() : at == order.begin())) return {};
  if (!later) return move_band(lab, band, *(at - 1));
  return move_band(lab, band, at + 2 == order.end() ? std::nullopt : std::optional(*(at + 2)));
}

Edit own_band(const Lab& lab, std::span<const MachineId> ids) {
  if (ids.empty()) return {};
  const Machine& first = *find<Machine>(lab, ids.front());
  const Band band{first.carrier, first.band};
  const auto chosen = [ids](MachineId m) { return std::find(ids.begin(), ids.end(), m) != ids.end(); };
  const std::vector<MachineId> there = machines_of(lab, band);
  if (there.size() == ids.size() && std::all_of(there.begin(), there.end(), chosen)) return {};
  EditBuilder edit(lab);
  for (const Machine& m : lab.machines) {
    if (m.carrier != band.carrier) continue;
    if (chosen(m.id))
      edit.set(m.id, "band", std::int64_t{band.number} + 1);
    else if (m.band > band.number)
      edit.set(m.id, "band", std::int64_t{m.band} + 1);
  }
  return std::move(edit).take(say(text::hand_band_own, names_of(lab, ids)));
}

} // namespace snug
