// RELIABILITY rows 10 to 14, 16 and 38 of the design: whatever is read, it is a whole lab or a sentence.

#include "core/document/header.h"
#include "core/document/json_walk.h"
#include "core/document/read.h"
#include "core/document/write.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"
#include "tests/support/temp_folder.h"

#include <fstream>
#include <gtest/gtest.h>
#include <sys/resource.h>

namespace snug {
namespace {

namespace fs = std::filesystem;
const fs::path kData = fs::path(SNUG_SOURCE_DIR) / "tests/data";

std::string document(std::string_view members) {
  return "{\"format\": \"snuglab\", \"version\": 1" + (members.empty() ? "" : ", " + std::string(members)) +
         "}";
}
// Id of the complaint; "loaded".
std::string verdict(std::string_view bytes) {
  const auto lab = read_lab(bytes, "x");
  return lab ? "loaded" : std::string(lab.error().message.id());
}

std::string named(std::string_view key) { return (std::string("\"") += key) += "\": "; }

// A document with one object of the table that holds these members.
std::string document_with(const StructInfo& table, std::string_view members) {
  std::string out = named(table.collection);
  if (table.id) ((out += "[{\"id\": \"") += letter_of(table.kind)) += "1\", ";
  (out += table.id ? "" : "{") += members;
  return document(out += table.id ? "}]" : "}");
}

TEST(Malformed, BrokenFilesGetExactlyTheirComplaint) {
  int files = 0;
  for (const auto& entry : fs::directory_iterator(kData / "broken")) {
    if (entry.path().extension() != ".snuglab") continue;
    ++files;
    const auto bytes = read_file(entry.path().string());
    ASSERT_TRUE(bytes);
    const auto loaded = read_document(*bytes, entry.path().filename().string());
    ASSERT_FALSE(loaded) << entry.path();
    fs::path expected = entry.path();
    expected.replace_extension(".expected");
    EXPECT_EQ(english(loaded.error()) + "\n", test::bytes_of(expected.string()));
  }
  EXPECT_GE(files, 80);
}

struct Case {
  std::string name;
  std::string octets;
};

// The form is told at the head of the file.
std::string unescaped(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.substr(i, 2) == "\\x") {
      const auto digit = [&text](std::size_t k) {
        return static_cast<unsigned>(std::string_view("0123456789abcdef").find(text[k]));
      };
      out += static_cast<char>(digit(i + 2) * 16 + digit(i + 3));
      i += 3;
    } else if (text[i] == '*') {
      const std::size_t open = text.find('(', i);
      const std::size_t shut = text.find(')', open);
      const std::string unit = unescaped(text.substr(open + 1, shut - open - 1));
      for (int n = std::stoi(std::string(text.substr(i + 1, open - i - 1))); n > 0; --n) out += unit;
      i = shut;
    } else {
      out += text[i];
    }
  }
  return out;
}

std::vector<Case> json_test_suite() {
  std::ifstream in(kData / "json-test-suite/cases.txt");
  std::vector<Case> cases;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with('#')) continue;
    const std::size_t tab = line.find('\t');
    cases.push_back({line.substr(0, tab), unescaped(line.substr(tab + 1))});
  }
  return cases;
}

// JSONTestSuite (github.com/nst/JSONTestSuite): no n_ is read; every y_ is JSON for us too, except equal
// keys, which RFC 7493 (I-JSON) section 2.3 forbids. By themselves none is a lab.
TEST(Malformed, JsonTestSuite) {
  int yes = 0, no = 0, either = 0;
  for (const Case& c : json_test_suite()) {
    const auto octets = detail::check_octets(c.octets, "x");
    const bool is_json = !octets && !detail::check_json(c.octets, "x");
    const std::string as_member = verdict(document("\"x\": " + c.octets));
    EXPECT_NE(verdict(c.octets), "loaded") << c.name;
    if (c.name.starts_with("y_")) {
      ++yes;
      const bool equal_keys = c.name.starts_with("y_object_duplicated_key");
      EXPECT_EQ(is_json, !equal_keys) << c.name;
      EXPECT_EQ(as_member, equal_keys ? "json-twice" : "loaded") << c.name;
    } else if (c.name.starts_with("n_")) {
      ++no;
      EXPECT_FALSE(is_json) << c.name;
      EXPECT_NE(as_member, "loaded") << c.name;
    } else {
      ++either;
    }
  }
  EXPECT_EQ(yes, 95);
  EXPECT_EQ(no, 188);
  EXPECT_EQ(either, 35);
}

struct Shape {
  std::string_view before, open, middle, shut, after;
  std::size_t levels; // that one `open` adds
};

