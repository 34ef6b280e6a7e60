// Documents against the JSON Schema in resources/ by python3-jsonschema (Debian 12), an independent
// validator.

#include "core/document/schema.h"
#include "core/document/write.h"
#include "tests/support/process.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace snug {
namespace {

namespace fs = std::filesystem;
const fs::path kSource = SNUG_SOURCE_DIR;

// One word a document of the list on stdin: "valid", or the pointer to what is wrong.
constexpr const char* kProgram = R"(
import json, sys
from jsonschema import Draft202012Validator
schema = json.load(open(sys.argv[1]))
Draft202012Validator.check_schema(schema)
validator = Draft202012Validator(schema)
for document in json.load(sys.stdin):
    errors = sorted(validator.iter_errors(document), key=lambda e: list(map(str, e.absolute_path)))
    print("".join("/" + str(p) for p in errors[0].absolute_path) or "/" if errors else "valid")
)";

std::vector<std::string> validate(const std::vector<std::string>& documents) {
  std::string input = "[";
  for (const std::string& d : documents) input += (input.size() > 1 ? "," : "") + d;
  const auto ran = test::run_program(
      {"/usr/bin/python3", "-c", kProgram, (kSource / "resources/schema/snuglab-1.schema.json").string()},
      input + "]");
  EXPECT_EQ(ran.code, 0) << ran.err;
  std::vector<std::string> words;
  for (std::size_t at = 0, end = 0; (end = ran.out.find('\n', at)) != std::string::npos; at = end + 1)
    words.push_back(ran.out.substr(at, end - at));
  EXPECT_EQ(words.size(), documents.size());
  words.resize(documents.size());
  return words;
}

TEST(SchemaOracle, SamplesAreValid) {
  std::vector<std::string> names, documents;
  for (const char* folder : {"samples", "tests/data/documents"})
    for (const auto& entry : fs::directory_iterator(kSource / folder)) {
      if (entry.path().extension() != ".snuglab") continue;
      names.push_back(entry.path().string());
      documents.push_back(test::bytes_of(names.back()));
    }
  ASSERT_FALSE(documents.empty());
  const auto verdicts = validate(documents);
  for (std::size_t i = 0; i < names.size(); ++i) EXPECT_EQ(verdicts[i], "valid") << names[i];
}

TEST(SchemaOracle, RandomLabsAreValid) {
  std::vector<std::string> documents;
  const int count = test::scaled(1000);
  for (int seed = 0; seed < count; ++seed) {
    test::Random r(static_cast<std::uint64_t>(seed));
    documents.push_back(write_lab(test::random_lab(r, 3)));
  }
  const auto verdicts = validate(documents);
  for (std::size_t i = 0; i < documents.size(); ++i) EXPECT_EQ(verdicts[i], "valid") << documents[i];
}

// One member out of a good document made wrong: the validator names its place, or the schema would be hollow.
TEST(SchemaOracle, WrongMembersAreFound) {
  const auto good =
      nlohmann::json::parse(test::bytes_of((kSource / "tests/data/documents/v1.snuglab").string()));
  const std::vector<std::pair<std::string, nlohmann::json>> wrong{{"/format", "other"},
                                                                  {"/version", 2},
                                                                  {"/machines/1/memory", 0},
                                                                  {"/machines/1/memory", "4 GiB"},
                                                                  {"/machines/1/memory", 1.5},
                                                                  {"/machines/1/id", "s12"},
                                                                  {"/machines/1/id", "m012"},
                                                                  {"/machines/1/carrier", "c1"},
                                                                  {"/machines/1/pinned", 1},
                                                                  {"/segments/1/type", "host-only"},
                                                                  {"/cards/1/mac", "02:00"},
                                                                  {"/cards/1/trunk/0/vlan", 4095},
                                                                  {"/cards/1/addresses/0/address", "beacon"},
                                                                  {"/segments/1/prefix4", "10.0.0.0"},
                                                                  {"/lab/date", "14.2.2027"},
                                                                  {"/exercises/1/on/0", "m0"},
                                                                  {"/promises/1/from", "d1"},
                                                                  {"/lab", 7},
                                                                  {"/machines", 7},
                                                                  {"/machines/1/name", nullptr}};
  std::vector<std::string> documents;
  for (const auto& [pointer, value] : wrong) {
    auto document = good;
    document[nlohmann::json::json_pointer(pointer)] = value;
    documents.push_back(document.dump());
  }
  const auto verdicts = validate(documents);
  for (std::size_t i = 0; i < wrong.size(); ++i) EXPECT_EQ(verdicts[i], wrong[i].first);
}

} // namespace
} // namespace snug
