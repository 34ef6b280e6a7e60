#include "core/base/message.h"

#include "core/base/result.h"

#include <cassert>

namespace snug {

namespace {

std::string tenths(std::int64_t n, std::int64_t unit) {
  const bool negative = n < 0;
  const std::uint64_t magnitude =
      negative ? 0U - static_cast<std::uint64_t>(n) : static_cast<std::uint64_t>(n);
  const auto u = static_cast<std::uint64_t>(unit);
  const std::uint64_t rounded = (magnitude / u) * 10 + ((magnitude % u) * 10 + u / 2) / u;
  std::string out = negative && rounded != 0 ? "-" : "";
  return out + std::to_string(rounded / 10) + "." + std::to_string(rounded % 10);
}

struct Renderer {
  std::string operator()(const std::string& s) const { return s; }
  std::string operator()(Count c) const { return std::to_string(c.n); }
  std::string operator()(Mib m) const { return show_mib(m.n); }
  std::string operator()(Seconds s) const {
    if (s.n >= 60 && s.n % 60 == 0) return std::to_string(s.n / 60) + " min";
    return std::to_string(s.n) + " s";
  }
  std::string operator()(Percent p) const { return std::to_string(p.n) + " %"; }
  std::string operator()(Hundredths h) const { return tenths(h.n, 100); }
  std::string operator()(const std::vector<std::string>& list) const {
    std::string out;
    for (std::size_t i = 0; i < list.size(); ++i) {
      if (i > 0) out += i + 1 == list.size() ? " and " : ", ";
      out += list[i];
    }
    return out;
  }
};

} // namespace

std::string show_mib(std::int64_t mib) {
  if (mib > -kShowGibFrom && mib < kShowGibFrom) return std::to_string(mib) + " MiB";
  return tenths(mib, 1024) + " GiB";
}

std::string english(const Argument& a) { return std::visit(Renderer{}, a); }

std::string english(const Message& m) {
  if (m.text == nullptr) return {};
  std::string_view pattern = m.text->other;
  if (!m.text->one.empty()) {
    for (const Argument& a : m.args) {
      if (const auto* c = std::get_if<Count>(&a)) {
        if (c->n == 1) pattern = m.text->one;
        break;
      }
    }
  }
  std::string out;
  out.reserve(pattern.size() + 32);
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    if (pattern[i] == '{' && i + 2 < pattern.size() && pattern[i + 1] >= '0' && pattern[i + 1] <= '9' &&
        pattern[i + 2] == '}') {
      const auto n = static_cast<std::size_t>(pattern[i + 1] - '0');
      assert(n < m.args.size() && "a template asks for an argument that the message does not have");
      if (n < m.args.size()) out += english(m.args[n]);
      i += 2;
    } else {
      if (pattern[i] == '{' && i + 1 < pattern.size() && pattern[i + 1] == '{') ++i;
      out += pattern[i];
    }
  }
  return out;
}

std::string sentence(const Message& m) {
  std::string out = english(m);
  if (out.empty() || out.front() < 'a' || out.front() > 'z') return out;
  const bool is_named = m.text->other.starts_with('{') && !out.starts_with("the ");
  if (!is_named) out.front() = static_cast<char>(out.front() - 'a' + 'A');
  return out;
}

std::string english(const Problem& p) {
  std::string out = p.file;
  if (p.line > 0) {
    if (!out.empty()) out += ':';
    out += std::to_string(p.line) + ":" + std::to_string(p.column);
  }
  if (!out.empty()) out += ": ";
  if (!p.path.empty()) out += p.path + ": ";
  return out + english(p.message);
}

} // namespace snug
