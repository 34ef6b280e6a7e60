// Man page and completion against their own checkers: mandoc's lint, bash.

#include "app/cli/cli.h"
#include "tests/support/process.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace snug::cli {
namespace {

const std::string kFolder = std::string(SNUG_SOURCE_DIR) + "/app/cli/";

std::string get(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

const std::vector<std::string> kCommands{"check",   "table", "draw",  "addresses", "new",    "pc",
                                         "changes", "fix",   "roles", "rules",     "format", "version"};

// Every long option that a sub-command's help shows.
std::vector<std::string> options_of(const std::vector<std::string>& command) {
  std::ostringstream out;
  std::ostringstream err;
  std::vector<std::string> args = command;
  args.emplace_back("--help");
  EXPECT_EQ(run(args, {out, err, {}}), kFine);
  std::vector<std::string> found;
  const std::string help = out.str();
  for (std::size_t at = help.find("--"); at != std::string::npos; at = help.find("--", at + 2)) {
    std::size_t end = at + 2;
    while (end < help.size() && (std::islower(static_cast<unsigned char>(help[end])) || help[end] == '-'))
      ++end;
    if (end > at + 2 && help[end] != '.') found.push_back(help.substr(at, end - at));
  }
  return found;
}

TEST(ManPage, PassesTheLintOfMandoc) {
  const auto done = test::run_program({"mandoc", "-T", "lint", "-W", "warning", kFolder + "snuglab-cli.1"});
  if (done.code == 127) GTEST_SKIP() << "skipped: mandoc is not installed";
  EXPECT_EQ(done.code, 0) << done.out << done.err;
}

TEST(ManPage, NamesEveryCommandAndOption) {
  std::string page = get(kFolder + "snuglab-cli.1");
  for (const std::string& c : kCommands) {
    EXPECT_NE(page.find(".Cm " + c + "\n"), std::string::npos) << c;
    for (const std::string& option :
         options_of(c == "addresses" ? std::vector<std::string>{c, "apply"} : std::vector<std::string>{c})) {
      if (option == "--help" || option == "--output") continue;
      EXPECT_NE(page.find("Fl -" + option.substr(2)), std::string::npos) << c << " " << option;
    }
  }
}

TEST(Completion, NamesEveryCommandAndOptionAndLoads) {
  const std::string script = get(kFolder + "snuglab-cli.bash");
  for (const std::string& c : kCommands) {
    EXPECT_NE(script.find(c), std::string::npos) << c;
    for (const std::string& option :
         options_of(c == "addresses" ? std::vector<std::string>{c, "apply"} : std::vector<std::string>{c}))
      EXPECT_NE(script.find(option), std::string::npos) << c << " " << option;
  }
  const auto done =
      test::run_program({"bash", "-c", ". \"$0\" && complete -p snuglab-cli", kFolder + "snuglab-cli.bash"});
  EXPECT_EQ(done.code, 0) << done.err;
  EXPECT_EQ(done.out, "complete -F _snuglab_cli snuglab-cli\n");
}

} // namespace
} // namespace snug::cli
