// usage: save_loop FILE OCTETS TIMES [keep]
// Saves FILE so often with the checked save routine; the octets are the last digit of the round, so that a
// torn file can be told from a whole one. TIMES 0: until killed. Exit code 0, or 4 with the complaint on
// stderr.

#include "core/document/save.h"

#include <charconv>
#include <csignal>
#include <cstring>
#include <iostream>

namespace {

long number(const char* text) {
  long n = 0;
  std::from_chars(text, text + std::strlen(text), n);
  return n;
}

} // namespace

int main(int argc, char** argv) {
  if (argc < 4) return 2;
#ifdef SIGXFSZ
  std::signal(SIGXFSZ, SIG_IGN);
#endif
  const long octets = number(argv[2]);
  const long times = number(argv[3]);
  const snug::SaveOptions options{argc > 4, {}};
  for (long round = 0; times == 0 || round < times; ++round) {
    const std::string bytes(static_cast<std::size_t>(octets), static_cast<char>('0' + round % 10));
    if (const auto saved = snug::save_file(argv[1], bytes, options); !saved) {
      std::cerr << snug::english(saved.error()) << '\n';
      return 4;
    }
  }
  return 0;
}
