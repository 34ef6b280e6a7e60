#include "core/model/json_text.h"

#include "core/model/lab.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace snug {
namespace {

std::string json_string(std::string_view s) {
  std::string out;
  append_json_string(out, s);
  return out;
}

// The library is the independent reader.
TEST(JsonString, EveryScalarSurvivesTheLibrary) {
  for (int c = 0; c < 128; ++c) {
    const std::string s = std::string("a") + static_cast<char>(c) + "b";
    EXPECT_EQ(nlohmann::json::parse(json_string(s)).get<std::string>(), s) << c;
  }
  for (const char* s : {"Fähre", "船", "\xF0\x9F\x9A\xA2", "\xEF\xBF\xBD", "\xED\x9F\xBF", "\xEE\x80\x80"})
    EXPECT_EQ(nlohmann::json::parse(json_string(s)).get<std::string>(), s);
}

// RFC 3629: overlong forms, surrogates and what lies above U+10FFFF are not UTF-8.
TEST(JsonString, IllFormedOctetsBecomeTheReplacementCharacter) {
  EXPECT_EQ(json_string("a\xFF"), "\"a\xEF\xBF\xBD\"");
  for (const char* s : {"\xC0\x80", "\xC1\xBF", "\xE0\x80\x80", "\xED\xA0\x80", "\xF0\x80\x80\x80",
                        "\xF4\x90\x80\x80", "\xF5", "\x80", "\xE2\x82", "\xC3"})
    EXPECT_NO_THROW({
      const auto text = nlohmann::json::parse(json_string(s)).get<std::string>();
      EXPECT_NE(text.find("\xEF\xBF\xBD"), std::string::npos);
    }) << s;
}

TEST(JsonObject, WritesTheIdFirstLeavesOutDefaultsKeepsUnknownMembers) {
  Machine m;
  m.id.number = 12;
  m.name = "deck \"a\"";
  m.memory = 10240;
  m.routes.push_back({{}, Prefix(), parse_address("192.0.2.1").value(), CardId{7}, 5, false});
  m.unknown = Unknown("\"later\": [1, 2.50]");
  std::string out;
  append_json_object(out, info<Machine>(), &m);
  EXPECT_EQ(
      out,
      R"({"id": "m12", "name": "deck \"a\"", "memory": 10240, "routes": [{"via": "192.0.2.1", "card": "c7", )"
      R"("metric": 5}], "later": [1, 2.50]})");
  EXPECT_TRUE(nlohmann::json::accept(out));
}

} // namespace
} // namespace snug
