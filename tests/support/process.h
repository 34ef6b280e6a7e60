#pragma once
// Runs another program, for checks against the outside.

#include <string>
#include <string_view>
#include <vector>

namespace snug::test {

struct Ran {
  int code = -1; // exit code; 127: the program is not there; -1: it ended by a signal
  std::string out;
  std::string err;
};

// `program` is looked up in PATH unless it holds a slash. `input` becomes its standard input. No shell.
Ran run_program(const std::vector<std::string>& program, std::string_view input = {});

} // namespace snug::test
