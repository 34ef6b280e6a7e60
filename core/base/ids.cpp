#include "core/base/ids.h"

#include "core/text/base_text.h"

#include <array>
#include <charconv>

namespace snug {

namespace {

struct Row {
  Kind kind;
  char letter;
  std::string_view word;
};
constexpr std::array<Row, kKindCount> kRows{{{Kind::none, 0, "none"},
                                             {Kind::lab, 0, "lab"},
                                             {Kind::pc, 0, "pc"},
                                             {Kind::numbering, 0, "numbering"},
                                             {Kind::rules, 0, "rules"},
                                             {Kind::volume, 'v', "volume"},
                                             {Kind::lan, 'l', "lan"},
                                             {Kind::place, 'p', "place"},
                                             {Kind::role, 'o', "role"},
                                             {Kind::segment, 's', "segment"},
                                             {Kind::machine, 'm', "machine"},
                                             {Kind::card, 'c', "card"},
                                             {Kind::disk, 'd', "disk"},
                                             {Kind::share, 'h', "share"},
                                             {Kind::exercise, 'e', "exercise"},
                                             {Kind::promise, 'q', "promise"},
                                             {Kind::accepted, 'a', "accepted"},
                                             {Kind::outside, 0, "outside"},
                                             {Kind::everyone, 0, "everyone"}}};

} // namespace

char letter_of(Kind k) { return kRows[static_cast<std::size_t>(k)].letter; }

std::string to_text(AnyId id) {
  const Row& row = kRows[static_cast<std::size_t>(id.kind)];
  if (row.letter == 0) return std::string(row.word);
  return row.letter + std::to_string(id.number);
}

Result<AnyId> parse_id(std::string_view s) {
  for (const Row& row : kRows) {
    if (row.letter == 0 && row.kind != Kind::none && s == row.word) return AnyId{row.kind, 0};
    if (row.letter == 0 || s.size() < 2 || s[0] != row.letter || s[1] < '1' || s[1] > '9') continue;
    std::uint32_t n = 0;
    const auto [end, error] = std::from_chars(s.data() + 1, s.data() + s.size(), n);
    if (error == std::errc{} && end == s.data() + s.size() && n <= kMaxIdNumber) return AnyId{row.kind, n};
  }
  return fail(text::id_form, s);
}

} // namespace snug
