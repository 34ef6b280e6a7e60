#include "core/layout/palette.h"

#include "tests/support/colour.h"

#include <gtest/gtest.h>

#include <cmath>
#include <span>

namespace snug {
namespace {

// WCAG 2.2, definition of relative luminance and contrast ratio.
double luminance(std::uint32_t rgb) {
  const auto channel = [rgb](unsigned shift) {
    const double c = ((rgb >> shift) & 0xffU) / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * channel(16) + 0.7152 * channel(8) + 0.0722 * channel(0);
}
double contrast(std::uint32_t a, std::uint32_t b) {
  const double x = luminance(a);
  const double y = luminance(b);
  return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

constexpr std::array kThemes{Theme::light, Theme::dark, Theme::print};
constexpr std::array kSegments{Ink::amber,  Ink::moss,  Ink::lagoon, Ink::cobalt,
                               Ink::violet, Ink::berry, Ink::slate};
constexpr std::array kSeverities{Ink::error, Ink::caution, Ink::ok, Ink::info};

TEST(Palette, ContrastOfBlackAndWhite) {
  EXPECT_NEAR(contrast(0x000000, 0xffffff), 21.0, 1e-9);  // WCAG 2.2: 1 to 21
  EXPECT_NEAR(contrast(0x777777, 0xffffff), 4.48, 0.005); // commonly cited: just fails 4.5
}

TEST(Palette, TextReachesFourAndAHalf) {
  for (const Theme theme : kThemes) {
    const Palette& p = palette(theme);
    for (const Ink surface : {Ink::outside, Ink::inside, Ink::card, Ink::room}) {
      std::vector<Ink> inks{Ink::text, Ink::muted};
      inks.insert(inks.end(), kSegments.begin(), kSegments.end());
      inks.insert(inks.end(), kSeverities.begin(), kSeverities.end());
      for (const Ink ink : inks)
        EXPECT_GE(contrast(p.of(ink), p.of(surface)), 4.5)
            << static_cast<int>(ink) << " on " << static_cast<int>(surface) << " in theme "
            << static_cast<int>(theme);
    }
    for (const Ink ink : {Ink::text, Ink::muted, Ink::error, Ink::caution}) // ruler, legend
      EXPECT_GE(contrast(p.of(ink), p.of(Ink::sheet)), 4.5)
          << static_cast<int>(ink) << " theme " << static_cast<int>(theme);
    for (const Ink block : {Ink::block, Ink::room_block})
      EXPECT_GE(contrast(p.of(Ink::text), p.of(block)), 4.5);
  }
}

TEST(Palette, LettersOnMarksReachFourAndAHalf) {
  for (const Theme theme : kThemes) {
    const Palette& p = palette(theme);
    for (const Ink ink : kSegments)
      EXPECT_GE(contrast(p.of(Ink::on_fill), p.of(ink)), 4.5) << static_cast<int>(ink);
    for (const Ink ink : kSeverities)
      EXPECT_GE(contrast(p.of(Ink::on_fill), p.of(ink)), 4.5) << static_cast<int>(ink);
  }
}

// WCAG 2.2 SC 1.4.11: what is needed to understand a graphic reaches 3:1.
TEST(Palette, LinesReachThree) {
  for (const Theme theme : kThemes) {
    const Palette& p = palette(theme);
    for (const Ink surface : {Ink::outside, Ink::inside})
      EXPECT_GE(contrast(p.of(Ink::frame), p.of(surface)), 3.0);
    for (const Ink bar : {Ink::bar, Ink::inner_bar}) EXPECT_GE(contrast(p.of(bar), p.of(Ink::track)), 3.0);
  }
}

// Sharma, Wu, Dalal 2005, table 1: pairs 1, 2, 7, 17, 25, 34; from memory.
TEST(Palette, DistanceIsThePublishedOne) {
  using test::ciede2000;
  EXPECT_NEAR(ciede2000({50, 2.6772, -79.7751}, {50, 0, -82.7485}), 2.0425, 5e-5);
  EXPECT_NEAR(ciede2000({50, 3.1571, -77.2803}, {50, 0, -82.7485}), 2.8615, 5e-5);
  EXPECT_NEAR(ciede2000({50, 0, 0}, {50, -1, 2}), 2.3669, 5e-5);
  EXPECT_NEAR(ciede2000({50, 2.5, 0}, {73, 25, -18}), 27.1492, 5e-5);
  EXPECT_NEAR(ciede2000({60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}), 1.2644, 5e-5);
  EXPECT_NEAR(ciede2000({2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}), 0.9082, 5e-5);
}

double nearest(const Palette& p, std::span<const Ink> inks, test::Sight sight) {
  double least = 1000;
  for (std::size_t a = 0; a < inks.size(); ++a)
    for (std::size_t b = a + 1; b < inks.size(); ++b)
      least = std::min(
          least, test::ciede2000(test::cielab(p.of(inks[a]), sight), test::cielab(p.of(inks[b]), sight)));
  return least;
}

// CONVENTIONS 4: smallest distances for usual, protan, deutan and tritan sight, found by another program.
TEST(Palette, ColoursStayApartForEverySight) {
  struct Expected {
    Theme theme;
    std::array<double, 4> segments, severities;
  };
  for (const Expected& e : {Expected{Theme::light, {14.8, 13.6, 13.9, 14.7}, {32.5, 15.7, 15.2, 17.9}},
                            Expected{Theme::dark, {15.5, 14.1, 13.9, 13.8}, {30.7, 17.5, 18.6, 17.8}}})
    for (std::size_t s = 0; s < test::kSights.size(); ++s) {
      EXPECT_NEAR(nearest(palette(e.theme), kSegments, test::kSights[s]), e.segments[s], 0.1) << s;
      EXPECT_NEAR(nearest(palette(e.theme), kSeverities, test::kSights[s]), e.severities[s], 0.1) << s;
    }
}

TEST(Palette, PrintIsGrey) {
  for (const std::uint32_t rgb : palette(Theme::print).rgb) {
    EXPECT_EQ(rgb >> 16U, rgb & 0xffU);
    EXPECT_EQ((rgb >> 8U) & 0xffU, rgb & 0xffU);
  }
}

TEST(Palette, PatternsDiffer) {
  for (int a = 0; a <= static_cast<int>(Dash::short_dash); ++a)
    for (int b = a + 1; b <= static_cast<int>(Dash::short_dash); ++b)
      EXPECT_NE(dash_pattern(static_cast<Dash>(a)).lengths, dash_pattern(static_cast<Dash>(b)).lengths);
}

} // namespace
} // namespace snug
