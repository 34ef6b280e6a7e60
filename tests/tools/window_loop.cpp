// usage: window_loop STATE DOCUMENT ACKS SEED open|recover
// The real window with a hand that does anything, until it is killed: on DOCUMENT, which it saves now and
// then, or on what the journal in STATE holds. The file ACKS says how far it came: how often the lab changed,
// and the hash of the lab after the last change (in the first of the two places after an even number).

#include "core/document/read.h"
#include "core/document/write.h"
#include "tests/window/random_hand.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"
#include "ui/window/notice_bar.h"

#include <QApplication>
#include <QPushButton>
#include <QTest>

#include <charconv>
#include <cstring>
#include <fcntl.h>
#include <sys/mman.h>
#include <unistd.h>

namespace {

using namespace snug;

struct Acks {
  std::uint64_t changes, hash[2];
};

// Memory that the file keeps when the process is killed.
Acks* shared(const char* file) {
  const int f = ::open(file, O_RDWR | O_CREAT, 0644);
  if (f < 0 || ::ftruncate(f, sizeof(Acks)) != 0) return nullptr;
  void* at = ::mmap(nullptr, sizeof(Acks), PROT_READ | PROT_WRITE, MAP_SHARED, f, 0);
  ::close(f);
  return at == MAP_FAILED ? nullptr : static_cast<Acks*>(at);
}

bool take_recovery(MainWindow& window) {
  for (QPushButton* b : window.notice().findChildren<QPushButton*>())
    if (b->text() == QStringLiteral("Open it as it was")) return b->click(), true;
  return false;
}

} // namespace

int main(int argc, char** argv) {
  if (argc < 6) return 2;
  Acks* acks = shared(argv[3]);
  if (!acks) return 2;
  QApplication application(argc, argv);
  wear(application, Theme::light);
  std::uint64_t seed = 0;
  std::from_chars(argv[4], argv[4] + std::strlen(argv[4]), seed);
  MainWindow window;
  window.keep_in(QString::fromLocal8Bit(argv[1]));
  const auto told = [&] {
    acks->hash[(acks->changes + 1) % 2] = content_hash(write_lab(window.session().lab()));
    ++acks->changes;
  };
  QObject::connect(&window.session(), &Session::lab_changed, &window, told);
  const bool begun = std::strcmp(argv[5], "recover") == 0 ? take_recovery(window)
                                                          : window.open_file(QString::fromLocal8Bit(argv[2]));
  if (!begun) return 3;
  test::Hand hand(window);
  test::Random random(seed);
  for (;;) {
    test::act_at_random(random, hand);
    if (random.chance(3)) window.action("save")->trigger();
    QCoreApplication::processEvents();
  }
}
