#include "core/net/prefix.h"

#include <algorithm>
#include <cassert>

namespace snug {

namespace {

// The reverse name of the first `length` bits, which are whole labels.
std::string labels_of(const Address& a, int length) {
  static constexpr std::string_view kDigits = "0123456789abcdef";
  const int step = a.is_v4() ? 8 : 4;
  std::string out;
  for (int bit = length - step; bit >= 0; bit -= step) {
    const int below = a.bits() - bit - step;
    const std::uint64_t half = below < 64 ? a.low() : a.high();
    const std::uint64_t label = half >> static_cast<unsigned>(below % 64);
    if (a.is_v4())
      out += std::to_string(label & 0xffU);
    else
      out += kDigits[label & 0xfU];
    out += '.';
  }
  return out + (a.is_v4() ? "in-addr.arpa" : "ip6.arpa");
}

} // namespace

std::string reverse_name(const Address& a) { return labels_of(a, a.bits()); }

std::vector<std::string> reverse_zones(const Prefix& p) {
  const int step = p.is_v4() ? 8 : 4;
  const int most = p.is_v4() ? 24 : 128;
  const int zone = std::min((p.length() + step - 1) / step * step, most);
  std::vector<std::string> out;
  Address at = p.network();
  const int count = zone > p.length() ? 1 << static_cast<unsigned>(zone - p.length()) : 1;
  for (int i = 0; i < count; ++i) {
    out.push_back(labels_of(at, zone));
    if (zone > 0) at = Address::of(at.family(), at.value() + Bits128::power(at.bits() - zone));
  }
  return out;
}

std::string classless_zone(const Prefix& p) {
  assert(p.is_v4() && p.length() > 24);
  return std::to_string(p.network().as_u32() & 0xffU) + "-" + std::to_string(p.length()) + "." +
         labels_of(p.network(), 24);
}

} // namespace snug
