#include "tests/support/csv.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace snug::test {

namespace {

struct Reader {
  std::string_view text;
  std::size_t at = 0;

  bool at_break() const { return text[at] == '\n' || text.substr(at, 2) == "\r\n"; }

  std::string quoted_field() {
    std::string out;
    for (++at;; ++at) {
      if (at >= text.size()) throw std::runtime_error("a quote is never closed");
      if (text[at] != '"') {
        out += text[at];
      } else if (text.substr(at, 2) == "\"\"") {
        out += text[at++];
      } else {
        ++at;
        break;
      }
    }
    if (at < text.size() && text[at] != ',' && !at_break())
      throw std::runtime_error("text after a closing quote");
    return out;
  }

  std::string bare_field() {
    std::string out;
    for (; at < text.size() && text[at] != ',' && !at_break(); ++at) {
      if (text[at] == '"') throw std::runtime_error("a quote inside a bare field: " + out);
      out += text[at];
    }
    return out;
  }

  std::vector<std::string> record() {
    std::vector<std::string> fields;
    while (true) {
      fields.push_back(at < text.size() && text[at] == '"' ? quoted_field() : bare_field());
      if (at >= text.size()) return fields;
      if (text[at] != ',') {
        at += text[at] == '\r' ? 2 : 1;
        return fields;
      }
      ++at;
    }
  }
};

} // namespace

std::vector<CsvRow> parse_csv(std::string_view text) {
  Reader reader{text};
  const std::vector<std::string> names = reader.record();
  std::vector<CsvRow> rows;
  while (reader.at < text.size()) {
    const std::vector<std::string> fields = reader.record();
    if (fields.size() != names.size())
      throw std::runtime_error("record " + std::to_string(rows.size() + 1) + " has another number of fields");
    CsvRow& row = rows.emplace_back();
    for (std::size_t i = 0; i < names.size(); ++i) row[names[i]] = fields[i];
  }
  return rows;
}

std::vector<CsvRow> read_csv(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  std::ostringstream text;
  text << file.rdbuf();
  return parse_csv(text.str());
}

std::vector<CsvRow> read_checks(const std::string& name) {
  return read_csv(std::string(SNUG_SOURCE_DIR) + "/tests/data/checks/" + name);
}

std::vector<std::string> words(std::string_view field) {
  std::istringstream in{std::string(field)};
  std::vector<std::string> out;
  for (std::string word; in >> word;) out.push_back(word);
  return out;
}

} // namespace snug::test
