#include "core/reach/askable.h"

#include "core/base/quote.h"
#include "core/model/store.h"
#include "core/reach/explain.h"
#include "core/text/reach_text.h"

#include <algorithm>
#include <charconv>
#include <map>

namespace snug {

namespace {

std::string folded(std::string_view s) {
  std::string out(s);
  std::transform(out.begin(), out.end(), out.begin(), lower);
  return out;
}

std::vector<AskablePlace> machines_by_name(const Lab& lab) {
  std::vector<std::pair<std::string, AskablePlace>> machines;
  for (const Machine& m : lab.machines) {
    std::string name = m.name.empty() ? name_of(lab, m.id) : m.name;
    machines.emplace_back(folded(name), AskablePlace{m.id, name});
  }
  std::stable_sort(machines.begin(), machines.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<AskablePlace> out;
  for (auto& [key, place] : machines) out.push_back(std::move(place));
  return out;
}

} // namespace

std::vector<AskablePlace> askable_places(const Lab& lab) {
  const auto place = [&](AnyId id) { return AskablePlace{id, reach_name(lab, id)}; };
  std::vector<AskablePlace> out{place({Kind::pc, 0}), place({Kind::outside, 0})};
  for (AskablePlace& p : machines_by_name(lab)) out.push_back(std::move(p));
  for (const Lan& l : lab.lans) out.push_back(place(l.id));
  for (const Segment& s : lab.segments)
    if (s.type == SegmentKind::nat) out.push_back(place(s.id));
  std::map<std::string, int> seen;
  for (AskablePlace& p : out)
    if (const int n = ++seen[p.name]; n > 1) p.name += " (" + std::to_string(n) + ")";
  return out;
}

bool is_askable(const Lab& lab, AnyId id) {
  if (id.kind == Kind::pc || id.kind == Kind::outside) return true;
  if (id.kind == Kind::segment) {
    const Segment* s = find<Segment>(lab, SegmentId{id.number});
    return s && s->type == SegmentKind::nat;
  }
  return (id.kind == Kind::machine || id.kind == Kind::lan) && exists(lab, id);
}

Result<Service> parse_service(std::string_view typed) {
  const std::string text = folded(trimmed(typed));
  const std::size_t slash = text.find('/');
  const std::string transport = text.substr(0, slash);
  Service s;
  if (transport == "tcp")
    s.transport = Transport::tcp;
  else if (transport == "udp")
    s.transport = Transport::udp;
  else if (text != "ping" && text != "icmp")
    return fail(text::reach_service, excerpt(typed));
  if (slash == std::string::npos) return s;
  const char* const end = text.data() + text.size();
  const auto [at, error] = std::from_chars(text.data() + slash + 1, end, s.port);
  if (error != std::errc() || at != end || s.port < 1 || s.port > 65535)
    return fail(text::reach_service, excerpt(typed));
  return s;
}

std::string service_text(const Service& s) {
  if (s.transport == Transport::icmp) return "ping";
  std::string out(word(s.transport));
  if (s.port != 0) out += "/" + std::to_string(s.port);
  return out;
}

std::vector<OfferedService> offers_of(const Index& index, AnyId node) {
  std::vector<OfferedService> out;
  const Machine* m = node.kind == Kind::machine ? index.machine(MachineId{node.number}) : nullptr;
  if (!m) return out;
  const auto take = [&](const std::vector<Offer>& list) {
    for (const Offer& o : list) {
      const Service service{o.transport, o.transport == Transport::icmp ? 0 : o.port};
      if (std::none_of(out.begin(), out.end(), [&](const OfferedService& x) { return x.service == service; }))
        out.push_back({o.service, service});
    }
  };
  take(m->offers);
  if (const Role* role = index.role(m->role)) take(role->offers);
  return out;
}

} // namespace snug
