// Two windows, each a program of its own, on one display: copied in one, pasted in the other. The keys are
// pressed by xdotool, what is offered is asked by xclip, what came of it is read from the file that was
// saved.

#include "core/document/read.h"
#include "core/document/write.h"
#include "core/gesture/clip.h"
#include "tests/support/csv.h"
#include "tests/support/display.h"
#include "tests/support/process.h"
#include "tests/support/sample.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <chrono>
#include <csignal>
#include <filesystem>
#include <sstream>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace snug::test {
namespace {

// Only a broken program takes that long.
template <typename F>
bool until(F&& done) {
  const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(30);
  while (!done()) {
    if (std::chrono::steady_clock::now() > end) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(25));
  }
  return true;
}

// The program with a lab, at home in a folder of its own.
class Program {
 public:
  Program(const Display& display, const std::string& home, std::string file) : file_(std::move(file)) {
    std::filesystem::create_directories(home);
    std::filesystem::permissions(home, std::filesystem::perms::owner_all);
    process_ = ::fork();
    if (process_ != 0) return;
    ::prctl(PR_SET_PDEATHSIG, SIGTERM);
    for (const char* name : {"HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_RUNTIME_DIR"})
      ::setenv(name, home.c_str(), 1);
    ::setenv("DISPLAY", display.name().c_str(), 1);
    ::setenv("QT_QPA_PLATFORM", "xcb", 1);
    ::setenv("QT_QPA_PLATFORMTHEME", "", 1);
    ::execl(SNUG_WINDOW, SNUG_WINDOW, file_.c_str(), nullptr);
    ::_exit(127);
  }
  ~Program() {
    ::kill(process_, SIGKILL);
    ::waitpid(process_, nullptr, 0);
  }
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;

  const std::string& file() const { return file_; }
  std::string window() const {
    const std::string name = "^" + std::filesystem::path(file_).filename().string();
    std::istringstream found(run_program({"xdotool", "search", "--onlyvisible", "--name", name}).out);
    std::string id;
    found >> id;
    return id;
  }
  // Without a window manager nobody gives the keyboard to a window.
  void take_keyboard() const {
    ASSERT_TRUE(until([this] { return !window().empty(); })) << file_;
    const std::string id = window();
    ASSERT_TRUE(until([&id] {
      run_program({"xdotool", "windowfocus", id});
      return run_program({"xdotool", "getwindowfocus"}).out == id + "\n";
    }));
  }
  Lab saved() const {
    const auto loaded = load_file(file_);
    return loaded ? loaded->lab : Lab();
  }

 private:
  std::string file_;
  ::pid_t process_ = -1;
};

void key(const char* keys) { ASSERT_EQ(run_program({"xdotool", "key", keys}).code, 0) << keys; }

std::string offered(const std::string& target) {
  return run_program({"xclip", "-selection", "clipboard", "-o", "-t", target}).out;
}
std::vector<std::string> targets() {
  std::istringstream in(offered("TARGETS"));
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}
bool offers(const std::vector<std::string>& all, std::string_view type) {
  return std::find(all.begin(), all.end(), type) != all.end();
}

class ClipboardPair : public ::testing::Test {
 protected:
  void SetUp() override {
    ASSERT_TRUE(display.is_there()) << "Xvfb did not start";
    ::setenv("DISPLAY", display.name().c_str(), 1); // for xdotool and xclip
    put_bytes(from_file, write_lab(sample("skerry-ferries")));
    put_bytes(to_file, write_lab(sample("skerry-ferries-16")));
  }
  // An action by its words, for those that have no keys.
  static void act(const char* words) {
    key("ctrl+k");
    ASSERT_EQ(run_program({"xdotool", "type", "--delay", "5", words}).code, 0);
    key("Return");
  }
  static void wait_for(std::string_view type) {
    ASSERT_TRUE(until([type] { return offers(targets(), type); })) << type << " is not offered";
  }
  const Display display;
  const TempFolder folder;
  const std::string from_file = folder.path("from.snuglab"), to_file = folder.path("to.snuglab");
};

