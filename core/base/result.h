#pragma once
// Expected failures are values with a sentence for the person; bugs assert (STYLE 9).

#include "core/base/message.h"

#include <string>
#include <tl/expected.hpp>
#include <utility>

namespace snug {

// What went wrong. `file`, `line` (1-based), `column` (1-based, in characters of the line) and `path`
// (JSON Pointer, RFC 6901) are set where the problem lies in a file; line 0 means "no position".
struct Problem {
  Message message;
  std::string file;
  int line = 0;
  int column = 0;
  std::string path;
};

template <typename T>
using Result = tl::expected<T, Problem>;

template <typename... A>
tl::unexpected<Problem> fail(const Template& t, A&&... args) {
  return tl::unexpected<Problem>(Problem{say(t, std::forward<A>(args)...), {}, 0, 0, {}});
}
inline tl::unexpected<Problem> fail(Problem p) { return tl::unexpected<Problem>(std::move(p)); }

// "lab.snuglab:12:8: machines/3/memory: <sentence>" with the parts that are known.
std::string english(const Problem&);
// The same without the sentence; empty where no place is known.
std::string place_of(const Problem&);

} // namespace snug
