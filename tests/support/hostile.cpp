#include "tests/support/hostile.h"

#include <array>
#include <string_view>

namespace snug::test {

namespace {

template <typename Pieces>
std::string pick(std::mt19937& random, const Pieces& pieces) {
  return std::string(pieces[std::uniform_int_distribution<std::size_t>(0, pieces.size() - 1)(random)]);
}

constexpr std::array<std::string_view, 46> kPieces{"<script>alert(1)</script>",
                                                   "<!--",
                                                   "-->",
                                                   "]]>",
                                                   "<![CDATA[",
                                                   "<?x?>",
                                                   "&amp;",
                                                   "&#x41;",
                                                   "&lt;",
                                                   "\"",
                                                   "'",
                                                   " onload='x'",
                                                   "</text>",
                                                   "\" href=\"http://203.0.113.1/",
                                                   "https://lab.example/",
                                                   "www.lab.example",
                                                   "a@lab.example",
                                                   "mailto:b@c.example",
                                                   "|",
                                                   "\\",
                                                   "\\|",
                                                   "`",
                                                   "``",
                                                   "**",
                                                   "_x_",
                                                   "~~",
                                                   "$x$",
                                                   "[a](b)",
                                                   "![",
                                                   "# ",
                                                   "- ",
                                                   "1. ",
                                                   "> ",
                                                   "```",
                                                   "---",
                                                   "===",
                                                   "{{",
                                                   "%s",
                                                   "\r\n",
                                                   "\n",
                                                   "\t",
                                                   "\x01",
                                                   "\x7f",
                                                   "\xff\xfe",
                                                   "Über",
                                                   "甲板"};

constexpr std::array<std::string_view, 11> kStarts{
    "=", "+", "-", "@", "\t=", "\r=", "\n@", "＝", "＋", "－", "＠"};
constexpr std::array<std::string_view, 6> kBefore{"", " ", "\u200b", "\ufeff", "\xc2\xa0", "\u202e"};
constexpr std::array<std::string_view, 6> kBodies{
    "1+1", "cmd|'/C x'!A0", "SUM(A1:A9)", "HYPERLINK(\"http://203.0.113.1\",\"x\")", "2,3;4", "\"\""};

} // namespace

std::string utf8(char32_t c) {
  const auto byte = [](char32_t b) { return static_cast<char>(static_cast<unsigned char>(b)); };
  if (c < 0x80) return {byte(c)};
  if (c < 0x800) return {byte(0xc0U | (c >> 6U)), byte(0x80U | (c & 0x3fU))};
  const char last = byte(0x80U | (c & 0x3fU));
  const char middle = byte(0x80U | ((c >> 6U) & 0x3fU));
  if (c < 0x10000) return {byte(0xe0U | (c >> 12U)), middle, last};
  return {byte(0xf0U | (c >> 18U)), byte(0x80U | ((c >> 12U) & 0x3fU)), middle, last};
}

std::string random_bytes(std::mt19937& random, std::size_t most) {
  std::string out(std::uniform_int_distribution<std::size_t>(0, most)(random), ' ');
  for (char& c : out) c = static_cast<char>(std::uniform_int_distribution<int>(1, 255)(random));
  return out;
}

std::string hostile_label(std::mt19937& random) {
  std::string out;
  const int pieces = std::uniform_int_distribution<int>(1, 12)(random);
  for (int i = 0; i < pieces; ++i) {
    const int kind = std::uniform_int_distribution<int>(0, 9)(random);
    if (kind == 0) {
      out += utf8(static_cast<char32_t>(std::uniform_int_distribution<std::uint32_t>(1, 0x10ffff)(random)));
    } else {
      out += kind == 1 ? random_bytes(random, 4) : pick(random, kPieces);
    }
  }
  return out;
}

std::string formula_payload(std::mt19937& random) {
  return pick(random, kBefore) + pick(random, kStarts) + pick(random, kBodies);
}

} // namespace snug::test
