#pragma once
// Values as people type them into one line.

#include "core/base/message.h"
#include "core/model/field.h"

#include <optional>

namespace snug {

// Fields of one line: everything but lists and rows.
bool is_one_line(const FieldInfo&);
// What stands in the line: "3.5 GiB", "172.22.10.12", "2027-02-14"; empty for what is not set. Choices by
// their word, booleans "yes" and "no", ids by their text ("m12").
std::string line_of(const FieldInfo&, const Value&);
// The other way; blanks around it do not matter. Empty: not set, refused where the field must have a value.
// Memory and disk as parse_mib reads them, hundredths with a decimal separator, percent with or without sign.
// Refuses with the reason; what comes back passes check().
Result<Value> value_of_line(const FieldInfo&, std::string_view line);
// How a size is understood while it is typed: "= 4 GiB", and where the unit was left out, how the other one
// is written. Nothing for other fields, for what is refused and for what stands there as it will be shown.
std::optional<Message> echo_of_line(const FieldInfo&, std::string_view line);
// After it was taken: where a small number without unit may have been meant as GiB, what it became and how
// the other is written.
std::optional<Message> bare_size(const FieldInfo&, std::string_view line);

} // namespace snug
