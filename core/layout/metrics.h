#pragma once
// Distances of the diagram in pixels, and text that fits.

#include "core/layout/drawing.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace snug::layout {

inline constexpr int kMargin = 20;    // around everything
inline constexpr int kCardGap = 16;   // between cards in a row
inline constexpr int kGuestGap = 10;  // between cards in a room
inline constexpr int kRowGap = 28;    // below the rails of a row
inline constexpr int kPinInset = 16;  // of the outermost pin from the card's corner
inline constexpr int kPinPitch = 20;  // smallest distance of two wires
inline constexpr int kMostPitch = 40; // widest, where a card has room
inline constexpr int kPinDrop = 20;   // from the cards to the first rail's slot
inline constexpr int kLabelGap = 6;   // from a wire to its label, and behind the label
inline constexpr int kLine = 12;      // of small text
inline constexpr int kSquare = 14;    // side
inline constexpr int kLaneGap = 12;   // between lines outside the frame and between risers
inline constexpr int kNameStep = 24;  // columns grow in steps, so that cards keep their place
inline constexpr int kMinFrame = 720; // width
inline constexpr int kCardCap = 216;  // widest text on a card

// Sizes of text.
inline constexpr int kSmall = 10;
inline constexpr int kPlain = 11;
inline constexpr int kName = 12;
inline constexpr int kTitle = 13;

// Pixels, rounded up.
inline int width_of(std::string_view text, int size, Weight weight = Weight::regular) {
  return (text_width(text, size * kPixel, weight) + kPixel - 1) / kPixel;
}
inline int widest(const std::vector<std::string>& lines, int size) {
  int w = 0;
  for (const std::string& line : lines) w = std::max(w, width_of(line, size));
  return w;
}
// The text, or its beginning with "…" when it is wider than `most` pixels.
std::string fitted(std::string_view text, int size, Weight weight, int most);

// n rounded up to a multiple of `step`.
constexpr int stepped(int n, int step) { return (n + step - 1) / step * step; }

// How wide a row of cards may become: `base` for up to `few` cards, twice that for up to four times as many
// and so on, so that a picture stays about as wide as high.
constexpr int row_width(std::size_t cards, int base, std::size_t few) {
  while (cards > few && base < 1'000'000) {
    base *= 2;
    few *= 4;
  }
  return base;
}
inline constexpr int kPcRow = 1180;
inline constexpr std::size_t kPcFew = 12;
inline constexpr int kRoomRow = 320;
inline constexpr std::size_t kRoomFew = 16;

} // namespace snug::layout
