#include "tests/support/sample.h"

#include "core/document/read.h"
#include "core/embedded/embedded.h"

#include <algorithm>
#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

namespace snug::test {

namespace {

constexpr std::string_view kEverythingOn = "everything-on";

std::string_view severity_word(Severity s) {
  return s == Severity::error ? "error" : s == Severity::caution ? "caution" : "note";
}

std::string line_of(std::string_view head, std::vector<AnyId> places, std::string_view tail) {
  std::sort(places.begin(), places.end());
  std::string out(head);
  for (const AnyId id : places) (out += ' ') += to_text(id);
  (out += " |") += tail;
  return out;
}

std::string occasions(const Lab& lab, const Finding& f) {
  std::string out;
  if (f.when.always) out += " always";
  if (!f.when.always && f.when.everything_on) (out += ' ') += kEverythingOn;
  for (std::size_t i = 0; !f.when.always && i < lab.exercises.size(); ++i)
    if (f.when.exercises[i]) (out += ' ') += to_text(AnyId(lab.exercises[i].id));
  if (f.accepted) out += " accepted";
  return out;
}

std::string expected_line(const std::string& line) {
  std::istringstream words(line);
  std::string severity;
  std::string rule;
  words >> severity >> rule;
  std::vector<AnyId> places;
  std::string tail;
  bool after_bar = false;
  for (std::string word; words >> word && word != "#";) {
    if (word == "|") {
      after_bar = true;
    } else if (after_bar) {
      (tail += ' ') += word;
    } else {
      const auto id = parse_id(word);
      EXPECT_TRUE(id.has_value()) << line;
      if (id) places.push_back(*id);
    }
  }
  EXPECT_TRUE(after_bar) << line;
  return line_of(severity + ' ' + rule, places, tail);
}

} // namespace

Lab titled(std::string title, std::string_view from) {
  Lab lab = sample(from);
  lab.facts.title = std::move(title);
  return lab;
}

std::vector<std::string_view> sample_names() {
  std::vector<std::string_view> names;
  for (const EmbeddedFile& f : embedded_samples()) names.push_back(f.name);
  return names;
}

Lab sample(std::string_view name) {
  const EmbeddedFile* file = find_sample(name);
  EXPECT_NE(file, nullptr) << name;
  if (!file) return {};
  auto lab = read_lab(file->bytes, std::string(name) + ".snuglab");
  EXPECT_TRUE(lab.has_value()) << english(lab.error());
  return lab ? std::move(*lab) : Lab{};
}

const Machine& machine(const Lab& lab, std::string_view name) {
  static const Machine kNone;
  const auto it = std::find_if(lab.machines.begin(), lab.machines.end(),
                               [&](const Machine& m) { return m.name == name; });
  EXPECT_NE(it, lab.machines.end()) << name;
  return it == lab.machines.end() ? kNone : *it;
}

ExerciseId exercise(const Lab& lab, std::string_view name) {
  const auto it = std::find_if(lab.exercises.begin(), lab.exercises.end(),
                               [&](const Exercise& e) { return e.name == name; });
  EXPECT_NE(it, lab.exercises.end()) << name;
  return it == lab.exercises.end() ? ExerciseId{} : it->id;
}

std::vector<std::string> findings_found(const Analysis& analysis) {
  std::vector<std::string> out;
  for (const Finding& f : analysis.findings())
    out.push_back(line_of(std::string(severity_word(f.severity)) + ' ' + std::string(f.rule->id), f.places,
                          occasions(analysis.lab(), f)));
  std::sort(out.begin(), out.end());
  return out;
}

std::vector<std::string> findings_expected(std::string_view name) {
  const std::string path =
      std::string(SNUG_SOURCE_DIR) + "/samples/expected/" + std::string(name) + ".findings";
  std::ifstream in(path);
  EXPECT_TRUE(in.is_open()) << path;
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);)
    if (!line.empty() && line.front() != '#') out.push_back(expected_line(line));
  std::sort(out.begin(), out.end());
  return out;
}

} // namespace snug::test
