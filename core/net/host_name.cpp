#include "core/net/host_name.h"

#include "core/base/quote.h"
#include "core/net/limits.h"
#include "core/text/net_text.h"

#include <algorithm>

namespace snug {

namespace {

// Characters, counting each invalid byte as one.
std::int64_t characters(std::string_view s) {
  std::int64_t n = 0;
  for (std::size_t i = 0; i < s.size(); i += code_point_at(s, i).length) ++n;
  return n;
}

tl::unexpected<Problem> refuse_character(std::string_view label, std::size_t at) {
  switch (label[at]) {
  case '_':
    return fail(text::label_underscore, excerpt(label), host_label_from(label));
  case ' ':
    return fail(text::label_space, excerpt(label), host_label_from(label));
  case '.':
    return fail(text::label_dot, excerpt(label), host_label_from(label));
  default:
    return fail(text::label_character, excerpt(label), quoted_character(label, at));
  }
}

std::string_view without_final_dot(std::string_view name) {
  if (name.size() > 1 && name.ends_with('.')) name.remove_suffix(1);
  return name;
}

bool is_under(std::string_view name, std::string_view domain) {
  name = without_final_dot(name);
  if (name.size() < domain.size()) return false;
  const std::size_t start = name.size() - domain.size();
  return same_name(name.substr(start), domain) && (start == 0 || name[start - 1] == '.');
}

} // namespace

Result<void> check_host_label(std::string_view label) {
  if (label.empty()) return fail(text::label_empty);
  for (std::size_t i = 0; i < label.size(); ++i)
    if (!is_letter(label[i]) && !is_digit(label[i]) && label[i] != '-') return refuse_character(label, i);
  if (label.size() > kMaxLabel) return fail(text::label_long, excerpt(label), Count{characters(label)});
  if (label.front() == '-') return fail(text::label_hyphen_first, excerpt(label));
  if (label.back() == '-') return fail(text::label_hyphen_last, excerpt(label));
  return {};
}

Result<void> check_domain_name(std::string_view typed) {
  const std::string_view name = without_final_dot(typed);
  if (name.empty()) return fail(text::label_empty);
  if (name.size() > kMaxDomainName) return fail(text::domain_long, excerpt(name), Count{characters(name)});
  std::string_view label;
  for (std::size_t start = 0; start <= name.size(); start += label.size() + 1) {
    label = name.substr(start, name.find('.', start) - start);
    if (label.empty()) return fail(text::domain_empty_part, excerpt(typed));
    if (auto ok = check_host_label(label); !ok) return ok;
  }
  if (std::all_of(label.begin(), label.end(), is_digit)) return fail(text::domain_numeric, excerpt(typed));
  return {};
}

bool same_name(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return lower(x) == lower(y); });
}

std::string host_label_from(std::string_view free_text) {
  std::string out;
  for (const char c : free_text) {
    if (out.size() == kMaxLabel) break;
    if (is_letter(c) || is_digit(c))
      out += lower(c);
    else if (!out.empty() && out.back() != '-')
      out += '-';
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out.empty() ? "machine" : out;
}

bool is_offered_private_domain(std::string_view name) {
  return is_under(name, "home.arpa") || is_under(name, "test");
}

bool is_multicast_dns_domain(std::string_view name) { return is_under(name, "local"); }

bool is_localhost_name(std::string_view name) { return is_under(name, "localhost"); }

bool is_documentation_domain(std::string_view name) {
  return is_under(name, "example") || is_under(name, "example.com") || is_under(name, "example.net") ||
         is_under(name, "example.org");
}

} // namespace snug
