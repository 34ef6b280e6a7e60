#pragma once
// Text without what no output may hold (RELIABILITY rows 21, 22, 26).

#include <string>
#include <string_view>

namespace snug {

// Text that every format can hold, on one line. The result is UTF-8 (RFC 3629) and every character of it is a
// Char of XML 1.0 (production 2). Bytes that are not UTF-8 become U+FFFD each. Taken out: controls (U+0000 to
// 001F, 007F to 009F), noncharacters (U+FDD0 to FDEF, the last two of every plane), surrogates written as
// three bytes, direction controls (U+061C, 200E, 200F, 202A to 202E, 2066 to 2069; CVE-2021-42574) and
// U+FEFF. Tab, line breaks (LF, CR, CR LF, VT, FF, U+0085, 2028, 2029) become one space each. Cleaning twice
// changes nothing.
std::string clean(std::string_view text);
// The same, but every line break becomes LF.
std::string clean_lines(std::string_view text);

} // namespace snug
