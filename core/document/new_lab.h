#pragma once
// Where labs begin (DECISIONS 9).

#include "core/model/lab.h"

#include <string>

namespace snug {

// 32 hexadecimal digits from the system's source of randomness: the only randomness there is.
std::string random_uid();
// A PC with nothing on it, everything else as usual.
Lab blank_lab(std::string uid);
// A copy that is a lab of its own: new identity; derived MAC addresses and, where the lab has a private IPv6
// prefix (RFC 4193), that prefix and every address in it follow the identity. What a person typed stays.
Lab copy_as_template(const Lab& lab, std::string uid);

} // namespace snug