TEST(Malformed, TenShapesOfDepth) {
  // Each is nested so often that the innermost object or list is `depth` deep, the document itself counted.
  constexpr std::array<Shape, 10> kShapes{
      {{"\"x\": ", "[", "", "]", "", 1},
       {"\"x\": ", "{\"a\":", "1", "}", "", 1},
       {"\"x\": ", "[{\"a\":", "1", "}]", "", 2},
       {"\"x\": ", "[1, [", "2", "], 3]", "", 2},
       {"\"x\": ", " [\n", "null", " ]", "", 1},
       {"\"pc\": {\"x\": ", "[", "", "]", "}", 1},
       {"\"pc\": {\"x\": ", "{\"a\": ", "\"\"", "}", "}", 1},
       {"\"machines\": [{\"id\": \"m1\", \"x\": ", "[", "", "]", "}]", 1},
       {"\"machines\": [{\"id\": \"m1\", \"routes\": [{\"x\": ", "[", "", "]", "}]}]", 1},
       {"\"x\": {\"a\": 1, \"b\": ", "[{},", "[]", ", 0]", "}", 1}}};
  constexpr std::array<std::size_t, 10> kOutside{1, 1, 1, 1, 1, 2, 2, 3, 5, 2};
  for (std::size_t i = 0; i < kShapes.size(); ++i) {
    const Shape& s = kShapes[i];
    const auto nested = [&s](std::size_t times) {
      std::string text(s.before);
      for (std::size_t n = 0; n < times; ++n) text += s.open;
      text += s.middle;
      for (std::size_t n = 0; n < times; ++n) text += s.shut;
      return document(text + std::string(s.after));
    };
    const bool inner = i == 9; // {} and [] beside and inside the last level are one deeper
    const std::size_t fits = (detail::kMostDepth - kOutside[i] - (inner ? 1 : 0)) / s.levels;
    EXPECT_EQ(verdict(nested(fits)), "loaded") << i;
    EXPECT_EQ(verdict(nested(fits + 1)), "json-deep") << i;
    EXPECT_EQ(verdict(nested(1'000'000)), "json-deep") << i;
  }
  EXPECT_EQ(verdict(std::string(1'000'000, '[')), "json-deep");
}

TEST(Malformed, LargestDocument) {
  std::string text = document("\"x\": \"\"");
  const std::size_t fill = kMostDocumentOctets - text.size();
  text.insert(text.size() - 2, fill, 'x');
  ASSERT_EQ(text.size(), kMostDocumentOctets);
  EXPECT_EQ(verdict(text), "loaded");
  text.insert(text.size() - 1, 1, ' ');
  EXPECT_EQ(verdict(text), "document-large");
}

