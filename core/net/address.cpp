#include "core/net/address.h"

#include "core/base/quote.h"
#include "core/net/address_read.h"

#include <array>

namespace snug {

namespace {

using Fields = std::array<std::uint16_t, 8>;

bool read_v4(std::string_view s, std::uint32_t& out) {
  std::size_t i = 0;
  std::uint32_t value = 0;
  for (int part = 0; part < 4; ++part) {
    if (part > 0 && (i >= s.size() || s[i++] != '.')) return false;
    const std::size_t start = i;
    std::uint32_t octet = 0;
    for (; i < s.size() && is_digit(s[i]) && i - start < 4; ++i)
      octet = octet * 10 + static_cast<std::uint32_t>(s[i] - '0');
    const std::size_t digits = i - start;
    if (digits == 0 || octet > 255 || (digits > 1 && s[start] == '0')) return false;
    value = (value << 8U) | octet;
  }
  out = value;
  return i == s.size();
}

// RFC 4291 2.2: fields of one to four digits, "::" at most once, a dotted IPv4 address as the last two
// fields.
struct V6Reader {
  std::string_view s;
  std::size_t i = 0;
  Fields fields{};
  std::size_t count = 0;
  std::size_t gap = kNoGap;
  static constexpr std::size_t kNoGap = 99;

  bool read_field() {
    const std::size_t start = i;
    unsigned value = 0;
    for (; i < s.size() && i - start < 5; ++i) {
      const int digit = hex_value(s[i]);
      if (digit < 0) break;
      value = value * 16 + static_cast<unsigned>(digit);
    }
    if (i < s.size() && s[i] == '.') return read_dotted(start);
    if (i == start || i - start > 4 || count == 8) return false;
    fields[count++] = static_cast<std::uint16_t>(value);
    return true;
  }

  bool read_dotted(std::size_t start) {
    std::uint32_t v4 = 0;
    if (count > 6 || !read_v4(s.substr(start), v4)) return false;
    fields[count++] = static_cast<std::uint16_t>(v4 >> 16U);
    fields[count++] = static_cast<std::uint16_t>(v4 & 0xffffU);
    i = s.size();
    return true;
  }

  bool read_colons() {
    if (s[i++] != ':' || i == s.size()) return false;
    if (s[i] != ':') return true;
    if (gap != kNoGap) return false;
    gap = count;
    ++i;
    return true;
  }

  bool read() {
    if (s.starts_with("::")) gap = 0, i = 2;
    while (i < s.size()) {
      if (!read_field()) return false;
      if (i < s.size() && !read_colons()) return false;
    }
    return gap == kNoGap ? count == 8 : count < 8;
  }

