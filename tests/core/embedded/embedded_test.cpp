#include "core/embedded/embedded.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <string>

namespace snug {
namespace {

namespace fs = std::filesystem;

std::string bytes_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

TEST(Embedded, SamplesAreTheFilesOfTheRepository) {
  std::size_t files = 0;
  for (const auto& entry : fs::directory_iterator(fs::path(SNUG_SOURCE_DIR) / "samples")) {
    if (entry.path().extension() != ".snuglab") continue;
    ++files;
    const EmbeddedFile* sample = find_sample(entry.path().stem().string());
    ASSERT_NE(sample, nullptr) << entry.path();
    EXPECT_TRUE(sample->bytes == bytes_of(entry.path())) << entry.path();
  }
  EXPECT_EQ(embedded_samples().size(), files);
  EXPECT_GE(files, 6U);
}

TEST(Embedded, MainSampleFirstThenByName) {
  const auto all = embedded_samples();
  ASSERT_GE(all.size(), 2U);
  EXPECT_EQ(all.front().name, "skerry-ferries");
  EXPECT_TRUE(std::is_sorted(all.begin() + 1, all.end(),
                             [](const auto& a, const auto& b) { return a.name < b.name; }));
}

TEST(Embedded, NoSampleOfThatName) {
  EXPECT_EQ(find_sample("ferry"), nullptr);
  EXPECT_EQ(find_sample(""), nullptr);
  EXPECT_EQ(find_sample("roles"), nullptr);
}

TEST(Embedded, RolesAreTheFileOfTheRepository) {
  EXPECT_TRUE(embedded_roles() == bytes_of(fs::path(SNUG_SOURCE_DIR) / "resources/roles/roles.json"));
}

} // namespace
} // namespace snug
