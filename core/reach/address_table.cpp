#include "core/reach/address_table.h"

#include <algorithm>
#include <bit>

namespace snug {

void AddressTable::fill(std::span<const ReachAddress> all) {
  const std::size_t slots = std::bit_ceil(std::max<std::size_t>(all.size(), 2));
  shift_ = 64U - static_cast<std::uint32_t>(std::countr_zero(slots));
  start_.assign(slots + 1, 0);
  for (const ReachAddress& a : all) ++start_[slot(a.address)];
  for (std::size_t s = 1; s <= slots; ++s) start_[s] += start_[s - 1]; // the ends
  held_.resize(all.size());
  for (std::size_t i = all.size(); i-- > 0;) held_[--start_[slot(all[i].address)]] = all[i];
  // A slot has a handful, but for equal ones, which need no move.
  for (std::size_t s = 0; s < slots; ++s)
    for (std::uint32_t i = start_[s] + 1; i < start_[s + 1]; ++i)
      for (std::uint32_t k = i; k > start_[s] && held_[k].address < held_[k - 1].address; --k)
        std::swap(held_[k], held_[k - 1]);
}

std::span<const ReachAddress> AddressTable::with(const Address& a) const {
  const std::size_t s = slot(a);
  const auto end = held_.begin() + start_[s + 1];
  auto first = held_.begin() + start_[s];
  while (first != end && first->address != a) ++first;
  auto last = first;
  while (last != end && last->address == a) ++last;
  return {first, last};
}

} // namespace snug
