#include "core/report/pdf_date.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

// Three objects, one before the date, and a table of their places.
std::string file(const std::string& date) {
  std::string out = "%PDF-1.4\n";
  const std::size_t first = out.size();
  out += "1 0 obj\n<<\n/Title (Skerry)" + date + "\n>>\nendobj\n";
  const std::size_t second = out.size();
  out += "2 0 obj\n<<\n/Type /Catalog\n>>\nendobj\n";
  const std::size_t table = out.size();
  const auto line = [](std::size_t n, const char* rest) {
    std::string digits = std::to_string(n);
    return std::string(10 - digits.size(), '0') + digits + rest;
  };
  out += "xref\n0 3\n" + line(0, " 65535 f \n") + line(first, " 00000 n \n") + line(second, " 00000 n \n");
  return out + "trailer\n<<\n/Size 3 \n/Info 1 0 R\n/Root 2 0 R\n>>\nstartxref\n" + std::to_string(table) +
         " \n%%EOF\n";
}

TEST(PdfDate, IsTakenOutAndEveryPlaceBehindItMoves) {
  const std::string without = file("");
  EXPECT_EQ(without_creation_date(file("\n/CreationDate (D:20270214093000Z)")), without);
  EXPECT_EQ(without_creation_date(file("\n/CreationDate (D:20270214093000+09'00')")), without);
  EXPECT_EQ(without_creation_date(without), without);
}

TEST(PdfDate, WhatIsNotSuchAFileStaysAsItIs) {
  const std::string dated = file("\n/CreationDate (D:20270214093000Z)");
  std::string no_table = dated, no_entry = dated, no_end = dated, far = dated, letters = dated;
  no_table.replace(no_table.find("xref\n"), 5, "xyz \n");
  no_entry.replace(no_entry.find("0 3\n"), 4, "0 9\n");
  no_end.replace(no_end.find("Z)\n"), 3, "Z \n");
  far.replace(far.find("startxref\n") + 10, 1, "9");
  letters.replace(letters.find(" 65535") - 10, 10, "abcdefghij");
  for (const std::string& bytes : {std::string(), std::string("%PDF-1.4"), no_table, no_entry, no_end, far,
                                   letters, dated.substr(0, dated.size() / 2)})
    EXPECT_EQ(without_creation_date(bytes), bytes);
}

} // namespace
} // namespace snug
