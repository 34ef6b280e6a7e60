#include "core/addressing/free_spans.h"

#include "core/addressing/room.h"

namespace snug {

std::vector<AddressRange> free_spans(const Index& index, const AddressesInUse& in_use,
                                     std::uint32_t segment_place, std::size_t most) {
  std::vector<AddressRange> out;
  const Room room(index, in_use, segment_place);
  std::int64_t first = -1;
  for (std::int64_t host = 0; room.has_prefix() && host <= room.size() && out.size() < most; ++host) {
    if (room.is_free(host)) { // never behind the last
      if (first < 0) first = host;
    } else if (first >= 0) {
      out.push_back({room.address(first), room.address(host - 1)});
      first = -1;
    }
  }
  return out;
}

} // namespace snug
