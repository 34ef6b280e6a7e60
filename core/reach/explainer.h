#pragma once
// How `explain` finds why a way ends. One file for each kind of cause: explain.cpp, explain_frames.cpp (what
// does not get from card to card), explain_routes.cpp (addresses, leases, routes).

#include "core/reach/reach.h"

namespace snug {

class Explainer {
 public:
  // Of an answer with an end. Refers to all of them.
  Explainer(const Index& index, const Reach& reach, const ReachQuestion& q, const ReachAnswer& a)
      : index_(index), n_(reach.network()), q_(q), end_(*a.end) {}
  Message message() const;

 private:
  std::string name(AnyId node) const;
  std::string name_at(std::uint32_t port) const { return name(n_.nodes()[n_.ports()[port].node].id); }
  std::string here() const { return name(end_.node); }
  std::string address() const; // beyond the routers nobody knows one: a name
  std::string partner() const { return name(end_.back ? q_.from : q_.to); }
  std::string segment(std::uint32_t port) const;
  std::uint32_t port() const;
  const ReachAddress* holder() const;
  bool is_beyond(std::uint32_t port) const;
  Message between(const Template& t) const;
  Message nobody() const;
  Message lost_outside() const;
  Message refused() const;
  Message not_plugged() const;

  // Frames.
  std::optional<Message> island(std::uint32_t port) const;
  std::optional<Message> cut() const;
  Message unheard() const;
  Message other_macs() const;
  std::uint32_t stopping_piece(std::uint32_t from, std::uint32_t to) const;
  Message own_macs(std::uint32_t from, std::uint32_t to) const;

  // Addresses, leases, routes.
  Message no_source() const;
  Message no_route() const;
  std::optional<Message> misplaced() const;
  std::optional<Message> misplaced(std::uint32_t port, const Address&) const;
  std::optional<Message> behind_translator() const;
  std::optional<Message> no_lease(std::uint32_t node) const;
  const Lan* lan_of(std::uint32_t port) const;
  Message lease_missing(std::uint32_t port) const;
  bool gives(std::uint32_t server) const;
  bool would_lead_on(std::uint32_t port) const;
  std::optional<Message> unaddressed() const;
  std::optional<Message> no_gateway() const;
  std::optional<Message> no_exit() const;
  std::optional<Message> no_next_hop() const;
  std::optional<Prefix> prefix(std::uint32_t port, Family) const;
  std::span<const ReachPort> ports_of(std::uint32_t node) const;
  bool has_address(std::uint32_t port, Family) const;

  const Index& index_;
  const ReachNetwork& n_;
  const ReachQuestion& q_;
  const ReachStep& end_;
};

} // namespace snug
