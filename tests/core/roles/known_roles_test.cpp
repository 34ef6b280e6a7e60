#include "core/roles/known_roles.h"

#include "core/roles/catalogue.h"
#include "tests/support/temp_folder.h"

#include <cstdlib>
#include <fstream>
#include <gtest/gtest.h>

namespace snug::test {
namespace {

std::string role_file(const TempFolder& folder, const std::string& text) {
  std::string path = folder.path("roles.json");
  std::ofstream(path) << text;
  return path;
}

TEST(KnownRoles, WithoutAFileTheyAreTheCatalogue) {
  const TempFolder folder;
  for (const std::string& file : {std::string(), folder.path("none.json")}) {
    const auto roles = known_roles(file);
    ASSERT_TRUE(roles);
    EXPECT_EQ(*roles, catalogue());
  }
}

TEST(KnownRoles, OwnOnesFollowAndReplace) {
  const TempFolder folder;
  const auto roles = known_roles(role_file(folder, R"({"format": "snuglab-roles", "version": 1, "roles": [
        {"id": "o1", "key": "radar", "title": "Radar", "current_least": 1024, "current_usual": 2048},
        {"id": "o2", "key": "router", "title": "Our router", "current_least": 512, "current_usual": 768}]})"));
  ASSERT_TRUE(roles) << english(roles.error().message);
  EXPECT_EQ(roles->size(), catalogue().size() + 1);
  EXPECT_EQ(roles->back().title, "Radar");
  for (std::size_t i = 0; i < catalogue().size(); ++i)
    EXPECT_EQ((*roles)[i].title, catalogue()[i].key == "router" ? "Our router" : catalogue()[i].title);
}

TEST(KnownRoles, ADamagedFileIsToldWithItsPlace) {
  const TempFolder folder;
  const std::string path =
      role_file(folder, "{\"format\": \"snuglab-roles\",\n \"version\": 1, \"roles\": [}");
  const auto roles = known_roles(path);
  ASSERT_FALSE(roles);
  EXPECT_EQ(roles.error().file, path);
  EXPECT_EQ(roles.error().line, 2);
}

TEST(KnownRoles, TheFileStandsWithThePersonsSettings) {
  const char* const before = std::getenv("XDG_CONFIG_HOME");
  const std::string kept = before ? before : "";
  setenv("XDG_CONFIG_HOME", "/somewhere", 1);
  EXPECT_EQ(own_roles_file(), "/somewhere/snuglab/roles.json");
  setenv("XDG_CONFIG_HOME", "relative", 1);
  setenv("HOME", "/home/teacher", 0);
  EXPECT_TRUE(own_roles_file().ends_with("/.config/snuglab/roles.json")) << own_roles_file();
  before ? setenv("XDG_CONFIG_HOME", kept.c_str(), 1) : unsetenv("XDG_CONFIG_HOME");
}

} // namespace
} // namespace snug::test
