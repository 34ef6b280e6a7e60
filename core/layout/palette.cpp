#include "core/layout/palette.h"

namespace snug {

namespace {

struct Row {
  Ink ink;
  std::uint32_t light, dark, print;
};

constexpr std::array<Row, kInkCount> kRows{{
    {Ink::none, 0x000000, 0x000000, 0x000000},      {Ink::sheet, 0xfbf9f3, 0x101317, 0xffffff},
    {Ink::outside, 0xfbf9f3, 0x171a1f, 0xffffff},   {Ink::inside, 0xfffdf9, 0x20252c, 0xffffff},
    {Ink::card, 0xfffdf9, 0x20252c, 0xffffff},      {Ink::room, 0xfbf9f3, 0x171a1f, 0xffffff},
    {Ink::text, 0x1b2430, 0xe8e6df, 0x000000},      {Ink::muted, 0x5c6875, 0xa3adb8, 0x404040},
    {Ink::edge, 0xb3ab98, 0x566170, 0x404040},      {Ink::frame, 0x7d7665, 0x98a2ae, 0x000000},
    {Ink::track, 0xe6e1d5, 0x39424d, 0xe6e6e6},     {Ink::bar, 0x5c6875, 0xa3adb8, 0x404040},
    {Ink::inner_bar, 0x4628a2, 0xccb4fc, 0x202020}, {Ink::hatch, 0xb9b19d, 0x5b6672, 0x808080},
    {Ink::block, 0xdfe6ec, 0x39424d, 0xf0f0f0},     {Ink::room_block, 0xe2daf3, 0x40375c, 0xdcdcdc},
    {Ink::on_fill, 0xffffff, 0x14171b, 0xffffff},   {Ink::amber, 0x533607, 0xf7cd8f, 0x000000},
    {Ink::moss, 0x24840d, 0x6e9b3b, 0x000000},      {Ink::lagoon, 0x014037, 0xb5eee2, 0x000000},
    {Ink::cobalt, 0x3f69de, 0x6788e1, 0x000000},    {Ink::violet, 0x4628a2, 0xccb4fc, 0x000000},
    {Ink::berry, 0x9b1653, 0xd56c84, 0x000000},     {Ink::slate, 0x5c6875, 0xa3adb8, 0x404040},
    {Ink::error, 0x8c0d0d, 0xe95f3b, 0x000000},     {Ink::caution, 0x936c15, 0xfecd42, 0x404040},
    {Ink::ok, 0x0f614b, 0x51a087, 0x000000},        {Ink::info, 0x236fdd, 0x9cd4ff, 0x404040},
}};

constexpr bool rows_in_order() {
  for (std::size_t i = 0; i < kRows.size(); ++i)
    if (static_cast<std::size_t>(kRows[i].ink) != i) return false;
  return true;
}
static_assert(rows_in_order());

constexpr Palette make(std::uint32_t Row::*column) {
  Palette p;
  for (std::size_t i = 0; i < kRows.size(); ++i) p.rgb[i] = kRows[i].*column;
  return p;
}

constexpr std::array<Palette, 3> kPalettes{make(&Row::light), make(&Row::dark), make(&Row::print)};

} // namespace

const Palette& palette(Theme t) { return kPalettes[static_cast<std::size_t>(t)]; }

DashPattern dash_pattern(Dash d) {
  switch (d) {
  case Dash::solid:
    return {};
  case Dash::ticks:
    return {{20, 180}, 2};
  case Dash::dots:
    return {{30, 30}, 2};
  case Dash::long_dash:
    return {{180, 50}, 2};
  case Dash::dash_dot:
    return {{140, 40, 35, 40}, 4};
  case Dash::dash:
    return {{100, 50}, 2};
  case Dash::short_dash:
    return {{55, 35}, 2};
  case Dash::wire:
    return {{50, 35}, 2};
  case Dash::fine:
    return {{20, 40}, 2};
  }
  return {};
}

} // namespace snug
