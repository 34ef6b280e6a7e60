#include "core/base/quote.h"
#include "core/net/address_read.h"
#include "core/net/prefix.h"
#include "core/text/net_text.h"

#include <bit>
#include <cassert>

namespace snug {

namespace {

std::optional<int> mask_length(std::uint32_t mask) {
  const int ones = std::countl_one(mask);
  if (std::countr_zero(mask) + ones < 32) return std::nullopt;
  return ones;
}

std::optional<AddressWithLength> read_with_length(std::string_view s) {
  const std::size_t slash = s.rfind('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const auto address = read_address(s.substr(0, slash));
  if (!address) return std::nullopt;
  const auto length = read_number(s.substr(slash + 1), address->bits());
  if (!length) return std::nullopt;
  return AddressWithLength{*address, *length};
}

int usual_length(const Address& a) { return a.is_v4() ? 24 : 64; }

std::string with_length(const Address& a, int length) { return to_text(a) + "/" + std::to_string(length); }

tl::unexpected<Problem> refuse_length(std::string_view all, const Address& a, std::string_view length) {
  const std::string most = std::to_string(a.bits());
  if (length.empty())
    return fail(text::prefix_length_missing, excerpt(all), to_text(a), std::to_string(usual_length(a)));
  if (a.is_v4() && is_ipv4_text(length))
    if (const auto n = mask_length(read_address(length)->as_u32()))
      return fail(text::prefix_length_mask, excerpt(all), with_length(a, *n));
  if (length.find_first_not_of("0123456789") != std::string_view::npos)
    return fail(text::prefix_length_form, excerpt(all), excerpt(length), most);
  const std::string_view number = length.substr(std::min(length.find_first_not_of('0'), length.size() - 1));
  if (read_number(number, a.bits()))
    return fail(text::prefix_length_zero, excerpt(all), excerpt(length), number);
  return fail(text::prefix_length_large, excerpt(all), excerpt(length), a.is_v4() ? "IPv4" : "IPv6", most);
}

tl::unexpected<Problem> refuse(std::string_view typed) {
  const std::string_view s = trimmed(typed);
  if (s.empty()) return fail(text::prefix_empty);
  if (s.size() != typed.size() && read_with_length(s)) return fail(text::address_spaces, excerpt(typed), s);
  const std::size_t slash = s.find('/');
  const std::string_view before = s.substr(0, slash);
  const auto address = read_address(before);
  if (!address)
    return fail(before.empty() ? Problem{say(text::prefix_empty), {}, 0, 0, {}} : address_problem(before));
  if (slash == std::string_view::npos)
    return fail(text::prefix_no_length, excerpt(s), std::to_string(usual_length(*address)));
  return refuse_length(s, *address, s.substr(slash + 1));
}

} // namespace

Result<AddressWithLength> parse_address_with_length(std::string_view s) {
  if (const auto a = read_with_length(s)) return *a;
  return refuse(s);
}

Result<Prefix> parse_prefix(std::string_view s) {
  const auto a = read_with_length(s);
  if (!a) return refuse(s);
  const Prefix p = Prefix::of(a->address, a->length);
  if (p.network() != a->address) return fail(text::prefix_host_bits, excerpt(s), to_text(p));
  return p;
}

void append_text(std::string& out, const Prefix& p) {
  append_text(out, p.network(), p.length() > 96 ? Dotted::where_recommended : Dotted::never);
  out += '/';
  const int n = p.length();
  if (n >= 100) out += static_cast<char>('0' + n / 100);
  if (n >= 10) out += static_cast<char>('0' + n / 10 % 10);
  out += static_cast<char>('0' + n % 10);
}

std::string to_text(const Prefix& p) {
  std::string out;
  append_text(out, p);
  return out;
}

Result<int> parse_mask(std::string_view s) {
  auto address = parse_address(s);
  if (!address) return fail(std::move(address.error()));
  if (!address->is_v4()) return fail(text::mask_family, excerpt(s));
  const std::uint32_t mask = address->as_u32();
  if (const auto length = mask_length(mask)) return *length;
  if (const auto length = mask_length(~mask))
    return fail(text::mask_inverted, excerpt(s), mask_text(*length));
  return fail(text::mask_not_contiguous, excerpt(s));
}

std::string mask_text(int length) {
  assert(length >= 0 && length <= 32);
  return to_text(Prefix::of(Address{}, length).mask());
}

} // namespace snug
