#pragma once
// How alike two words are: what was probably meant by a misspelt one.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace snug {

// The least number of letters put in, left out, changed or swapped with their neighbour that turns one word
// into the other (optimal string alignment). Octets, not characters.
std::size_t letters_apart(std::string_view a, std::string_view b);

// How many letters may be wrong in a word that somebody typed: one below five, two from there on.
std::size_t letters_forgiven(std::string_view typed);

// The first of the nearest among `words` that is not `typed` itself and within `letters_forgiven` of it;
// empty when none is, or when `typed` is longer than 64 octets.
std::string nearest_word(std::string_view typed, std::span<const std::string> words);

} // namespace snug
