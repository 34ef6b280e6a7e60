#include "tests/support/display.h"

#include <array>
#include <csignal>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <unistd.h>

namespace snug::test {

Display::Display() {
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0) return;
  server_ = ::fork();
  if (server_ == 0) {
    ::close(ends[0]);
    ::prctl(PR_SET_PDEATHSIG, SIGTERM);
    const std::string fd = std::to_string(ends[1]);
    ::execlp("Xvfb", "Xvfb", "-displayfd", fd.c_str(), "-screen", "0", "1920x900x24", "-nolisten", "tcp",
             nullptr);
    ::_exit(127);
  }
  ::close(ends[1]);
  std::string number; // the server writes it and a line end
  for (char c = 0; ::read(ends[0], &c, 1) == 1 && c != '\n';) number += c;
  ::close(ends[0]);
  if (!number.empty()) name_ = ":" + number;
}

Display::~Display() {
  if (server_ <= 0) return;
  ::kill(server_, SIGTERM);
  ::waitpid(server_, nullptr, 0);
}

} // namespace snug::test
