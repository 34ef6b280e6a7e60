#include "core/report/reach_step.h"

#include "core/reach/explain.h"
#include "core/text/reach_text.h"

#include <array>

namespace snug {

namespace {

// Where a way ends, in the order of Decision.
constexpr std::array kEndings{
    &text::end_off,           &text::end_no_source,     &text::end_no_route,     &text::end_refuses,
    &text::end_not_plugged,   &text::end_nobody,        &text::end_unheard,      &text::end_ignores,
    &text::end_other_macs,    &text::end_separated,     &text::end_same_mac,     &text::end_too_big,
    &text::end_must_fragment, &text::end_no_forwarding, &text::end_reverse_path, &text::end_own_source,
    &text::end_hop_limit,     &text::end_link_scope,    &text::end_someone_else, &text::end_other_source,
    &text::end_not_offered,
};
static_assert(kEndings.size() == 1 + std::size_t(Decision::not_offered) - std::size_t(Decision::is_off));

const Template& ending(Decision d) { return *kEndings[std::size_t(d) - std::size_t(Decision::is_off)]; }

// "card 2" of the system that holds it.
std::string card_of(const Context& names, AnyId card, const std::string& node) {
  std::string name = names.name(card);
  if (name.compare(0, node.size() + 1, node + " ") == 0) name.erase(0, node.size() + 1);
  return name;
}

// Nobody knows addresses beyond the routers that lead out: who has one there is named instead.
std::string target_of(const Analysis& a, const Address& address) {
  const ReachNetwork& n = a.reach({}).network();
  const std::uint32_t outside = n.node_of({Kind::outside, 0});
  const std::uint32_t beyond = n.ports()[n.nodes()[outside].first_port].piece;
  for (const ReachAddress& held : n.with(address))
    if (n.ports()[held.port].piece == beyond)
      return reach_name(a.lab(), n.nodes()[n.ports()[held.port].node].id);
  return to_text(address);
}

} // namespace

Message step_message(const Analysis& a, const ReachStep& s) {
  const Context names{a.lab(), a.index(), BudgetList(a.budgets()), a.addresses()};
  const std::string node = reach_name(a.lab(), s.node), to = target_of(a, s.address);
  const Card* card = s.card.kind == Kind::card ? a.index().card(CardId{s.card.number}) : nullptr;
  const bool own = card && card->segment; // else it is the node itself, or a trunk
  const bool sends = s.what == Decision::sends;
  switch (s.what) {
  case Decision::sends:
  case Decision::forwards:
    if (!own) return say(sends ? text::step_sends_on : text::step_forwards_on, node, to);
    return say(sends ? text::step_sends : text::step_forwards, node, card_of(names, s.card, node),
               names.name(card->segment), to);
  case Decision::translates:
    return to == node ? say(text::step_translates_own, node) : say(text::step_translates, node, to);
  case Decision::restores:
    return say(text::step_restores, node, to);
  case Decision::redirects:
    return say(text::step_redirects, node, std::to_string(s.service), to);
  case Decision::receives:
    return say(s.node.kind == Kind::outside ? text::step_receives_it : text::step_receives, node, to);
  default:
    return say(ending(s.what), node, to);
  }
}

} // namespace snug
