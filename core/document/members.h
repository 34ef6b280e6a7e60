#pragma once
// JSON text taken apart one level deep, so that each part goes to the reader that knows it.

#include "core/base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace snug::detail {

struct Member {
  std::string key;       // empty in lists
  std::string_view text; // the value as it stands, within the text taken apart
};

// The members of an object, the entries of a list. Refused, without a position: ill-formed JSON, a key that
// stands twice anywhere in it, more levels than a document with a few around it, another kind of value.
Result<std::vector<Member>> members_of(std::string_view object);
Result<std::vector<Member>> entries_of(std::string_view list);

// A member's value as text or as a whole number, 0 or more; refused by the name of the member.
Result<std::string> text_in(const Member& m);
Result<std::uint64_t> number_in(const Member& m);

} // namespace snug::detail
