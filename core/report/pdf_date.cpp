#include "core/report/pdf_date.h"

#include <algorithm>
#include <charconv>
#include <optional>
#include <string_view>

namespace snug {

namespace {

constexpr std::size_t kEntry = 20, kDigits = 10; // octets of an entry of the table, and of its offset
constexpr std::size_t kLongestDate = 48;         // octets of the entry, "(D:20270214093000+09'00')" included

std::optional<std::size_t> number_at(std::string_view text, std::size_t at) {
  std::size_t n = 0;
  if (at > text.size()) return std::nullopt;
  const auto [end, error] = std::from_chars(text.data() + at, text.data() + text.size(), n);
  return error == std::errc() ? std::optional(n) : std::nullopt;
}

// Where the first entry of the table stands, and how many there are; nothing where there is no such table.
struct Entries {
  std::size_t first = 0, count = 0;
};
std::optional<Entries> entries_of(std::string_view pdf, std::size_t table) {
  constexpr std::string_view kHead = "xref\n0 ";
  if (pdf.substr(std::min(table, pdf.size()), kHead.size()) != kHead) return std::nullopt;
  const auto count = number_at(pdf, table + kHead.size());
  const std::size_t line = pdf.find('\n', table + kHead.size());
  if (!count || line == std::string_view::npos || (pdf.size() - line - 1) / kEntry < *count)
    return std::nullopt;
  return Entries{line + 1, *count};
}

void write_offset(std::string& pdf, std::size_t at, std::size_t offset) {
  std::string digits = std::to_string(offset);
  digits.insert(0, kDigits - std::min(kDigits, digits.size()), '0');
  pdf.replace(at, kDigits, digits);
}

} // namespace

std::string without_creation_date(std::string pdf) {
  constexpr std::string_view kDate = "\n/CreationDate (D:", kStart = "startxref\n";
  const std::size_t at = pdf.find(kDate), start = pdf.rfind(kStart);
  const std::size_t end = at == std::string::npos ? at : pdf.find(")\n", at);
  if (end == std::string::npos || start == std::string::npos || end > start) return pdf;
  const auto table = number_at(pdf, start + kStart.size());
  const auto entries = table ? entries_of(pdf, *table) : std::nullopt;
  if (!entries || *table < end || end - at > kLongestDate) return pdf;
  const std::size_t cut = end + 1 - at;
  std::string out = pdf;
  for (std::size_t i = 0; i < entries->count; ++i) {
    const std::size_t entry = entries->first + i * kEntry;
    const auto offset = number_at(pdf, entry);
    if (!offset) return pdf;
    if (*offset > at) write_offset(out, entry, *offset - cut);
  }
  const std::size_t said = start + kStart.size();
  out.replace(said, std::to_string(*table).size(), std::to_string(*table - cut));
  return out.erase(at, cut);
}

} // namespace snug
