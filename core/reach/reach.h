#pragma once
// Who can talk to whom, for one exercise, and why not: the questions that screens, documents and the command
// line ask. "If no firewall stops it": the model has no packet filters (DECISIONS 15).

#include "core/reach/classes.h"
#include "core/reach/walk.h"

namespace snug {

struct ReachQuestion {
  AnyId from;                    // machine, PC, LAN (its router), segment (its translator), outside
  AnyId to;                      // the same
  std::optional<Address> target; // none: the best of the addresses that `to` has
  CardId by;                     // to send by, for link-local targets
  Transport transport = Transport::icmp;
  std::int32_t port = 0; // 0: whatever `to` offers
  std::int32_t size = 0; // octets of the IP packet; 0: small
  std::int32_t hop_limit = 64;
  bool keep_whole = false;      // may not be cut on the way
  bool full_size = false;       // as long as the sender's card takes; with tcp a long transfer
  bool keep_neighbours = false; // after the question before, with what was learned then
};

// One decision on the way, as data for canvas, command line and documents.
struct ReachStep {
  AnyId node; // as in questions
  AnyId card; // card, segment (the PC's socket or the translator), LAN, outside; none where none is concerned
  Decision what = Decision::sends;
  Address address; // see Decision
  bool back = false;
  std::int32_t service = 0; // of one that redirects: the port outside
  friend bool operator==(const ReachStep&, const ReachStep&) = default;
};

struct ReachAnswer {
  Reached verdict = Reached::does_not_reach;
  std::optional<Address> target; // none: `to` has no address
  std::vector<ReachStep> steps;  // the whole way, there and back
  std::optional<ReachStep> end;  // where it ends: the last step, unless it reaches
  std::optional<Address> unsure; // an address that several have, if who of them answers makes a difference
  bool unsure_lease = false;     // several DHCP servers could answer
};

class Reach {
 public:
  // none: everything on. Refers to index and addresses: keep them alive.
  Reach(const Index&, const AddressesInUse&, ExerciseId exercise = {}, ReachAssumptions = {});
  // `running`: 1 or 0 for each of lab.machines.
  Reach(const Index&, const AddressesInUse&, std::span<const std::uint8_t> running, ReachAssumptions = {});
  // Of the same lab with others running; see gives_same().
  Reach(const Reach&, std::span<const std::uint8_t> running);
  Reach(const Reach&) = delete;
  Reach& operator=(const Reach&) = delete;

  ReachAnswer ask(const ReachQuestion&);
  // The verdict alone. No allocation after the first questions.
  Reached verdict(const ReachQuestion&);
  // Found when it is first asked for.
  const ReachClasses& classes();
  const ReachNetwork& network() const { return networks_.front(); }
  // Nowhere could several DHCP servers have answered.
  bool is_certain() const { return networks_.size() == 1; }
  // The addresses `ask` tries, in the order in which people would use them: shared networks first, then
  // published ones, IPv4 before IPv6.
  std::vector<Address> targets(AnyId from, AnyId to);
  // Port forwards that lead to a machine; `ask` and `verdict` try them for a question with a port.
  struct WayIn {
    Address address; // of the translator outside, or of the router before it
    Transport transport = Transport::tcp;
    std::int32_t port = 0, to_port = 0; // outside, at the machine
  };
  std::vector<WayIn> ways_in(AnyId to) const;

 private:
  struct Combined {
    Reached verdict;
    std::size_t network; // the one whose hops explain it
    bool differ = false;
  };
  bool nodes_of(const ReachQuestion&, ReachProbe&) const;
  Combined ask_all(const ReachProbe&);
  ReachAnswer answer(const ReachProbe&, const Combined&) const;
  bool is_offered(const ReachQuestion&) const;
  std::vector<std::pair<Address, std::int32_t>> addressed(const ReachQuestion&);
  void find_targets(std::uint32_t from, std::uint32_t to);

  const Index& index_;
  ReachAssumptions assumptions_;
  std::vector<ReachNetwork> networks_; // one for each choice of DHCP servers (LeaseChoices)
  std::vector<Walker> walkers_;
  std::optional<ReachClasses> classes_;
  std::vector<std::pair<int, Address>> targets_; // of the last pair, the best first
};

// "reaches", "one way", "unreliable", "does not reach".
std::string_view word(Reached);

} // namespace snug
