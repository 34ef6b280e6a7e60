#include "core/document/read.h"
#include "core/document/write.h"
#include "core/embedded/embedded.h"
#include "core/roles/catalogue.h"
#include "tests/support/sample.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug {
namespace {

using test::sample;

class Samples : public testing::TestWithParam<std::string_view> {};

TEST_P(Samples, LoadsWithoutNotesAndSavesTheSameBytes) {
  const EmbeddedFile* file = find_sample(GetParam());
  ASSERT_NE(file, nullptr);
  const auto loaded = read_document(file->bytes, GetParam());
  ASSERT_TRUE(loaded.has_value()) << english(loaded.error());
  EXPECT_TRUE(loaded->notes.empty()) << english(loaded->notes.front());
  EXPECT_EQ(write_lab(loaded->lab), file->bytes);
}

TEST_P(Samples, RolesAreCopiesOfTheCatalogue) {
  for (const Role& role : sample(GetParam()).roles) {
    const Role* original = find_role(role.key);
    ASSERT_NE(original, nullptr) << role.key;
    Role copy = role;
    copy.id = original->id;
    EXPECT_EQ(copy, *original) << role.key;
  }
}

std::string test_name(const testing::TestParamInfo<std::string_view>& sample_name) {
  std::string name(sample_name.param);
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(All, Samples, testing::ValuesIn(test::sample_names()), test_name);

} // namespace
} // namespace snug
