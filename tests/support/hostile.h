#pragma once
// Text that nobody should type: pieces of markup, formulas, controls, broken UTF-8, in random order.

#include <cstdint>
#include <random>
#include <string>

namespace snug::test {

// Any bytes but NUL, up to `most` of them.
std::string random_bytes(std::mt19937& random, std::size_t most);
// Up to twelve hostile pieces one after the other.
std::string hostile_label(std::mt19937& random);
// A piece that a spreadsheet would take for a formula, perhaps behind spaces or invisible marks.
std::string formula_payload(std::mt19937& random);
// Code point as UTF-8, surrogates too (as three bytes).
std::string utf8(char32_t code_point);

} // namespace snug::test
