#include "core/addressing/sort_keys.h"
#include "core/base/quote.h"
#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/model/names.h"
#include "core/net/host_name.h"
#include "core/text/base_text.h"
#include "core/text/name_text.h"

#include <algorithm>
#include <array>
#include <set>

namespace snug {

namespace {

constexpr AnyId kLabId{Kind::lab, 0};
constexpr std::string_view kPrivateDomain = "home.arpa"; // RFC 8375

// Calls report(first, later) for machines that share a host name, in the order of the lab.
template <typename Report>
void each_twin(const Context& c, Report report) {
  std::vector<WideKey> keys = maybe_repeated(c.index.name_hashes().host);
  sort_wide_keys(keys);
  std::vector<std::pair<std::uint32_t, std::uint32_t>> twins;
  for (std::size_t i = 1, first = 0; i < keys.size(); ++i) {
    if (keys[i].low != keys[first].low)
      first = i;
    else
      twins.emplace_back(keys[first].place, keys[i].place);
  }
  std::sort(twins.begin(), twins.end());
  for (const auto& [first, later] : twins) {
    const Machine& a = c.lab.machines[first];
    const Machine& b = c.lab.machines[later];
    if (same_name(host_name_of(a), host_name_of(b))) report(a, b);
  }
}

void check_twice(const Context& c, std::vector<Finding>& out) {
  each_twin(c, [&](const Machine& a, const Machine& b) {
    out.push_back(found(Severity::error,
                        say(text::host_name_twice, c.name(a.id), c.name(b.id), host_name_of(b)),
                        say(text::host_name_twice_why), {a.id, b.id}));
  });
}

// The name with the lowest number, from 2, that nobody has.
std::string free_name(const Context& c, std::string_view wanted) {
  std::set<std::string> taken;
  for (const Machine& m : c.lab.machines) taken.insert(host_label_from(host_name_of(m)));
  std::string label = host_label_from(wanted);
  if (!taken.contains(label)) return label;
  for (int n = 2;; ++n) {
    const std::string end = "-" + std::to_string(n);
    std::string name = label.substr(0, 63 - end.size()) + end;
    if (!taken.contains(name)) return name;
  }
}

Fix rename(const Context& c, const Machine& m, const std::string& name) {
  Machine after = m;
  after.host_name = name;
  return change_to(say(text::fix_host_name, c.name(m.id), name), m, after);
}

std::optional<Fix> fix_twice(const Context& c, const Finding& f) {
  const Machine& m = c.lab.machines[c.index.place(f.places[1])];
  return rename(c, m, free_name(c, host_name_of(m)));
}

void check_form(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_machine(MachineMark::own_host_name, [&](std::uint32_t p) {
    const Machine& m = c.lab.machines[p];
    const bool whole = m.host_name.find('.') != std::string::npos;
    auto ok = whole ? check_domain_name(m.host_name) : check_host_label(m.host_name);
    if (!ok)
      out.push_back(found(Severity::error, say(text::host_name_form, c.name(m.id), excerpt(m.host_name)),
                          std::move(ok.error().message), {m.id}));
  });
}

std::optional<Fix> fix_form(const Context& c, const Finding& f) {
  const Machine& m = c.lab.machines[c.index.place(f.places[0])];
  return rename(c, m, free_name(c, m.host_name));
}

bool is_well_formed(const Context& c) { return check_domain_name(c.lab.facts.domain).has_value(); }

void check_domain(const Context& c, std::vector<Finding>& out) {
  const std::string& domain = c.lab.facts.domain;
  if (domain.empty()) return;
  auto ok = check_domain_name(domain);
  if (!ok)
    out.push_back(found(Severity::error, say(text::domain_form, excerpt(domain)),
                        std::move(ok.error().message), {kLabId}));
}

void check_no_domain(const Context& c, std::vector<Finding>& out) {
  if (!c.lab.facts.domain.empty() || c.lab.machines.empty()) return;
  out.push_back(found(Severity::note, say(text::domain_missing), say(text::domain_missing_why), {kLabId}));
}

void check_local(const Context& c, std::vector<Finding>& out) {
  const std::string& domain = c.lab.facts.domain;
  if (is_well_formed(c) && is_multicast_dns_domain(domain))
    out.push_back(
        found(Severity::caution, say(text::domain_local, domain), say(text::domain_local_why), {kLabId}));
}

void check_localhost(const Context& c, std::vector<Finding>& out) {
  const std::string& domain = c.lab.facts.domain;
  if (is_well_formed(c) && is_localhost_name(domain))
    out.push_back(found(Severity::error, say(text::domain_localhost, domain), say(text::domain_localhost_why),
                        {kLabId}));
}

void check_case(const Context& c, std::vector<Finding>& out) {
  const std::string& domain = c.lab.facts.domain;
  const auto is_upper = [](char x) { return x != lower(x); };
  if (is_well_formed(c) && std::any_of(domain.begin(), domain.end(), is_upper))
    out.push_back(
        found(Severity::caution, say(text::domain_case, domain), say(text::domain_case_why), {kLabId}));
}

std::optional<Fix> use_domain(const Context& c, std::string domain) {
  LabFacts after = c.lab.facts;
  after.domain = std::move(domain);
  return change_to(say(text::fix_domain, after.domain), kLabId, c.lab.facts, after);
}

// What stood before .local or localhost, under home.arpa.
std::optional<Fix> fix_private(const Context& c, const Finding&) {
  std::string domain = c.lab.facts.domain;
  if (domain.ends_with('.')) domain.pop_back();
  const std::size_t dot = domain.rfind('.');
  std::string under = dot == std::string::npos ? "" : domain.substr(0, dot + 1);
  for (char& x : under) x = lower(x);
  return use_domain(c, under + std::string(kPrivateDomain));
}

std::optional<Fix> fix_case(const Context& c, const Finding&) {
  std::string domain = c.lab.facts.domain;
  for (char& x : domain) x = lower(x);
  return use_domain(c, domain);
}

std::optional<Fix> fix_domain(const Context& c, const Finding&) {
  return use_domain(c, std::string(kPrivateDomain));
}

constexpr std::array kRules{
    Rule{"host-name-twice", Topic::names, Severity::error, "Two machines have one host name", "RFC 4343",
         check_twice, fix_twice},
    Rule{"host-name-form", Topic::names, Severity::error, "A host name that is none", "RFC 952, RFC 1123 2.1",
         check_form, fix_form},
    Rule{"domain-form", Topic::names, Severity::error, "The lab's domain is none",
         "RFC 1123 2.1, RFC 1035 2.3.4", check_domain, fix_domain},
    Rule{"domain-missing", Topic::names, Severity::note, "The lab has no domain", "RFC 8375", check_no_domain,
         fix_domain},
    Rule{"domain-local", Topic::names, Severity::caution, "The lab's domain is under .local", "RFC 6762",
         check_local, fix_private},
    Rule{"domain-localhost", Topic::names, Severity::error, "The lab's domain is under localhost",
         "RFC 6761 6.3", check_localhost, fix_private},
    Rule{"domain-case", Topic::names, Severity::caution, "The lab's domain has capital letters", "RFC 4343",
         check_case, fix_case},
};

} // namespace

std::span<const Rule> name_rules() {
  static const std::vector<Rule> all = joined({kRules, published_rules()});
  return all;
}

} // namespace snug