TEST_F(ClipboardPair, MachinesGoFromOneProgramToTheOther) {
  const Program from(display, folder.path("one"), from_file), to(display, folder.path("two"), to_file);
  const Lab lab = from.saved(), before = to.saved();
  to.take_keyboard();
  from.take_keyboard();
  key("ctrl+a");
  key("ctrl+c");
  wait_for(kClipType);
  const std::vector<std::string> all = targets();
  for (const char* type : {"text/plain", "UTF8_STRING"}) EXPECT_TRUE(offers(all, type)) << type;
  const std::string bytes = offered(std::string(kClipType));
  EXPECT_TRUE(is_copied_machines(bytes));
  for (const Machine& m : lab.machines) EXPECT_TRUE(copies_machine(bytes, lab, m.id)) << m.name;
  EXPECT_EQ(offered("UTF8_STRING"), bytes) << "the same as text";

  to.take_keyboard();
  key("ctrl+v");
  key("ctrl+s");
  ASSERT_TRUE(until([&] {
    return to.saved().machines.size() == before.machines.size() + lab.machines.size();
  })) << to.saved().machines.size();
  EXPECT_EQ(bytes_of(from_file), write_lab(lab)) << "copying changes nothing";
  const Lab after = to.saved();
  for (const Machine& m : before.machines) EXPECT_NE(find<Machine>(after, m.id), nullptr) << m.name;
}

TEST_F(ClipboardPair, ThePictureIsOfferedAsPixelsAndAsDrawing) {
  const Program from(display, folder.path("one"), from_file);
  from.take_keyboard();
  key("ctrl+shift+c");
  wait_for("image/svg+xml");
  EXPECT_TRUE(offers(targets(), "image/png"));
  const std::string drawn = offered("image/svg+xml"), pixels = offered("image/png");
  EXPECT_EQ(run_program({"xmllint", "--noout", "--nonet", "-"}, drawn).code, 0);
  EXPECT_NE(drawn.find("tickets-db"), std::string::npos);
  EXPECT_EQ(pixels.substr(0, 8), "\x89PNG\r\n\x1a\n");
}

TEST_F(ClipboardPair, TheTableIsOfferedForMailSpreadsheetAndNotes) {
  const Program from(display, folder.path("one"), from_file);
  from.take_keyboard();
  act("copy as table");
  wait_for("text/csv");
  const std::vector<std::string> all = targets();
  for (const char* type : {"text/html", "text/tab-separated-values", "text/markdown", "text/plain"})
    EXPECT_TRUE(offers(all, type)) << type;
  const std::vector<CsvRow> rows = parse_csv(offered("text/csv"));
  ASSERT_GT(rows.size(), 9U);
  const std::string tabs = offered("text/tab-separated-values");
  EXPECT_EQ(offered("UTF8_STRING"), tabs) << "a spreadsheet takes the plain text";
  std::istringstream lines(tabs);
  std::string line;
  std::getline(lines, line);
  const auto columns = std::count(line.begin(), line.end(), '\t');
  EXPECT_EQ(columns + 1, std::ptrdiff_t(rows.front().size()));
  std::size_t n = 0;
  for (; std::getline(lines, line); ++n) {
    EXPECT_EQ(std::count(line.begin(), line.end(), '\t'), columns) << line;
    if (n < rows.size()) {
      EXPECT_EQ(line.substr(0, line.find('\t')), rows[n].at("Machine"));
    }
  }
  EXPECT_EQ(n, rows.size());
  const auto cells =
      run_program({"xmllint", "--html", "--nonet", "--xpath", "count(//tr[td])", "-"}, offered("text/html"));
  EXPECT_EQ(cells.out, std::to_string(rows.size()) + "\n") << cells.err;
  EXPECT_EQ(offered("text/markdown").substr(0, 3), "## ");
}

} // namespace
} // namespace snug::test
