#pragma once
// Where in a text something stands. Used only once a problem is known, so that reading well-formed documents
// costs nothing for it.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace snug::detail {

struct TextPlace {
  int line = 0;   // 1-based; 0: not found
  int column = 0; // 1-based, in characters
};

// `offset` in octets, at most text.size(). A line ends with LF, or with CR that no LF follows.
TextPlace place_at(std::string_view text, std::size_t offset);

// The offset of the value that `pointer` (RFC 6901) names, or of its key; `occurrence` counts from 1 where an
// object has a key more than once. "" is the whole document. Nothing when the text ends or is ill-formed
// before it.
enum class Part { value, key };
std::optional<std::size_t> find_pointer(std::string_view text, std::string_view pointer,
                                        Part part = Part::value, int occurrence = 1);

} // namespace snug::detail
