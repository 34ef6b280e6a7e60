#include "core/findings/network_rules.h"

namespace snug {

std::span<const Rule> address_rules() {
  static const std::vector<Rule> all =
      joined({address_conflict_rules(), card_address_rules(), dhcp_rules(), dhcp_range_rules(),
              prefix_rules(), gateway_rules(), route_rules(), mac_rules()});
  return all;
}

} // namespace snug
