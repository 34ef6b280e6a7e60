#include "core/net/sha1.h"

#include <bit>

namespace snug {

namespace {

using State = std::array<std::uint32_t, 5>;

std::uint32_t mix(unsigned round, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
  if (round < 20) return ((b & c) | (~b & d)) + 0x5a827999U;
  if (round < 40) return (b ^ c ^ d) + 0x6ed9eba1U;
  if (round < 60) return ((b & c) | (b & d) | (c & d)) + 0x8f1bbcdcU;
  return (b ^ c ^ d) + 0xca62c1d6U;
}

void add_block(State& state, std::string_view block) {
  std::array<std::uint32_t, 80> w{};
  for (std::size_t i = 0; i < 64; ++i) w[i / 4] = (w[i / 4] << 8U) | static_cast<unsigned char>(block[i]);
  for (std::size_t i = 16; i < 80; ++i) w[i] = std::rotl(w[i - 3] ^ w[i - 8] ^ w[i - 14] ^ w[i - 16], 1);
  auto [a, b, c, d, e] = state;
  for (unsigned i = 0; i < 80; ++i) {
    const std::uint32_t next = std::rotl(a, 5) + mix(i, b, c, d) + e + w[i];
    e = d, d = c, c = std::rotl(b, 30), b = a, a = next;
  }
  state[0] += a, state[1] += b, state[2] += c, state[3] += d, state[4] += e;
}

} // namespace

Sha1Digest sha1(std::string_view bytes) {
  State state{0x67452301U, 0xefcdab89U, 0x98badcfeU, 0x10325476U, 0xc3d2e1f0U};
  std::size_t at = 0;
  for (; bytes.size() - at >= 64; at += 64) add_block(state, bytes.substr(at, 64));
  std::string tail(bytes.substr(at));
  tail += '\x80';
  while (tail.size() % 64 != 56) tail += '\0';
  const std::uint64_t bits = static_cast<std::uint64_t>(bytes.size()) * 8;
  for (unsigned shift = 64; shift > 0;) {
    shift -= 8;
    tail += static_cast<char>((bits >> shift) & 0xffU);
  }
  for (std::size_t i = 0; i < tail.size(); i += 64) add_block(state, std::string_view(tail).substr(i, 64));
  Sha1Digest out{};
  for (std::size_t i = 0; i < out.size(); ++i)
    out[i] = static_cast<std::uint8_t>(state[i / 4] >> static_cast<unsigned>(24 - 8 * (i % 4)));
  return out;
}

std::string to_text(const Sha1Digest& digest) {
  static constexpr std::string_view kDigits = "0123456789abcdef";
  std::string out;
  for (const std::uint8_t octet : digest) {
    out += kDigits[octet >> 4U];
    out += kDigits[octet & 0xfU];
  }
  return out;
}

} // namespace snug
