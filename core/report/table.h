#pragma once
// Tables as data: the table that is shown is the table that is written (STYLE 6).

#include "core/base/ids.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace snug {

struct TableColumn {
  std::string_view key;   // stable, for JSON
  std::string_view title; // for people
};
// Text, a number, or nothing.
using Cell = std::variant<std::monostate, std::string, std::int64_t>;

struct TableRow {
  AnyId place;             // what the row is about, to select it
  std::vector<Cell> cells; // as many as columns
};

struct Table {
  std::string title;
  std::vector<TableColumn> columns;
  std::vector<TableRow> rows;
};

std::string cell_text(const Cell&); // empty for nothing
// Without the columns in which no row says anything; as it is where there are no rows.
Table for_reading(Table);

// RFC 4180: header line, CRLF after every record; text cells guarded against formulas.
std::string csv(const Table&);
// A line a row, headings first, tabs between cells, LF: what spreadsheets take from the clipboard
// (text/tab-separated-values of IANA). Tabs and line ends inside a cell are spaces; guarded as csv() is.
std::string tab_separated(const Table&);
// A table of CommonMark with the table extension, under a heading when there is a title.
std::string markdown(const Table&);
// For a terminal: the title, the columns' titles, then a line a row; columns stand below each other.
std::string plain(const Table&);
// A whole HTML document: one table with caption and header cells, no script, no external reference.
std::string html(const Table&, std::string_view language);
// {"title": …, "rows": [{"id": …, column key: value, …}]}, LF at the end; nothing is null.
std::string json(const Table&);

} // namespace snug
