#include "core/reach/builder.h"

#include <algorithm>

namespace snug {

void ReachBuilder::reserve() {
  const std::size_t ports = lab_.cards.size() + 2 * lab_.segments.size() + 2 * lab_.lans.size();
  const std::size_t addresses = index_.facts().addresses.size() + ports;
  n_.nodes_.reserve(lab_.machines.size() + lab_.segments.size() + lab_.lans.size() + 2);
  b_.ports.reserve(ports);
  b_.addresses.reserve(addresses);
  first_row_.assign(lab_.cards.size() + 1, 0);
  for (const AddressRow& row : index_.facts().addresses) ++first_row_[row.card + 1];
  for (std::size_t c = 1; c < first_row_.size(); ++c) first_row_[c] += first_row_[c - 1];
}

void ReachBuilder::build() {
  reserve();
  add_pieces();
  for (std::uint32_t m = 0; m < lab_.machines.size(); ++m) add_machine(m);
  add_pc();
  add_translators();
  add_lan_routers();
  add_outside();
  find_shared_macs();
  lease_all();
  advertise_all();
  sort_addresses();
  for (std::size_t i = lab_.machines.size(); i < n_.nodes_.size(); ++i)
    b_.ids.emplace_back(n_.nodes_[i].id, static_cast<std::uint32_t>(i));
  std::sort(b_.ids.begin(), b_.ids.end());
  b_.index = &index_;
  b_.routes.resize(n_.nodes_.size());
  add_forwards();
}

ReachNetwork::ReachNetwork(const Index& index, const AddressesInUse& addresses,
                           std::span<const std::uint8_t> running, LeaseChoices& choices) {
  const auto body = std::make_shared<Body>();
  body_ = body;
  ReachBuilder(*this, *body, index, addresses, running, choices).build();
}

ReachNetwork::ReachNetwork(const ReachNetwork& like, std::span<const std::uint8_t> running)
    : nodes_(like.nodes_), body_(like.body_) {
  for (std::size_t m = 0; m < running.size(); ++m) nodes_[m].on = running[m] != 0;
}

bool gives_same(const Index& index, std::span<const std::uint8_t> running,
                std::span<const std::uint8_t> others) {
  constexpr std::uint32_t kGiver =
      CardMark::server | CardMark::relay | CardMark::advertises | CardMark::asks_dhcp | CardMark::slaac;
  const NetworkFacts& facts = index.facts();
  bool cut = false; // which guests run decides whether a switch without uplink is up
  facts.each_card(CardMark::carries,
                  [&](std::uint32_t c) { cut |= (facts.card_marks[c] & CardMark::connected) == 0; });
  if (cut && !std::equal(running.begin(), running.end(), others.begin(), others.end())) return false;
  if ((facts.any_card & kGiver) == 0) return true;
  for (std::uint32_t c = 0; c < facts.card_marks.size(); ++c) {
    const std::uint32_t m = facts.card_machine[c];
    if ((facts.card_marks[c] & kGiver) != 0 && m != kNowhere && running[m] != others[m]) return false;
  }
  return true;
}

} // namespace snug
