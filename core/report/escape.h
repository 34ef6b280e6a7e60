#pragma once
// The one place where text is cleaned and escaped for what the program writes (RELIABILITY rows 20 to 23, 26,
// 28). Every function but shell_quote cleans its argument first, so a caller never has to.

#include "core/base/clean.h"

#include <cstdint>
#include <map>
#include <string>
#include <string_view>

namespace snug {

// Cleaned, with & < > " ' as entities: content or quoted attribute of XML, SVG and HTML. One line.
std::string xml(std::string_view text);
std::string html(std::string_view text);

// Cleaned and trimmed text that CommonMark 0.30 with the common extensions (tables, strikethrough, autolinks,
// math) shows as it is, at the start of a block as well as inside a line or a table's cell: no emphasis,
// code, link, address that becomes a link, heading, list, quote, rule or HTML. One line. An @ that could make
// a link stands in a code span. Leave no backtick or backslash of your own right before it.
std::string markdown_text(std::string_view text);
// The same for a table's cell; an empty cell stays empty.
std::string markdown_cell(std::string_view text);

// One field of a CSV record (RFC 4180): quoted where it holds a comma, semicolon, quote, line break, or a
// space at an end; line breaks inside are LF. Text whose first character that can be seen is = + - @ or a
// look-alike of them (full width, small form, U+2212) gets an apostrophe before it, so that a spreadsheet
// takes it for text (OWASP "CSV Injection", CWE-1236). Records end in CR LF; that is the writer's part.
std::string csv_field(std::string_view text);
// One cell of a line whose cells stand between tabs: on one line, guarded as a CSV field is.
std::string tab_field(std::string_view text);
// A number as a number: digits and perhaps a minus, never guarded, never grouped.
std::string csv_number(std::int64_t number);

// One word of a POSIX shell (XCU 2.2.2): in single quotes, ' as '\''. Bytes stay what they are; NUL, which no
// shell word can hold, is left out. Text for a comment of a script is clean(text).
std::string shell_quote(std::string_view bytes);

// Bytes that a file name made here has at the most, extension included.
inline constexpr std::size_t kFileNameBytes = 120;

// Names for the files of one folder.
class FileNames {
 public:
  // A name made from free text: letters (Latin, Greek, Cyrillic, kana, Chinese, Korean), digits, space and
  // . _ ( ) + - only; what else stands there becomes "-". Never empty, never a path or a hidden file, no
  // option of a command, no reserved device name, no space or dot at the end, at most kFileNameBytes
  // (Microsoft "Naming Files, Paths, and Namespaces"). `extension` is the caller's own (".svg", at most 20
  // bytes of ASCII). A name that differs from an earlier one at most in case gets "-2", "-3" … before its
  // extension.
  std::string next(std::string_view text, std::string_view extension);

 private:
  std::map<std::string, std::int64_t> taken_; // folded name: the last number tried behind it
};

} // namespace snug
