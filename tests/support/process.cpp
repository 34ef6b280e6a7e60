#include "tests/support/process.h"

#include <cstdio>
#include <memory>
#include <sys/wait.h>
#include <unistd.h>

namespace snug::test {

namespace {

using File = std::unique_ptr<std::FILE, int (*)(std::FILE*)>;

File scratch() { return {std::tmpfile(), &std::fclose}; }

std::string content(std::FILE* file) {
  std::string out;
  char part[4096];
  std::rewind(file);
  for (std::size_t n = 0; (n = std::fread(part, 1, sizeof part, file)) > 0;) out.append(part, n);
  return out;
}

} // namespace

Ran run_program(const std::vector<std::string>& program, std::string_view input) {
  const File in = scratch();
  const File out = scratch();
  const File err = scratch();
  if (!in || !out || !err) return {};
  if (!input.empty() && std::fwrite(input.data(), 1, input.size(), in.get()) != input.size()) return {};
  std::rewind(in.get());
  std::vector<std::string> words = program;
  std::vector<char*> argv;
  argv.reserve(words.size() + 1);
  for (std::string& word : words) argv.push_back(word.data());
  argv.push_back(nullptr);
  const pid_t child = fork();
  if (child == 0) {
    const bool ready =
        dup2(fileno(in.get()), 0) == 0 && dup2(fileno(out.get()), 1) == 1 && dup2(fileno(err.get()), 2) == 2;
    if (ready) execvp(argv[0], argv.data());
    _exit(127);
  }
  int status = 0;
  if (child < 0 || waitpid(child, &status, 0) != child) return {};
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, content(out.get()), content(err.get())};
}

} // namespace snug::test
