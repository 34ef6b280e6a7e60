// usage: journal_loop STATE DOCUMENT ACKS SEED ACTS edit|save|recover
// A person at work (JournalSession) on DOCUMENT with a journal in the folder STATE; each act takes 100 ms of
// its clock. The file ACKS says how far it came: two numbers, changes made and changes kept in the journal.
// `save` saves DOCUMENT now and then. `recover` does no work, but recovers the journal again and again. ACTS
// 0: until killed. Exit code 0, or 4 where no journal can be begun, with the complaint on stderr.

#include "core/document/read.h"
#include "core/document/recovery.h"
#include "tests/support/journal_session.h"

#include <charconv>
#include <csignal>
#include <cstring>
#include <fcntl.h>
#include <iostream>
#include <sys/mman.h>
#include <unistd.h>

namespace {

using namespace snug;

std::uint64_t number(const char* text) {
  std::uint64_t n = 0;
  std::from_chars(text, text + std::strlen(text), n);
  return n;
}

// Memory that the file keeps when the process is killed.
std::uint64_t* shared(const char* file) {
  const int f = ::open(file, O_RDWR | O_CREAT, 0644);
  if (f < 0 || ::ftruncate(f, 2 * sizeof(std::uint64_t)) != 0) return nullptr;
  void* at = ::mmap(nullptr, 2 * sizeof(std::uint64_t), PROT_READ | PROT_WRITE, MAP_SHARED, f, 0);
  ::close(f);
  return at == MAP_FAILED ? nullptr : static_cast<std::uint64_t*>(at);
}

int complain(const Problem& p) {
  std::cerr << english(p) << '\n';
  return 4;
}

int recover_for_ever(const std::string& state) {
  for (;;)
    for (const FoundJournal& found : find_journals(state)) {
      auto recovered = recover(found.path);
      if (!recovered) return complain(recovered.error());
      const auto replayed = replay(*recovered);
      if (!replayed) return complain(replayed.error());
      const auto journal = Journal::resume(std::move(*recovered), *replayed, {});
      if (!journal) return complain(journal.error());
    }
}

} // namespace

int main(int argc, char** argv) {
  if (argc < 7) return 2;
  const std::string_view mode = argv[6];
  if (mode == "recover") return recover_for_ever(argv[1]);
  std::uint64_t* acks = shared(argv[3]);
  const auto loaded = load_file(argv[2]);
  if (!acks || !loaded) return 2;
  auto journal = Journal::begin(argv[1], test::head_of(loaded->lab, argv[2]), {});
  if (!journal) return complain(journal.error());
  test::JournalSession session(number(argv[4]), loaded->lab, mode == "save" ? argv[2] : "");
  session.changed = [&] {
    ++acks[0];
    if (!journal->not_kept_since()) acks[1] = acks[0];
  };
  const std::uint64_t acts = number(argv[5]);
  for (std::uint64_t n = 1; acts == 0 || n <= acts; ++n)
    if (!session.act(&*journal, std::chrono::milliseconds(100 * n))) complain(*session.problem);
  return 0;
}
