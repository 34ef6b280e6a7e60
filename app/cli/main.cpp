#include "app/cli/cli.h"

#include <csignal>
#include <iostream>

int main(int argc, char** argv) {
#ifdef SIGXFSZ
  std::signal(SIGXFSZ, SIG_IGN); // a file size limit becomes a sentence instead of an end
#endif
  const std::vector<std::string> args(argv + 1, argv + argc);
  return snug::cli::run(args, {std::cout, std::cerr, {}});
}
