#pragma once
// CRC-32C (Castagnoli), the checksum of iSCSI: RFC 3720 section 12.1 and appendix B.4. Finds damage, not
// intent.

#include <cstdint>
#include <string_view>

namespace snug {

std::uint32_t crc32c(std::string_view bytes);

} // namespace snug
