#pragma once
// A folder to work in and calls of the command line.

#include "app/cli/cli.h"
#include "core/embedded/embedded.h"

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

namespace snug::cli {

struct Outcome {
  int code = 0;
  std::string out;
  std::string err;
};

class Cli : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::path(::testing::TempDir()) /
              ("snug-cli-" + std::string(::testing::UnitTest::GetInstance()->current_test_info()->name()));
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  static Outcome call(const std::vector<std::string>& args) {
    std::ostringstream out;
    std::ostringstream err;
    const int code = run(args, {out, err, {}});
    return {code, out.str(), err.str()};
  }
  std::string path(const std::string& name) const { return (folder_ / name).string(); }
  std::string put(const std::string& name, std::string_view bytes) const {
    std::ofstream(path(name), std::ios::binary) << bytes;
    return path(name);
  }
  static std::string get(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  std::string ferry() const { return put("ferry.snuglab", find_sample("skerry-ferries")->bytes); }
  std::string empty() const { return put("empty.snuglab", R"({"format": "snuglab", "version": 1})"); }

  std::filesystem::path folder_;
};

} // namespace snug::cli
