#include "core/report/table.h"

#include "core/base/clean.h"
#include "core/model/json_text.h"
#include "core/report/escape.h"

#include <algorithm>

namespace snug {

std::string cell_text(const Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* number = std::get_if<std::int64_t>(&cell)) return std::to_string(*number);
  return {};
}

namespace {

struct Separated {
  char between;
  std::string_view end; // of a record
  std::string (*field)(std::string_view);
};

std::string separated(const Table& t, const Separated& by) {
  std::string out;
  for (std::size_t i = 0; i < t.columns.size(); ++i) {
    if (i > 0) out += by.between;
    out += by.field(t.columns[i].title);
  }
  out += by.end;
  for (const TableRow& row : t.rows) {
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      if (i > 0) out += by.between;
      const auto* number = std::get_if<std::int64_t>(&row.cells[i]);
      out += number ? csv_number(*number) : by.field(cell_text(row.cells[i]));
    }
    out += by.end;
  }
  return out;
}

} // namespace

std::string csv(const Table& t) { return separated(t, {',', "\r\n", csv_field}); }

std::string tab_separated(const Table& t) { return separated(t, {'\t', "\n", tab_field}); }

namespace {

bool is_numeric_column(const Table& t, std::size_t column) {
  bool any = false;
  for (const TableRow& row : t.rows) {
    if (std::holds_alternative<std::string>(row.cells[column])) return false;
    any = any || std::holds_alternative<std::int64_t>(row.cells[column]);
  }
  return any;
}

bool is_empty(const Cell& cell) {
  const auto* text = std::get_if<std::string>(&cell);
  return text ? text->empty() : std::holds_alternative<std::monostate>(cell);
}

constexpr std::string_view kStyle =
    "body{font-family:Inter,system-ui,sans-serif;color:#1b2430;background:#fffdf9;margin:2em}"
    "table{border-collapse:collapse}caption{font-size:1.3em;font-weight:600;text-align:left;padding-bottom:."
    "6em}"
    "th,td{border-bottom:1px solid #d9d2c3;padding:.3em .9em .3em 0;text-align:left;vertical-align:top}"
    "th{border-bottom:2px solid #5c6875}td.n,th.n{text-align:right;font-variant-numeric:tabular-nums}"
    "@media print{body{margin:0;background:none}}";

} // namespace

// What nobody has is no column for a reader; tables for programs keep every one.
Table for_reading(Table t) {
  for (std::size_t i = t.columns.size(); i-- > 0 && !t.rows.empty();) {
    const auto at = static_cast<std::ptrdiff_t>(i);
    if (std::any_of(t.rows.begin(), t.rows.end(), [i](const TableRow& r) { return !is_empty(r.cells[i]); }))
      continue;
    t.columns.erase(t.columns.begin() + at);
    for (TableRow& row : t.rows) row.cells.erase(row.cells.begin() + at);
  }
  return t;
}

std::string markdown(const Table& whole) {
  const Table t = for_reading(whole);
  std::string out;
  if (!t.title.empty()) out += "## " + markdown_text(t.title) + "\n\n";
  for (const TableColumn& c : t.columns) (out += "| ") += markdown_cell(c.title) + " ";
  out += "|\n";
  for (std::size_t i = 0; i < t.columns.size(); ++i) out += is_numeric_column(t, i) ? "| ---: " : "| --- ";
  out += "|\n";
  for (const TableRow& row : t.rows) {
    for (const Cell& cell : row.cells) (out += "| ") += markdown_cell(cell_text(cell)) + " ";
    out += "|\n";
  }
  return out;
}

namespace {

std::size_t width_of(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

void append_line(std::string& out, const std::vector<std::string>& cells,
                 const std::vector<std::size_t>& widths) {
  std::string line;
  for (std::size_t i = 0; i < cells.size(); ++i)
    line += cells[i] + std::string(widths[i] - width_of(cells[i]) + 2, ' ');
  line.erase(line.find_last_not_of(' ') + 1);
  out += line + "\n";
}

} // namespace

std::string plain(const Table& whole) {
  const Table t = for_reading(whole);
  std::vector<std::vector<std::string>> lines(1);
  for (const TableColumn& c : t.columns) lines[0].emplace_back(c.title);
  for (const TableRow& row : t.rows) {
    lines.emplace_back();
    for (const Cell& cell : row.cells) lines.back().push_back(clean(cell_text(cell)));
  }
  std::vector<std::size_t> widths(t.columns.size());
  for (const auto& line : lines)
    for (std::size_t i = 0; i < line.size(); ++i) widths[i] = std::max(widths[i], width_of(line[i]));
  std::string out = t.title.empty() ? std::string() : clean(t.title) + "\n\n";
  for (const auto& line : lines) append_line(out, line, widths);
  return out;
}

std::string html(const Table& whole, std::string_view language) {
  const Table t = for_reading(whole);
  std::string out = "<!DOCTYPE html>\n<html lang=\"" + html(language) +
                    "\">\n<head>\n<meta charset=\"utf-8\">\n<title>" + html(t.title) + "</title>\n<style>" +
                    std::string(kStyle) + "</style>\n</head>\n<body>\n<table>\n";
  if (!t.title.empty()) out += "<caption>" + html(t.title) + "</caption>\n";
  std::vector<bool> numeric(t.columns.size());
  out += "<thead><tr>";
  for (std::size_t i = 0; i < t.columns.size(); ++i) {
    numeric[i] = is_numeric_column(t, i);
    out += std::string(numeric[i] ? "<th scope=\"col\" class=\"n\">" : "<th scope=\"col\">") +
           html(t.columns[i].title) + "</th>";
  }
  out += "</tr></thead>\n<tbody>\n";
  for (const TableRow& row : t.rows) {
    out += "<tr>";
    for (std::size_t i = 0; i < row.cells.size(); ++i)
      out += std::string(numeric[i] ? "<td class=\"n\">" : "<td>") + html(cell_text(row.cells[i])) + "</td>";
    out += "</tr>\n";
  }
  return out + "</tbody>\n</table>\n</body>\n</html>\n";
}

std::string json(const Table& t) {
  std::string out = "{\n  \"title\": ";
  append_json_string(out, clean(t.title));
  out += ",\n  \"rows\": [";
  for (std::size_t r = 0; r < t.rows.size(); ++r) {
    const TableRow& row = t.rows[r];
    out += r > 0 ? ",\n    {" : "\n    {";
    bool first = true;
    const auto key = [&](std::string_view k) {
      if (!first) out += ", ";
      first = false;
      append_json_string(out, k);
      out += ": ";
    };
    if (row.place) {
      key("id");
      append_json_string(out, to_text(row.place));
    }
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      if (std::holds_alternative<std::monostate>(row.cells[i])) continue;
      key(t.columns[i].key);
      if (const auto* number = std::get_if<std::int64_t>(&row.cells[i])) {
        out += std::to_string(*number);
      } else {
        append_json_string(out, cell_text(row.cells[i]));
      }
    }
    out += '}';
  }
  return out + (t.rows.empty() ? "]\n}\n" : "\n  ]\n}\n");
}

} // namespace snug
