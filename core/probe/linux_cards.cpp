// Network interfaces. Sources: Linux ABI sysfs-class-net; uapi/linux/if_arp.h.
#include "core/probe/linux_parts.h"

#include <algorithm>
#include <set>

namespace snug::system_facts {

namespace {

constexpr std::int64_t kEthernet = 1;   // ARPHRD_ETHER
constexpr std::int64_t kLoopback = 772; // ARPHRD_LOOPBACK
constexpr std::int64_t kLeastMtu = 68;  // RFC 791
constexpr std::int64_t kMostMtu = 65536;

std::optional<bool> is_physical(const SystemTree& tree, const std::string& folder) {
  const std::string real = tree.real(folder);
  if (real.empty()) return std::nullopt;
  if (real.find("/virtual/") != std::string::npos) return false;
  return tree.exists(folder + "/device") ? std::optional(true) : std::nullopt;
}

// Empty for a guest's card, whatever it imitates, and for kinds of which the kernel says neither.
std::optional<LinkMedium> medium(const SystemTree& tree, const std::string& folder, bool physical) {
  if (tree.exists(folder + "/wireless") || tree.exists(folder + "/phy80211")) return LinkMedium::wireless;
  const auto event = tree.text(folder + "/uevent");
  const bool special = !event || event->find("DEVTYPE=") != std::string::npos;
  if (event && event->find("DEVTYPE=wlan") != std::string::npos) return LinkMedium::wireless;
  const bool imitated = tree.real(folder).find("/virtio") != std::string::npos;
  if (!physical || special || imitated || tree.number(folder + "/type") != kEthernet) return std::nullopt;
  return LinkMedium::wired;
}

std::optional<bool> is_up(const SystemTree& tree, const std::string& folder) {
  const auto state = tree.word(folder + "/operstate");
  if (state == "up") return true;
  if (state == "down" || state == "lowerlayerdown" || state == "notpresent") return false;
  return std::nullopt;
}

std::optional<int> mtu(const SystemTree& tree, const std::string& folder) {
  const auto value = tree.number(folder + "/mtu");
  return value && *value >= kLeastMtu && *value <= kMostMtu ? std::optional(static_cast<int>(*value))
                                                            : std::nullopt;
}

void set_addresses(CardFacts& card, const std::vector<InterfaceAddress>& all) {
  std::set<Prefix> subnets;
  for (const InterfaceAddress& one : all) {
    const int bits = one.address.address.bits();
    if (one.card != card.name || one.address.length < 0 || one.address.length > bits) continue;
    card.addresses.push_back(one.address);
    if (!is_link_local(one.address.address))
      subnets.insert(Prefix::of(one.address.address, one.address.length));
  }
  card.subnets.assign(subnets.begin(), subnets.end());
}

} // namespace

std::optional<std::vector<CardFacts>> linux_cards(const SystemTree& tree, const ProbeRoot& from) {
  const auto names = tree.names("sys/class/net");
  if (!names) return std::nullopt;
  const auto addresses = from.addresses ? from.addresses() : std::nullopt;
  std::vector<CardFacts> out;
  for (const std::string& name : *names) {
    const std::string folder = "sys/class/net/" + name;
    const auto type = tree.number(folder + "/type");
    if (!type || *type == kLoopback) continue; // without a type it is no interface
    CardFacts card;
    card.name = name;
    card.physical = is_physical(tree, folder);
    card.up = is_up(tree, folder);
    card.medium = medium(tree, folder, card.physical.value_or(false));
    card.mtu = mtu(tree, folder);
    if (addresses) set_addresses(card, *addresses);
    card.gateways = linux_gateways(tree, name);
    out.push_back(std::move(card));
  }
  return out;
}

} // namespace snug::system_facts
