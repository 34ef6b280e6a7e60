#include "tests/support/colour.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace snug::test {

namespace {

using Row = std::array<double, 3>;
using Matrix = std::array<Row, 3>;

Row times(const Matrix& m, const Row& v) {
  Row out{};
  for (std::size_t i = 0; i < 3; ++i) out[i] = m[i][0] * v[0] + m[i][1] * v[1] + m[i][2] * v[2];
  return out;
}

// Machado and others 2009, table of severity 1.0, on linear RGB; from memory.
const Matrix& matrix_of(Sight s) {
  static const Matrix usual{Row{1, 0, 0}, Row{0, 1, 0}, Row{0, 0, 1}};
  static const Matrix protan{Row{0.152286, 1.052583, -0.204868}, Row{0.114503, 0.786281, 0.099216},
                             Row{-0.003882, -0.048116, 1.051998}};
  static const Matrix deutan{Row{0.367322, 0.860646, -0.227968}, Row{0.280085, 0.672501, 0.047413},
                             Row{-0.011820, 0.042940, 0.968881}};
  static const Matrix tritan{Row{1.255528, -0.076749, -0.178779}, Row{-0.078411, 0.930809, 0.147602},
                             Row{0.004733, 0.691367, 0.303900}};
  return s == Sight::protan ? protan : s == Sight::deutan ? deutan : s == Sight::tritan ? tritan : usual;
}

double radians(double degrees) { return degrees * std::numbers::pi / 180; }

double hue(double a, double b) {
  if (a == 0 && b == 0) return 0;
  const double h = std::atan2(b, a) * 180 / std::numbers::pi;
  return h < 0 ? h + 360 : h;
}

double seventh(double c) { return std::sqrt(std::pow(c, 7) / (std::pow(c, 7) + std::pow(25.0, 7))); }

// Difference of hues in degrees, -180 … 180, and their mean on the shorter way.
struct Hues {
  double difference = 0, mean = 0;
};
Hues hues(double h1, double h2, bool grey) {
  if (grey) return {0, h1 + h2};
  double d = h2 - h1;
  if (d > 180) d -= 360;
  if (d < -180) d += 360;
  double mean = (h1 + h2) / 2;
  if (std::abs(h1 - h2) > 180) mean += h1 + h2 < 360 ? 180 : -180;
  return {d, mean};
}

} // namespace

Cielab cielab(std::uint32_t rgb, Sight sight) {
  Row v{};
  for (std::size_t i = 0; i < 3; ++i) {
    const double c = ((rgb >> (16U - 8U * static_cast<unsigned>(i))) & 0xffU) / 255.0;
    v[i] = c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); // IEC 61966-2-1
  }
  v = times(matrix_of(sight), v);
  for (double& c : v) c = std::clamp(c, 0.0, 1.0);
  // IEC 61966-2-1, D65
  static const Matrix xyz{Row{0.4124, 0.3576, 0.1805}, Row{0.2126, 0.7152, 0.0722},
                          Row{0.0193, 0.1192, 0.9505}};
  const Row at = times(xyz, v);
  const auto f = [](double t) { return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116; };
  const double x = f(at[0] / 0.95047), y = f(at[1]), z = f(at[2] / 1.08883);
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

// The steps and names of Sharma, Wu, Dalal 2005.
double ciede2000(const Cielab& one, const Cielab& two) {
  const double g = 0.5 * (1 - seventh((std::hypot(one.a, one.b) + std::hypot(two.a, two.b)) / 2));
  const double a1 = (1 + g) * one.a, a2 = (1 + g) * two.a;
  const double c1 = std::hypot(a1, one.b), c2 = std::hypot(a2, two.b);
  const Hues h = hues(hue(a1, one.b), hue(a2, two.b), c1 * c2 == 0);
  const double dl = two.l - one.l, dc = c2 - c1;
  const double dh = 2 * std::sqrt(c1 * c2) * std::sin(radians(h.difference / 2));
  const double l = (one.l + two.l) / 2, c = (c1 + c2) / 2;
  const double t = 1 - 0.17 * std::cos(radians(h.mean - 30)) + 0.24 * std::cos(radians(2 * h.mean)) +
                   0.32 * std::cos(radians(3 * h.mean + 6)) - 0.20 * std::cos(radians(4 * h.mean - 63));
  const double sl = 1 + 0.015 * (l - 50) * (l - 50) / std::sqrt(20 + (l - 50) * (l - 50));
  const double sc = 1 + 0.045 * c, sh = 1 + 0.015 * c * t;
  const double turn = 30 * std::exp(-std::pow((h.mean - 275) / 25, 2));
  const double rt = -2 * seventh(c) * std::sin(radians(2 * turn));
  return std::sqrt(std::pow(dl / sl, 2) + std::pow(dc / sc, 2) + std::pow(dh / sh, 2) +
                   rt * (dc / sc) * (dh / sh));
}

} // namespace snug::test
