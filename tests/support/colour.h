#pragma once
// How far apart two colours look, also for people who see fewer: CIEDE2000 (CIE 142-2001; Sharma, Wu, Dalal
// 2005) and the simulations of Machado, Oliveira, Fernandes 2009 at full severity.

#include <array>
#include <cstdint>

namespace snug::test {

enum class Sight { usual, protan, deutan, tritan };
inline constexpr std::array kSights{Sight::usual, Sight::protan, Sight::deutan, Sight::tritan};

struct Cielab {
  double l = 0, a = 0, b = 0; // CIELAB, D65
};

Cielab cielab(std::uint32_t rgb, Sight);
double ciede2000(const Cielab&, const Cielab&);

} // namespace snug::test
