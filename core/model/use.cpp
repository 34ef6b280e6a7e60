#include "core/model/use.h"

#include "core/model/store.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace snug {

namespace {

bool is_one_of(std::string_view key, std::span<const std::string_view> keys) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

bool is_used(const Segment& s, std::string_view key) {
  constexpr std::array<std::string_view, 5> kTranslator{"translator4", "translator_dhcp", "translator_names",
                                                        "ranges", "forwards"};
  constexpr std::array<std::string_view, 2> kSocket{"pc_address4", "pc_address6"};
  if (is_one_of(key, kTranslator)) return s.type == SegmentKind::nat;
  if (is_one_of(key, kSocket)) return s.pc_socket;
  return key != "lan" || s.type != SegmentKind::isolated;
}

// ICMP has no ports (RFC 792, RFC 4443).
bool is_used(const Promise& p, std::string_view key) {
  return key != "port" || p.transport != Transport::icmp || p.port != 0;
}

} // namespace

bool is_used(const Lab& lab, AnyId id, const FieldInfo& field) {
  if (id.kind == Kind::segment) {
    const auto* s = find<Segment>(lab, SegmentId{id.number});
    return s == nullptr || is_used(*s, field.key);
  }
  if (id.kind == Kind::promise) {
    const auto* p = find<Promise>(lab, PromiseId{id.number});
    return p == nullptr || is_used(*p, field.key);
  }
  return true;
}

} // namespace snug
