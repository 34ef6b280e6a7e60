#pragma once
// RFC 4180 tables for tests. The first record names the columns.

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace snug::test {

using CsvRow = std::map<std::string, std::string, std::less<>>;

// The records of a CSV text. LF and CRLF end a record. Throws std::runtime_error for a quote that is never
// closed, text after a closing quote, a quote inside a bare field, or a record with another number of fields.
std::vector<CsvRow> parse_csv(std::string_view text);
// Reads a whole file; throws where it cannot.
std::vector<CsvRow> read_csv(const std::string& path);
// tests/data/checks/NAME
std::vector<CsvRow> read_checks(const std::string& name);
// The whitespace-separated words of a field.
std::vector<std::string> words(std::string_view field);

} // namespace snug::test
