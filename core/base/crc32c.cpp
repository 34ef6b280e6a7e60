#include "core/base/crc32c.h"

#include <array>

namespace snug {

namespace {

constexpr std::uint32_t kPolynomial = 0x82f63b78; // 0x1edc6f41, lowest bit first

constexpr std::array<std::uint32_t, 256> table() {
  std::array<std::uint32_t, 256> out{};
  for (std::uint32_t i = 0; i < out.size(); ++i) {
    std::uint32_t rest = i;
    for (int bit = 0; bit < 8; ++bit) rest = (rest >> 1U) ^ ((rest & 1U) != 0 ? kPolynomial : 0U);
    out[i] = rest;
  }
  return out;
}
constexpr std::array<std::uint32_t, 256> kTable = table();

} // namespace

std::uint32_t crc32c(std::string_view bytes) {
  std::uint32_t rest = 0xffff'ffff;
  for (const char c : bytes) rest = (rest >> 8U) ^ kTable[(rest ^ static_cast<unsigned char>(c)) & 0xffU];
  return rest ^ 0xffff'ffff;
}

} // namespace snug
