#pragma once
// SHA-1 (FIPS 180-4 6.1), only for the sample algorithm of RFC 4193 3.2.2; not for anything secret.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace snug {

using Sha1Digest = std::array<std::uint8_t, 20>;

Sha1Digest sha1(std::string_view bytes);
std::string to_text(const Sha1Digest&); // forty lower-case hexadecimal digits

} // namespace snug