  Address address() const {
    Fields full{};
    const std::size_t before = gap == kNoGap ? count : gap;
    for (std::size_t k = 0; k < before; ++k) full[k] = fields[k];
    for (std::size_t k = before; k < count; ++k) full[8 - count + k] = fields[k];
    std::uint64_t high = 0, low = 0;
    for (std::size_t k = 0; k < 4; ++k) high = (high << 16U) | full[k], low = (low << 16U) | full[k + 4];
    return Address::v6(high, low);
  }
};

struct Run {
  std::size_t start = 0;
  std::size_t length = 0;
};

// RFC 5952 4.2: the longest run of zero fields, the first of equals, at least two.
Run longest_zeros(const Fields& f) {
  Run best, now;
  for (std::size_t k = 0; k < f.size(); ++k) {
    if (f[k] != 0) {
      now = {};
      continue;
    }
    if (now.length == 0) now.start = k;
    if (++now.length > best.length) best = now;
  }
  return best.length >= 2 ? best : Run{};
}

char* write_decimal(char* p, std::uint32_t n) { // n ≤ 255
  if (n >= 100) *p++ = static_cast<char>('0' + n / 100);
  if (n >= 10) *p++ = static_cast<char>('0' + n / 10 % 10);
  *p++ = static_cast<char>('0' + n % 10);
  return p;
}

char* write_v4(char* p, std::uint32_t a) {
  for (unsigned shift = 32; shift > 0;) {
    shift -= 8;
    p = write_decimal(p, (a >> shift) & 0xffU);
    if (shift > 0) *p++ = '.';
  }
  return p;
}

char* write_field(char* p, unsigned field) {
  static constexpr std::string_view kDigits = "0123456789abcdef";
  bool started = false;
  for (unsigned shift = 16; shift > 0;) {
    shift -= 4;
    const unsigned digit = (field >> shift) & 0xfU;
    started = started || digit != 0 || shift == 0;
    if (started) *p++ = kDigits[digit];
  }
  return p;
}

bool ends_dotted(const Address& a, const Run& zeros) {
  const bool translated = a.high() == 0x0064'ff9b'0000'0000ULL && a.low() >> 32U == 0;
  const bool mapped = a.high() == 0 && a.low() >> 32U == 0xffffU;
  const bool compatible = zeros.start == 0 && zeros.length == 6;
  return translated || mapped || compatible;
}

char* write_v6(char* p, const Address& a, bool may_be_dotted) {
  Fields f{};
  for (std::size_t k = 0; k < 4; ++k) {
    const auto shift = static_cast<unsigned>(48 - 16 * k);
    f[k] = static_cast<std::uint16_t>(a.high() >> shift);
    f[k + 4] = static_cast<std::uint16_t>(a.low() >> shift);
  }
  Run zeros = longest_zeros(f);
  const std::size_t end = may_be_dotted && ends_dotted(a, zeros) ? 6 : 8;
  if (zeros.start + zeros.length > end) zeros.length = end - zeros.start;
  for (std::size_t k = 0; k < end;) {
    if (zeros.length > 0 && k == zeros.start) {
      *p++ = ':', *p++ = ':';
      k += zeros.length;
      continue;
    }
    if (k > 0 && !(zeros.length > 0 && k == zeros.start + zeros.length)) *p++ = ':';
    p = write_field(p, f[k++]);
  }
  if (end == 8) return p;
  if (zeros.start + zeros.length != end) *p++ = ':';
  return write_v4(p, a.as_u32());
}

} // namespace

std::optional<Address> Address::plus(std::int64_t n) const {
  const std::uint64_t size = n < 0 ? ~static_cast<std::uint64_t>(n) + 1 : static_cast<std::uint64_t>(n);
  const Bits128 step{0, size}, most = Bits128::ones(bits());
  if (n < 0) {
    if (value() < step) return std::nullopt;
    return of(family_, value() - step);
  }
  if (most - value() < step) return std::nullopt;
  return of(family_, value() + step);
}

bool is_ipv4_text(std::string_view s) {
  std::uint32_t ignored = 0;
  return read_v4(s, ignored);
}

std::optional<Address> read_address(std::string_view s) {
  std::uint32_t v4 = 0;
  if (read_v4(s, v4)) return Address::v4(v4);
  V6Reader v6{s};
  if (s.find(':') == std::string_view::npos || !v6.read()) return std::nullopt;
  return v6.address();
}

Result<Address> parse_address(std::string_view s) {
  if (const auto a = read_address(s)) return *a;
  return fail(address_problem(s));
}

void append_text(std::string& out, const Address& a, Dotted dotted) {
  std::array<char, 48> buffer;
  const char* end = a.is_v4() ? write_v4(buffer.data(), a.as_u32())
                              : write_v6(buffer.data(), a, dotted == Dotted::where_recommended);
  out.append(buffer.data(), static_cast<std::size_t>(end - buffer.data()));
}

void append_text(std::string& out, const Address& a) { append_text(out, a, Dotted::where_recommended); }

std::string to_text(const Address& a) {
  std::string out;
  append_text(out, a);
  return out;
}

} // namespace snug
