#include "core/base/tongue.h"

#include "core/base/size.h"
#include "core/text/unit_text.h"

#include <array>
#include <cassert>

namespace snug {

namespace {

std::optional<std::int64_t> count_in(const Message& m) {
  for (const Argument& a : m.args)
    if (const auto* c = std::get_if<Count>(&a)) return c->n;
  return std::nullopt;
}

// The place of the argument when {N} begins at i.
std::optional<std::size_t> argument_at(std::string_view pattern, std::size_t i) {
  if (pattern[i] != '{' || i + 2 >= pattern.size() || pattern[i + 2] != '}') return std::nullopt;
  if (pattern[i + 1] < '0' || pattern[i + 1] > '9') return std::nullopt;
  return static_cast<std::size_t>(pattern[i + 1] - '0');
}

} // namespace

std::string Tongue::term(std::string_view word) const {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 11> kSpelt{{{"nat", "NAT"},
                                                                                  {"tcp", "TCP"},
                                                                                  {"udp", "UDP"},
                                                                                  {"icmp", "ICMP"},
                                                                                  {"dhcp", "DHCP"},
                                                                                  {"slaac", "SLAAC"},
                                                                                  {"iscsi", "iSCSI"},
                                                                                  {"nfs", "NFS"},
                                                                                  {"smb", "SMB"},
                                                                                  {"usb", "USB"},
                                                                                  {"nvme", "NVMe"}}};
  for (const auto& [written, spelt] : kSpelt)
    if (word == written) return std::string(spelt);
  return std::string(word);
}

std::string Tongue::size(std::int64_t mib) const {
  const std::string exact = mib_text(mib);
  const std::size_t unit = exact.find(' ');
  return number(exact.substr(0, unit)) + exact.substr(unit);
}

struct Renderer {
  const Tongue& tongue;
  std::string operator()(const std::string& s) const { return s; }
  std::string operator()(Count c) const { return tongue.number(std::to_string(c.n)); }
  std::string operator()(Mib m) const { return tongue.mib(m.n); }
  std::string operator()(Seconds s) const { return tongue.seconds(s.n); }
  std::string operator()(Percent p) const {
    return tongue.filled(text::unit_percent, tongue.number(std::to_string(p.n)));
  }
  std::string operator()(Hundredths h) const { return tongue.number(show_tenths(h.n, 100)); }
  std::string operator()(Term t) const { return tongue.term(t.text); }
  std::string operator()(const std::vector<std::string>& list) const { return tongue.list(list); }
  std::string operator()(const std::vector<Message>& list) const {
    std::vector<std::string> parts;
    parts.reserve(list.size());
    for (const Message& m : list) parts.push_back(tongue.say(m));
    return tongue.list(std::move(parts));
  }
};

std::string_view Tongue::pattern(const Template& t, std::optional<std::int64_t> n, std::string&) const {
  return n == 1 && !t.one.empty() ? t.one : t.other;
}

std::string Tongue::say(const Argument& a) const { return std::visit(Renderer{*this}, a); }

std::string Tongue::say(const Message& m) const {
  if (m.text == nullptr) return {};
  std::string room;
  const std::string_view pattern = this->pattern(*m.text, count_in(m), room);
  std::string out;
  out.reserve(pattern.size() + 32);
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    if (const auto n = argument_at(pattern, i)) {
      assert(*n < m.args.size() && "a template asks for an argument that the message does not have");
      if (*n < m.args.size()) out += say(m.args[*n]);
      i += 2;
      continue;
    }
    if (pattern[i] == '{' && i + 1 < pattern.size() && pattern[i + 1] == '{') ++i;
    out += pattern[i];
  }
  return out;
}

std::string Tongue::sentence(const Message& m) const {
  std::string out = say(m);
  if (out.empty() || out.front() < 'a' || out.front() > 'z') return out;
  const bool is_named = m.text->other.starts_with('{') && !out.starts_with("the ");
  if (!is_named) out.front() = static_cast<char>(out.front() - 'a' + 'A');
  return out;
}

std::string Tongue::filled(const Template& t, const std::string& one) const {
  std::string room;
  const std::string_view p = pattern(t, std::nullopt, room);
  const std::size_t at = p.find("{0}");
  if (at == std::string_view::npos) return std::string(p);
  return std::string(p.substr(0, at)) + one + std::string(p.substr(at + 3));
}

std::string Tongue::list(std::vector<std::string> parts) const {
  if (parts.empty()) return {};
  std::string out = std::move(parts.front());
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const Template& joint = i + 1 == parts.size() ? text::list_last : text::list_more;
    out = say(Message{&joint, {std::move(out), std::move(parts[i])}});
  }
  return out;
}

std::string Tongue::mib(std::int64_t n) const {
  if (n > -kShowGibFrom && n < kShowGibFrom) return filled(text::unit_mib, number(std::to_string(n)));
  return filled(text::unit_gib, number(show_tenths(n, kShowGibFrom)));
}

std::string Tongue::seconds(std::int64_t n) const {
  if (n >= 60 && n % 60 == 0) return filled(text::unit_minutes, number(std::to_string(n / 60)));
  return filled(text::unit_seconds, number(std::to_string(n)));
}

} // namespace snug