// 32 MiB of "0," must not take more than 400 MB (RELIABILITY row 12; ten such megabytes cost a tree 177 MB).
TEST(Malformed, ManySmallValuesTakeLittleMemory) {
#if defined(__SANITIZE_ADDRESS__)
  constexpr std::size_t kOctets = kMostDocumentOctets / 8; // ten times as slow, and memory is not measured
#else
  constexpr std::size_t kOctets = kMostDocumentOctets;
#endif
  std::string text = document("\"x\": [0]");
  const std::size_t pairs = (kOctets - text.size()) / 2;
  std::string fill;
  for (std::size_t i = 0; i < pairs; ++i) fill += "0,";
  text.insert(text.size() - 3, fill);
  EXPECT_EQ(verdict(text), "loaded");
  std::string ids = document("\"exercises\": [{\"id\": \"e1\", \"on\": [\"m1\"]}]");
  std::string many;
  while (many.size() + ids.size() + 8 < kOctets) many += "\"m1\",";
  ids.insert(ids.size() - 8, many);
  EXPECT_EQ(verdict(ids), "value-many");
  rusage usage{};
  ASSERT_EQ(::getrusage(RUSAGE_SELF, &usage), 0);
#if !defined(__SANITIZE_ADDRESS__) // shadow memory and quarantine are not the reader's
  EXPECT_LT(usage.ru_maxrss, 400'000);
#endif
}

TEST(Malformed, MoreElementsThanTheCaps) {
  for (const Kind kind : kinds_in_document()) {
    const StructInfo& table = info_of(kind);
    if (!table.id) continue;
    const auto list = [&table](std::size_t n) {
      std::string out = "\"" + std::string(table.collection) + "\": [";
      for (std::size_t i = 1; i <= n; ++i)
        out += (i == 1 ? "{\"id\": \"" : ",{\"id\": \"") + std::string(1, letter_of(table.kind)) +
               std::to_string(i) + "\"}";
      return document(out + "]");
    };
    EXPECT_EQ(verdict(list(table.max_count)), "loaded") << table.collection;
    EXPECT_EQ(verdict(list(table.max_count + 1)), "part-many") << table.collection;
  }
}

// Every integer of every table at its borders and at the borders of the machine's types (row 14).
TEST(Malformed, BoundaryIntegers) {
  const std::array<std::string, 29> far{"-129",
                                        "256",
                                        "1.0",
                                        "-18446744073709551616",
                                        "-32769",
                                        "32768",
                                        "65536",
                                        "-9223372036854775809",
                                        "-9223372036854775808",
                                        "-9223372036854775807",
                                        "-9007199254740993",
                                        "-4294967297",
                                        "-4294967296",
                                        "-2147483649",
                                        "-2147483648",
                                        "-1",
                                        "2147483647",
                                        "2147483648",
                                        "4294967295",
                                        "4294967296",
                                        "4294967301",
                                        "9007199254740993",
                                        "9223372036854775807",
                                        "9223372036854775808",
                                        "18446744073709551615",
                                        "18446744073709551616",
                                        "1e300",
                                        "3.9",
                                        "true"};
  int tried = 0;
  for (const Kind kind : kinds_in_document()) {
    const StructInfo& table = info_of(kind);
    for (const FieldInfo& f : table.fields) {
      if (f.type != FieldType::integer) continue;
      const auto with = [&](const std::string& number) {
        return document_with(table, named(f.key) + number);
      };
      const auto value = [&](const std::string& number) -> Value {
        const auto lab = read_lab(with(number), "x");
        return lab ? f.get(store_of(kind).at(*lab, 0)) : Value();
      };
      EXPECT_EQ(value(std::to_string(f.least)), Value(f.least)) << f.key;
      EXPECT_EQ(value(std::to_string(f.most)), Value(f.most)) << f.key;
      EXPECT_EQ(verdict(with(std::to_string(f.least - 1))), "value-range") << f.key;
      EXPECT_EQ(verdict(with(std::to_string(f.most + 1))), "value-range") << f.key;
      tried += 4;
      for (const std::string& n : far) {
        ++tried;
        const Value got = value(n);
        if (got.is_set()) {
          EXPECT_EQ(std::to_string(*got.as<std::int64_t>()), n) << f.key;
        }
      }
    }
  }
  EXPECT_GE(tried, 2000);
}

TEST(Malformed, FiftyDocumentsWithEqualKeys) {
  int tried = 0;
  for (const Kind kind : kinds_in_document()) {
    const StructInfo& table = info_of(kind);
    for (std::size_t i = 0; i < table.fields.size(); i += 3) {
      std::string value;
      table.fields[i].write(table.blank, value);
      if (value == "null" && !table.fields[i].optional) continue;
      const std::string member = named(table.fields[i].key) + value;
      std::string twice = member;
      (twice += ",\n") += member;
      const std::string text = document_with(table, twice);
      const auto lab = read_lab(text, "x");
      ASSERT_FALSE(lab) << text;
      EXPECT_EQ(lab.error().message.id(), "json-twice") << text;
      EXPECT_EQ(lab.error().line, 2);
      EXPECT_NE(english(lab.error()).find("first at line 1, column "), std::string::npos);
      ++tried;
    }
  }
  EXPECT_GE(tried, 50);
}

// Good files with one to eight octets changed (row 16): loaded and then stable, or refused with a sentence.
TEST(Malformed, ChangedOctets) {
  std::vector<std::string> good;
  for (const auto& entry : fs::directory_iterator(fs::path(SNUG_SOURCE_DIR) / "samples"))
    if (entry.path().extension() == ".snuglab" && entry.file_size() < 20'000)
      good.push_back(test::bytes_of(entry.path().string()));
  for (std::uint64_t seed = 0; good.size() < 20; ++seed) {
    test::Random r(seed);
    good.push_back(write_lab(test::random_lab(r, 2)));
  }
  test::Random r(16);
  constexpr std::string_view kLikely = "{}[]\",:0123456789.-eEtfn\\ \n\"m1c2s";
  int loaded = 0, refused = 0;
  const int variants = test::scaled(100'000);
  for (int i = 0; i < variants; ++i) {
    std::string bytes = good[r.below(good.size())];
    for (std::size_t n = 1 + r.below(8); n > 0; --n)
      bytes[r.below(bytes.size())] =
          r.chance(50) ? kLikely[r.below(kLikely.size())] : static_cast<char>(r.below(256));
    const auto lab = read_lab(bytes, "x");
    if (!lab) {
      ++refused;
      ASSERT_FALSE(english(lab.error()).empty());
      continue;
    }
    ++loaded;
    const auto again = read_lab(write_lab(*lab), "x");
    ASSERT_TRUE(again) << english(again.error()) << "\n" << bytes;
    ASSERT_EQ(*again, *lab) << bytes;
  }
  EXPECT_GT(loaded, variants / 100);
  EXPECT_GT(refused, variants / 2);
}

} // namespace
} // namespace snug
