#pragma once
// Several addresses of the table at once, as edits.

#include "core/edit/build.h"

#include <span>
#include <string>
#include <vector>

namespace snug {

// One line of the table: an address of a card, or the place for its first.
struct AddressCell {
  CardId card;
  std::size_t row = 0; // of the card's addresses
  friend bool operator==(const AddressCell&, const AddressCell&) = default;
};

// The lines of a pasted text. Of several columns (tabs, semicolons or commas) the first that is an address
// counts.
std::vector<std::string> pasted_addresses(std::string_view text);
// As set_address() one after the other; both lists are equally long. Refused as a whole where one does not
// fit, with its line and the reason.
Result<Edit> set_addresses(const Lab&, std::span<const AddressCell>, std::span<const std::string> typed);
// The cells behind the first get the numbers behind its address; numbers that others have on the segment, and
// those that are no host of its prefix, are left out. Refused where the first has no address or the family's
// numbers end.
Result<Edit> number_on(const Lab&, std::span<const AddressCell>);
// What was typed there gives way to suggestions.
Edit suggest_again(const Lab&, std::span<const AddressCell>);

} // namespace snug
