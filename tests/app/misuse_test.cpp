// What the command line says when it cannot do what was asked: what, where and what to do.

#include "core/document/read.h"
#include "core/document/save.h"
#include "tests/app/cli_case.h"

namespace snug::cli {
namespace {

TEST_F(Cli, MisuseIsCodeTwoWithOneLineAndNoOutput) {
  const std::vector<std::vector<std::string>> wrong{{},
                                                    {"nothing"},
                                                    {"check"},
                                                    {"check", "--no-such-option", "x"},
                                                    {"table", ferry(), "--format", "xls"},
                                                    {"table", ferry(), "--of", "clouds"},
                                                    {"draw", ferry(), "-o", "picture.gif"},
                                                    {"draw", ferry(), "--scale", "0"},
                                                    {"draw", ferry(), "--scale", "many"},
                                                    {"check", ferry(), "--exercise", "No such exercise"},
                                                    {"addresses"},
                                                    {"addresses", "guess", ferry()},
                                                    {"new"},
                                                    {"new", path("a.snuglab"), "--sample", "no-such-sample"},
                                                    {"changes", ferry()},
                                                    {"rules", "no-such-rule"}};
  for (const auto& args : wrong) {
    const Outcome o = call(args);
    EXPECT_EQ(o.code, kUsage) << (args.empty() ? "" : args.back()) << o.err;
    EXPECT_EQ(o.out, "");
    EXPECT_EQ(std::count(o.err.begin(), o.err.end(), '\n'), 1) << o.err;
    EXPECT_EQ(o.err.rfind("snuglab-cli: ", 0), 0U) << o.err;
  }
}

TEST_F(Cli, MisuseNamesTheWordAndWhatWasMeant) {
  const std::vector<std::pair<std::vector<std::string>, std::string>> cases{
      {{"chekc", "x"}, "there is no command \"chekc\": perhaps \"check\" was meant; see snuglab-cli --help"},
      {{"zzzzzz"}, "there is no command \"zzzzzz\"; see snuglab-cli --help"},
      {{"new", "d.snuglab", "--sampel", "x"},
       "there is no option \"--sampel\" here: perhaps \"--sample\" was meant; see snuglab-cli new --help"},
      {{"check", "x", "--exercice=A"},
       "there is no option \"--exercice\" here: perhaps \"--exercise\" was meant; see snuglab-cli check "
       "--help"},
      {{"check", "x", "--zzzzzz"}, "there is no option \"--zzzzzz\" here; see snuglab-cli check --help"},
      {{"check", "x", "y"}, "\"y\" is one word too many; see snuglab-cli check --help"},
      {{"addresses", "aply", "x"},
       "there is no command \"aply\": perhaps \"apply\" was meant; see snuglab-cli addresses --help"}};
  for (const auto& [args, line] : cases) {
    const Outcome o = call(args);
    EXPECT_EQ(o.code, kUsage);
    EXPECT_EQ(o.err, "snuglab-cli: " + line + "\n");
  }
  EXPECT_EQ(call({"check", ferry(), "--all", "--exercise", "e65"}).code, kUsage);
  EXPECT_EQ(call({"--version"}).out.rfind("snuglab-cli ", 0), 0U);
}

TEST_F(Cli, UnreadableInputIsCodeThreeWithFileLineAndColumn) {
  const std::string broken =
      put("broken.snuglab", "{\"format\": \"snuglab\",\n \"version\": 1,\n \"pc\": {\"cores\": \"many\"}}");
  for (const std::vector<std::string>& args : {std::vector<std::string>{"check", broken},
                                               {"table", broken},
                                               {"draw", broken},
                                               {"addresses", "suggest", broken},
                                               {"addresses", "apply", broken},
                                               {"changes", broken, ferry()},
                                               {"changes", ferry(), broken}}) {
    const Outcome o = call(args);
    EXPECT_EQ(o.code, kUnreadable) << args[0];
    EXPECT_EQ(o.out, "");
    EXPECT_NE(o.err.find("broken.snuglab:3:"), std::string::npos) << o.err;
  }
  EXPECT_EQ(call({"check", path("absent.snuglab")}).code, kUnreadable);
  EXPECT_EQ(call({"check", folder_.string()}).code, kUnreadable);
}

// What, where and what to do, on one line, with the code of unreadable input.
TEST_F(Cli, UnreadableInputSaysWhatToDo) {
  const std::string whole(find_sample("skerry-ferries")->bytes);
  const std::string deep = R"({"format": "snuglab", "version": 1, "x": )" + std::string(100, '[') + "\n";
  const std::vector<std::pair<std::string, std::string>> cases{
      {path("absent.snuglab"), "look at its name and at the folder"},
      {folder_.string(), "this is a folder, not a file: name a file in it"},
      {put("zero.snuglab", ""), "take its previous version, the same name with ~ at its end"},
      {put("cut.snuglab", whole.substr(0, whole.size() / 2)), "take its previous version"},
      {put("deep.snuglab", deep), "take out what is inside this one"},
      {put("large.snuglab", std::string(kMostDocumentOctets + 1, ' ')), "divide it into several"},
      {put("newer.snuglab", R"({"format": "snuglab", "version": 99})"),
       "open it with the Snuglab that wrote it"},
      {put("list.snuglab", "[]"), "choose a lab, *.snuglab"},
      {put("other.snuglab", R"({"colour": "blue"})"), "choose a lab, *.snuglab"},
      {put("letter.snuglab", "Dear captain,"), "choose a lab, *.snuglab"},
      {put("picture.snuglab", std::string("\x89PNG\0\0", 6)), "choose another file"}};
  for (const auto& [file, advice] : cases) {
    const Outcome o = call({"check", file});
    EXPECT_EQ(o.code, kUnreadable) << file;
    EXPECT_EQ(o.out, "") << file;
    EXPECT_EQ(o.err.rfind("snuglab-cli: " + file, 0), 0U) << o.err;
    EXPECT_NE(o.err.find(advice), std::string::npos) << o.err;
    EXPECT_EQ(std::count(o.err.begin(), o.err.end(), '\n'), 1) << o.err;
  }
}

TEST_F(Cli, WhatCannotBeWrittenIsCodeFour) {
  const Outcome o = call({"table", ferry(), "-o", path("no-such-folder/t.md")});
  EXPECT_EQ(o.code, kCannotWrite);
  EXPECT_NE(o.err.find("no-such-folder"), std::string::npos) << o.err;
  EXPECT_NE(o.err.find("create it or choose another one"), std::string::npos) << o.err;
  const Outcome folder = call({"check", ferry(), "-o", folder_.string()});
  EXPECT_EQ(folder.code, kCannotWrite);
  EXPECT_NE(folder.err.find("name a file in it"), std::string::npos) << folder.err;
  std::ostringstream out, err;
  out.setstate(std::ios::badbit); // as a pipe whose reader has ended
  EXPECT_EQ(run({"check", ferry()}, {out, err, {}}), kCannotWrite);
  EXPECT_NE(err.str().find("write to a file with -o"), std::string::npos) << err.str();
}

} // namespace
} // namespace snug::cli
