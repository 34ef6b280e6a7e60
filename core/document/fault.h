#pragma once
// A problem inside a document before its line and column are known.

#include "core/base/result.h"
#include "core/document/locate.h"

namespace snug::detail {

struct Spot {
  std::string pointer; // RFC 6901
  Part part = Part::value;
  int occurrence = 1;
};
struct Fault {
  Message message;
  Spot spot;
  // The other place of something that stands twice; its words become the message's last argument.
  std::optional<Spot> first;
};

// With line, column and path. `text` is what was read; empty: no positions, paths only.
Problem located(Fault fault, std::string_view text, std::string_view file_name);
// A problem at an octet of the text, without a path.
Problem problem_at(Message message, std::string_view text, std::size_t offset, std::string_view file_name);
// What the parser stumbled over, in words; `offset` is of the octet it read last (text.size(): the end).
Problem syntax_problem(std::string_view text, std::size_t offset, std::string_view token,
                       std::string_view file_name);

} // namespace snug::detail
