#pragma once
// The lab of one topology of the kernel's cases.

#include "tests/support/kernel_case.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>

namespace snug::test::kernel {

using Json = nlohmann::json;

inline std::string text(const Json& j, const char* key, const std::string& otherwise = {}) {
  return j.contains(key) ? j.at(key).get<std::string>() : otherwise;
}
inline bool flag(const Json& j, const char* key) { return j.value(key, false); }
inline Address address_of(const std::string& s) { return parse_address(s).value(); }

// Builds the lab of one topology. Segments inside a hypervisor with an uplink are pieces of the segment that
// the uplink is plugged into; those without are segments of their own that only the hypervisor's card
// carries.
class Builder {
 public:
  Builder(const Json& topology, KernelCase& out) : t_(topology), out_(out), lab_(out.lab) {}
  void build();
  const std::map<std::string, MachineId>& machines() const { return machines_; }
  CardId card(const std::string& machine, const std::string& nic) const {
    const auto it = cards_.find({machine, nic});
    return it == cards_.end() ? CardId{} : it->second;
  }

 private:
  void cannot(std::string why) {
    auto& list = out_.not_expressible;
    if (std::find(list.begin(), list.end(), why) == list.end()) list.push_back(std::move(why));
  }
  void know(const Json& j, const std::string& what, const std::set<std::string>& keys) {
    for (const auto& [key, value] : j.items())
      if (keys.count(key) == 0) cannot(std::string(what).append(" with ").append(key));
  }
  template <typename E>
  E& add(E e) {
    e.id.number = lab_.facts.next_id++;
    list_of<E>(lab_).push_back(std::move(e));
    return list_of<E>(lab_).back();
  }
  Card* card_of(CardId id) {
    for (Card& c : lab_.cards)
      if (c.id == id) return &c;
    return nullptr;
  }
  Segment& segment_of(SegmentId id) {
    return *std::find_if(lab_.segments.begin(), lab_.segments.end(),
                         [&](const Segment& s) { return s.id == id; });
  }
  Machine& machine_of(const std::string& name) {
    return *std::find_if(lab_.machines.begin(), lab_.machines.end(),
                         [&](const Machine& m) { return m.name == name; });
  }
  const Json& segment_json(const std::string& name) const {
    for (const Json& s : t_.at("segments"))
      if (s.at("name") == name) return s;
    throw std::runtime_error("no segment " + name);
  }
  const Json* nic_json(const std::string& machine, const std::string& nic) const {
    for (const Json& m : t_.at("machines"))
      if (m.at("name") == machine)
        for (const Json& n : m.at("nics"))
          if (n.at("name") == nic) return &n;
    return nullptr;
  }
  std::string base(const std::string& segment) const;
  void add_segments();
  void join_links();
  void find_carriers();
  void add_nics(const Json& machine);
  void add_nic(const Json& machine, const Json& nic);
  void add_bridge(const Json& machine, const Json& nic);
  void fill(Card&, const Json& nic);
  void set_forwarding(const Json& machine);
  void set_filter(const Json& machine);
  void set_sysctl(const std::string& machine, const std::string& key, const Json& value);
  void add_routes(const Json& machine);
  void add_route(const std::string& machine, const Json& route, const std::string& to);
  void add_servers(const Json& machine);
  void add_dhcp(const std::string& machine, const Json& server);
  Card* holder_of(const std::string& machine, const Address&);
  Card* relay_into(const Prefix&);

  const Json& t_;
  KernelCase& out_;
  Lab& lab_;
  std::map<std::string, SegmentId> segments_;
  std::map<std::string, MachineId> machines_;
  std::map<std::pair<std::string, std::string>, CardId> cards_;
  bool advertised_ = false;
};

} // namespace snug::test::kernel
