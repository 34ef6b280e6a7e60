// What the window keeps: its place, and all work when a folder, a disk, a drop or the clipboard fails.

#include "core/document/read.h"
#include "core/document/recovery.h"
#include "core/document/write.h"
#include "core/gesture/move.h"
#include "tests/support/nobody.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"
#include "tests/support/temp_folder.h"
#include "tests/window/hand.h"
#include "ui/session/words.h"
#include "ui/window/hand_out.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QDragEnterEvent>
#include <QGuiApplication>
#include <QLabel>
#include <QMessageBox>
#include <QMimeData>
#include <QPushButton>
#include <QSplitter>
#include <QSplitterHandle>
#include <QTest>
#include <QTimer>
#include <QUrl>

#include <csignal>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

namespace snug::test {
namespace {

QPushButton* button(const QWidget& in, const QString& words) {
  for (QPushButton* b : in.findChildren<QPushButton*>())
    if (b->text() == words && b->isVisible()) return b;
  return nullptr;
}

// Presses a button of the question that comes next; counts the questions.
class Answer {
 public:
  explicit Answer(const QString& words) : words_(words) {
    QObject::connect(&timer_, &QTimer::timeout, [this] {
      QWidget* box = QApplication::activeModalWidget();
      if (!box) return;
      ++asked;
      QPushButton* b = button(*box, words_);
      if (b)
        QTest::mouseClick(b, Qt::LeftButton);
      else
        box->close();
    });
    timer_.start(5);
  }
  int asked = 0;

 private:
  QString words_;
  QTimer timer_;
};

// For as long as it lives, no file grows over `octets`.
class SmallFiles {
 public:
  explicit SmallFiles(::rlim_t octets) {
    std::signal(SIGXFSZ, SIG_IGN);
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit small{octets, before_.rlim_max};
    EXPECT_EQ(::setrlimit(RLIMIT_FSIZE, &small), 0);
  }
  ~SmallFiles() { ::setrlimit(RLIMIT_FSIZE, &before_); }
  SmallFiles(const SmallFiles&) = delete;
  SmallFiles& operator=(const SmallFiles&) = delete;

 private:
  rlimit before_{};
};

class Keeping : public ::testing::Test {
 protected:
  void SetUp() override { put_bytes(file(), write_lab(sample("skerry-ferries"))); }
  std::string file() const { return folder.path("mine.snuglab"); }
  QString settings() const { return as_qt(folder.path("config/settings.json")); }
  QString journals() const { return as_qt(folder.path("journals")); }
  static void grow(Session& session, std::int64_t gib) {
    session.seal();
    ASSERT_TRUE(session.perform(set_memory(session.lab(), machine(session.lab(), "beacon").id, gib * 1024)));
  }
  static void show(MainWindow& window) {
    window.show();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
  }
  static std::string said(MainWindow& window) { return window.notice().text().toStdString(); }
  static void press_save(MainWindow& window) { QTest::keyClick(&window, Qt::Key_S, Qt::ControlModifier); }
  TempFolder folder;
};

bool has(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

TEST_F(Keeping, PlaceAndSizesComeBack) {
  const QRect place(30, 40, 1300, 760);
  QList<int> across;
  {
    MainWindow window;
    window.remember_in(settings());
    window.setGeometry(place);
    show(window);
    ASSERT_TRUE(window.open_file(as_qt(file())));
    window.action("show_parts")->trigger();
    window.action("show_properties")->trigger();
    auto* splitter = window.findChildren<QSplitter*>().front();
    const QList<int> before = splitter->sizes();
    for (const auto& [at, by] : {std::pair(1, 45), {2, -30}}) {
      QWidget* handle = splitter->handle(at);
      const QPoint from = handle->rect().center(), to = from + QPoint(by, 0);
      QTest::mousePress(handle, Qt::LeftButton, {}, from);
      QTest::mouseMove(handle, to);
      QTest::mouseRelease(handle, Qt::LeftButton, {}, to);
    }
    across = splitter->sizes();
    EXPECT_GT(across.front(), before.front() + 20);
    EXPECT_GT(across.back(), before.back() + 20);
    ASSERT_TRUE(window.close());
  }
  MainWindow again;
  again.remember_in(settings());
  EXPECT_EQ(again.geometry(), on_screens(place, {QGuiApplication::primaryScreen()->availableGeometry()}));
  EXPECT_EQ(again.settings().get().across, across);
  EXPECT_EQ(again.settings().get().recent, QStringList{as_qt(file())});
  EXPECT_TRUE(again.notice().text().isEmpty()) << said(again);
}

TEST(Settings, AWindowIsNeverOffScreen) {
  const QRect left(0, 0, 1280, 800), right(1280, 0, 1920, 1080);
  const QRect there(1500, 100, 1000, 700);
  EXPECT_EQ(on_screens(there, {left, right}), there);
  EXPECT_EQ(on_screens(there, {left}), QRect(280, 100, 1000, 700)) << "the second screen is gone";
  EXPECT_EQ(on_screens({-5000, -5000, 400, 300}, {left}), QRect(0, 0, 400, 300));
  EXPECT_EQ(on_screens({100, 100, 4000, 3000}, {left}), left);
  EXPECT_EQ(on_screens({1200, 0, 1000, 700}, {left, right}), QRect(1280, 0, 1000, 700));
}

TEST(Settings, KeepTenFilesAndForgetThem) {
  const TempFolder folder;
  Settings settings;
  EXPECT_FALSE(settings.keep_in(as_qt(folder.path("s.json"))));
  for (int i = 0; i < 14; ++i) ASSERT_TRUE(settings.add_recent(QStringLiteral("/labs/%1").arg(i)));
  ASSERT_TRUE(settings.add_recent(QStringLiteral("/labs/9")));
  Settings other;
  EXPECT_FALSE(other.keep_in(as_qt(folder.path("s.json"))));
  EXPECT_EQ(other.get().recent.size(), 10);
  EXPECT_EQ(other.get().recent.front(), QStringLiteral("/labs/9"));
  EXPECT_EQ(other.get().recent.count(QStringLiteral("/labs/9")), 1);
  ASSERT_TRUE(other.forget_recent());
  ASSERT_TRUE(settings.add_recent(QStringLiteral("/labs/1")));
  EXPECT_EQ(settings.get().recent.size(), 1) << "what the other window forgot came back";
}

// RELIABILITY 35: 100 files of random octets, and good ones with some octets changed.
TEST(Settings, DamagedOnesAreSetAside) {
  const TempFolder folder;
  const std::string file = folder.path("s.json"), aside = folder.path("s.json.damaged");
  Remembered good;
  good.recent = {QStringLiteral("/a"), QStringLiteral("/b/\"ü")};
  good.window = {1, 2, 300, 400};
  good.across = {1, 2, 3};
  good.left = Folded::open;
  good.below = Folded::folded;
  const std::string bytes = write_settings(good).toStdString();
  ASSERT_EQ(read_settings(write_settings(good)), good);
  Random random(35);
  int damaged = 0;
  for (int i = 0; i < 200; ++i) {
    std::string bad = i < 100 ? std::string(random.below(600), '\0') : bytes;
    if (i < 100)
      for (char& c : bad) c = static_cast<char>(random.below(256));
    for (std::uint64_t n = i < 100 ? 0 : 1 + random.below(8); n-- > 0;)
      bad[random.below(bad.size())] = static_cast<char>(random.below(256));
    std::filesystem::remove(aside);
    put_bytes(file, bad);
    Settings settings;
    const auto problem = settings.keep_in(as_qt(file));
    damaged += problem.has_value();
    ASSERT_TRUE(problem || i >= 100);
    ASSERT_EQ(problem.has_value(), std::filesystem::exists(aside)) << i;
    if (!problem) continue;
    ASSERT_EQ(problem->message.id(), "settings-damaged");
    ASSERT_EQ(bytes_of(aside), bad);
    ASSERT_EQ(settings.get(), Remembered());
    ASSERT_TRUE(settings.add_recent(QStringLiteral("/c"))) << "it goes on as new";
    ASSERT_EQ(Settings().keep_in(as_qt(file)), std::nullopt);
  }
  EXPECT_GT(damaged, 150);
}

TEST_F(Keeping, DamagedSettingsAreOneSentence) {
  std::filesystem::create_directory(folder.path("config"));
  put_bytes(settings().toStdString(), "[window]\ngeometry=@ByteArray(\x01\xd9)\n");
  MainWindow window;
  window.remember_in(settings());
  show(window);
  EXPECT_TRUE(has(said(window), "it starts as new")) << said(window);
  EXPECT_TRUE(has(said(window), "settings.json.damaged")) << said(window);
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
  EXPECT_TRUE(window.open_file(as_qt(file())));
}

TEST_F(Keeping, SettingsThatCannotBeWrittenAreToldOnce) {
  MainWindow window;
  window.remember_in(settings());
  show(window);
  ASSERT_TRUE(window.open_file(as_qt(file())));
  const std::string before = bytes_of(settings().toStdString());
  const std::string second = folder.path("second.snuglab");
  put_bytes(second, bytes_of(file()));
  {
    const SmallFiles small(64);
    ASSERT_TRUE(window.open_file(as_qt(second)));
  }
  EXPECT_TRUE(has(said(window), "cannot be remembered")) << said(window);
  EXPECT_EQ(bytes_of(settings().toStdString()), before);
}

TEST_F(Keeping, EndOfTheSessionKeepsWorkWithoutAsking) {
  std::string lost;
  {
    MainWindow window;
    window.remember_in(settings());
    window.keep_in(journals());
    show(window);
    ASSERT_TRUE(window.open_file(as_qt(file())));
    EXPECT_TRUE(window.session_ends(false)) << "nothing is unsaved";
    grow(window.session(), 6);
    lost = write_lab(window.session().lab());
    Answer answer(QStringLiteral("Back"));
    EXPECT_TRUE(window.session_ends(true));
    EXPECT_TRUE(window.close());
    EXPECT_EQ(answer.asked, 0);
  }
  EXPECT_EQ(bytes_of(file()), write_lab(sample("skerry-ferries"))) << "the file is as it was saved";
  MainWindow again;
  again.keep_in(journals());
  show(again);
  QPushButton* take = button(again.notice(), QStringLiteral("Open it as it was"));
  ASSERT_NE(take, nullptr);
  QTest::mouseClick(take, Qt::LeftButton);
  EXPECT_EQ(write_lab(again.session().lab()), lost);
  again.session().close();
}

TEST_F(Keeping, EndOfTheSessionAsksWhereNothingIsKept) {
  MainWindow window; // without journals
  show(window);
  ASSERT_TRUE(window.open_file(as_qt(file())));
  grow(window.session(), 6);
  EXPECT_FALSE(window.session_ends(false));
  {
    Answer back(QStringLiteral("Back"));
    EXPECT_FALSE(window.session_ends(true));
    EXPECT_EQ(back.asked, 1);
  }
  Answer save(QStringLiteral("Save"));
  EXPECT_TRUE(window.session_ends(true));
  EXPECT_EQ(save.asked, 1);
  EXPECT_EQ(bytes_of(file()), write_lab(window.session().lab()));
}

// A session that did not end after all: what is changed from then on is asked about again.
TEST_F(Keeping, WorkAfterACancelledEndIsAskedAbout) {
  MainWindow window;
  window.keep_in(journals());
  show(window);
  ASSERT_TRUE(window.open_file(as_qt(file())));
  grow(window.session(), 6);
  ASSERT_TRUE(window.session_ends(false));
  grow(window.session(), 7);
  Answer back(QStringLiteral("Back"));
  EXPECT_FALSE(window.close());
  EXPECT_EQ(back.asked, 1);
  window.session().close();
}

TEST_F(Keeping, ReadOnlyFolderIsABarAndLaterItIsSaved) {
  MainWindow window;
  show(window);
  ASSERT_TRUE(window.open_file(as_qt(file())));
  grow(window.session(), 6);
  const std::string before = bytes_of(file());
  ASSERT_EQ(::chmod(folder.path().c_str(), 0555), 0);
  {
    const Nobody nobody;
    press_save(window);
  }
  ASSERT_EQ(::chmod(folder.path().c_str(), 0755), 0);
  EXPECT_TRUE(has(said(window), "mine.snuglab")) << said(window);
  EXPECT_TRUE(has(said(window), "allow writing")) << said(window);
  EXPECT_EQ(bytes_of(file()), before);
  EXPECT_TRUE(window.session().is_dirty());
  EXPECT_EQ(machine(window.session().lab(), "beacon").memory, 6 * 1024);
  press_save(window);
  EXPECT_FALSE(window.session().is_dirty());
  EXPECT_EQ(bytes_of(file()), write_lab(window.session().lab()));
}

TEST_F(Keeping, AFolderThatMayNotBeWrittenIsToldWhenItIsOpened) {
  MainWindow window;
  show(window);
  ASSERT_EQ(::chmod(folder.path().c_str(), 0555), 0);
  {
    const Nobody nobody;
    ASSERT_TRUE(window.open_file(as_qt(file())));
    EXPECT_TRUE(has(said(window), folder.path())) << said(window);
    EXPECT_TRUE(has(said(window), "another folder")) << said(window);
    grow(window.session(), 6);
    EXPECT_FALSE(window.session().save());
    EXPECT_TRUE(has(said(window), "Save as")) << said(window);
  }
  ASSERT_EQ(::chmod(folder.path().c_str(), 0755), 0);
  EXPECT_TRUE(window.session().is_dirty());
  TempFolder other;
  EXPECT_TRUE(window.session().save_as(as_qt(other.path("mine.snuglab"))));
  EXPECT_FALSE(window.session().is_dirty());
  press_save(window);
  EXPECT_EQ(bytes_of(other.path("mine.snuglab")), write_lab(window.session().lab()));
}

TEST_F(Keeping, AFileSizeLimitIsABarAndLaterItIsSaved) {
  MainWindow window;
  window.keep_in(journals());
  show(window);
  ASSERT_TRUE(window.open_file(as_qt(file())));
  const std::string before = bytes_of(file());
  grow(window.session(), 6);
  {
    const SmallFiles small(2000);
    press_save(window);
    EXPECT_TRUE(has(said(window), "the file is as it was")) << said(window);
    for (int gib = 7; gib < 60; ++gib) grow(window.session(), 2 + gib % 9);
    EXPECT_TRUE(has(said(window), "kept")) << "the journal says that it cannot go on: " << said(window);
    EXPECT_FALSE(window.session_ends(false));
  }
  EXPECT_EQ(bytes_of(file()), before);
  const std::string now = write_lab(window.session().lab());
  EXPECT_TRUE(window.session_ends(false)) << "what waited went into the journal";
  EXPECT_TRUE(has(said(window), "kept again")) << said(window);
  press_save(window);
  EXPECT_EQ(bytes_of(file()), now);
  window.session().close();
}

TEST_F(Keeping, AFullDiskIsABarAndLaterItIsSaved) {
  const std::string disk = folder.path("disk"), there = disk + "/mine.snuglab";
  std::filesystem::create_directory(disk);
  if (::mount("none", disk.c_str(), "tmpfs", 0, "size=128k") != 0)
    GTEST_SKIP() << "skipped: not in CI's sandbox: only root may mount a small file system";
  {
    put_bytes(there, bytes_of(file()));
    MainWindow window;
    show(window);
    EXPECT_TRUE(window.open_file(as_qt(there)));
    put_bytes(disk + "/filler", std::string(128 * 1024, 'f'));
    grow(window.session(), 6);
    press_save(window);
    EXPECT_TRUE(has(said(window), "the disk is full")) << said(window);
    EXPECT_TRUE(window.session().is_dirty());
    EXPECT_EQ(bytes_of(there), bytes_of(file()));
    HandOut papers_dialog(window.session(), &window);
    papers_dialog.choose(Paper::pdf);
    EXPECT_FALSE(papers_dialog.write_to(as_qt(disk + "/lab.pdf")));
    EXPECT_FALSE(std::filesystem::exists(disk + "/lab.pdf"));
    std::filesystem::remove(disk + "/filler");
    press_save(window);
    EXPECT_FALSE(window.session().is_dirty()) << said(window);
    EXPECT_EQ(bytes_of(there), write_lab(window.session().lab()));
  }
  EXPECT_EQ(::umount2(disk.c_str(), MNT_DETACH), 0);
}

TEST_F(Keeping, JournalsThatCannotBeginAreABar) {
  put_bytes(journals().toStdString(), "a file where the folder should be");
  MainWindow window;
  window.keep_in(journals());
  show(window);
  ASSERT_TRUE(window.open_file(as_qt(file())));
  grow(window.session(), 6);
  EXPECT_TRUE(has(said(window), "journals")) << said(window);
  EXPECT_EQ(machine(window.session().lab(), "beacon").memory, 6 * 1024);
  EXPECT_FALSE(window.session_ends(false));
}

void drop(MainWindow& window, const QMimeData& data) {
  QDragEnterEvent enter(QPoint(300, 300), Qt::CopyAction, &data, Qt::LeftButton, {});
  QCoreApplication::sendEvent(&window, &enter);
  if (!enter.isAccepted()) return;
  QDropEvent dropped(QPointF(300, 300), Qt::CopyAction, &data, Qt::LeftButton, {});
  QCoreApplication::sendEvent(&window, &dropped);
}

TEST_F(Keeping, BadDropsAreABarAndWorkStays) {
  MainWindow window;
  show(window);
  window.start_sample("skerry-ferries");
  const std::string lab = write_lab(window.session().lab());
  const std::string bad = folder.path("bad.snuglab"), pipe = folder.path("pipe");
  put_bytes(bad, "\x1f\x8b not a lab");
  ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
  const std::vector<std::pair<QUrl, const char*>> cases{
      {QUrl::fromLocalFile(as_qt(folder.path("gone.snuglab"))), "there is no such file"},
      {QUrl::fromLocalFile(as_qt(folder.path())), "this is a folder"},
      {QUrl::fromLocalFile(as_qt(pipe)), "this is a pipe"},
      {QUrl::fromLocalFile(as_qt(bad)), "bad.snuglab"},
      {QUrl(QStringLiteral("https://example.org/a.snuglab")), "is not a file on this computer"}};
  for (const auto& [url, sentence] : cases) {
    QMimeData data;
    data.setUrls({url});
    drop(window, data);
    EXPECT_TRUE(has(said(window), sentence)) << sentence << ": " << said(window);
    EXPECT_EQ(write_lab(window.session().lab()), lab);
  }
  QMimeData words_only;
  words_only.setText(QStringLiteral("words"));
  QDragEnterEvent enter(QPoint(300, 300), Qt::CopyAction, &words_only, Qt::LeftButton, {});
  QCoreApplication::sendEvent(&window, &enter);
  EXPECT_FALSE(enter.isAccepted());
}

TEST_F(Keeping, ADroppedLabOpensAndUnsavedWorkIsAskedAbout) {
  MainWindow window;
  show(window);
  QMimeData data;
  data.setUrls({QUrl::fromLocalFile(as_qt(file())), QUrl::fromLocalFile(as_qt(folder.path("other")))});
  drop(window, data);
  EXPECT_EQ(window.session().path(), as_qt(file()));
  EXPECT_TRUE(has(said(window), "one lab at a time")) << said(window);
  grow(window.session(), 6);
  const std::string mine = write_lab(window.session().lab());
  Answer back(QStringLiteral("Back"));
  drop(window, data);
  EXPECT_EQ(back.asked, 1);
  EXPECT_EQ(write_lab(window.session().lab()), mine);
}

// RELIABILITY 31: what comes by the clipboard is read as a file is.
TEST_F(Keeping, TheClipboardIsReadAsAFileIs) {
  MainWindow window;
  show(window);
  window.start_sample("skerry-ferries");
  const std::string mine = write_lab(window.session().lab());
  const auto paste = [&](const QString& text) {
    QGuiApplication::clipboard()->setText(text);
    window.canvas().setFocus();
    QTest::keyClick(&window, Qt::Key_V, Qt::ControlModifier);
  };
  paste({});
  EXPECT_TRUE(has(said(window), "no lab on the clipboard")) << said(window);
  paste(QStringLiteral("some words"));
  EXPECT_TRUE(has(said(window), "clipboard:1:1")) << said(window);
  paste(QString(QStringLiteral("[")).repeated(100'000));
  EXPECT_TRUE(has(said(window), "clipboard")) << said(window);
  EXPECT_EQ(write_lab(window.session().lab()), mine);
  const std::string good = write_lab(sample("branch-office"));
  Random random(31);
  for (int i = 0; i < scaled(300); ++i) {
    std::string bad = good;
    for (std::uint64_t n = 1 + random.below(8); n-- > 0;)
      bad[random.below(bad.size())] = static_cast<char>(random.below(128));
    paste(QString::fromStdString(bad));
    ASSERT_EQ(QApplication::activeModalWidget(), nullptr);
    ASSERT_TRUE(!said(window).empty() || !window.session().lab().facts.title.empty());
  }
  paste(QString::fromStdString(good));
  EXPECT_EQ(window.session().lab().machines.size(), sample("branch-office").machines.size());
  EXPECT_TRUE(window.session().path().isEmpty());
}

TEST_F(Keeping, TheDiagramGoesOntoTheClipboard) {
  MainWindow window;
  show(window);
  window.start_sample("skerry-ferries");
  QTest::keyClick(&window, Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
  const QMimeData* data = QGuiApplication::clipboard()->mimeData();
  ASSERT_TRUE(data->hasImage());
  EXPECT_GT(qvariant_cast<QImage>(data->imageData()).width(), 600);
  EXPECT_TRUE(data->data(QStringLiteral("image/svg+xml")).contains("tickets-1"));
  EXPECT_TRUE(has(said(window), "as a picture"));
}

TEST_F(Keeping, AHandOutThatCannotBeWrittenSaysSo) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  HandOut papers_dialog(window.session(), &window);
  for (const PaperInfo& p : papers()) {
    papers_dialog.choose(p.paper);
    const SmallFiles small(100);
    EXPECT_FALSE(papers_dialog.write_to(as_qt(folder.path("lab.out")))) << p.ending;
  }
  EXPECT_FALSE(papers_dialog.write_to(as_qt(folder.path("gone/lab.out"))));
  bool says_why = false;
  for (const QLabel* l : papers_dialog.findChildren<QLabel*>())
    says_why = says_why || l->text().contains(QStringLiteral("does not exist"));
  EXPECT_TRUE(says_why);
  EXPECT_EQ(folder.names(), std::vector<std::string>{"mine.snuglab"});
}

// What is being typed when the window closes or saves counts, and is asked about.
TEST_F(Keeping, WhatIsBeingTypedIsNotLost) {
  MainWindow window;
  window.keep_in(journals());
  show(window);
  ASSERT_TRUE(window.open_file(as_qt(file())));
  const auto type = [&](const char* name) {
    window.activateWindow(); // a question takes the keyboard away
    QTest::qWait(1);
    window.session().select({machine(window.session().lab(), "beacon").id});
    window.action("rename")->trigger();
    QTest::keyClicks(QApplication::focusWidget(), QLatin1String(name));
  };
  type("beacon-2");
  Answer back(QStringLiteral("Back"));
  EXPECT_FALSE(window.close());
  EXPECT_EQ(back.asked, 1);
  EXPECT_TRUE(window.session().is_dirty());
  window.session().undo();
  type("beacon-3");
  press_save(window);
  EXPECT_TRUE(has(bytes_of(file()), "\"beacon-3\""));
  window.session().close();
}

// A question is not lost because something else is said.
TEST_F(Keeping, WhatIsSaidMovesNothing) {
  MainWindow window;
  show(window);
  window.start_sample("skerry-ferries");
  settle(window);
  const auto place = [&](const QWidget& w) { return QRect(w.mapTo(&window, QPoint()), w.size()); };
  const QRect before = place(window.canvas());
  const QRectF view = window.canvas().on_view(snug::Box{0, 0, 100, 100});
  window.session().tell(Notice::Kind::told, QStringLiteral("one"));
  QTest::qWait(20);
  EXPECT_EQ(place(window.canvas()), before);
  EXPECT_EQ(window.canvas().on_view(snug::Box{0, 0, 100, 100}), view);
  auto* row = window.findChild<QFrame*>(QStringLiteral("notice"));
  ASSERT_TRUE(row && row->isVisible());
  EXPECT_TRUE(before.contains(place(*row))) << "over the picture, not over what is below it";
  const int high = row->height();
  window.resize(window.width(), window.height() - 60);
  QTest::qWait(20);
  EXPECT_EQ(row->height(), high);
  EXPECT_TRUE(place(window.canvas()).contains(place(*row)));
}

TEST_F(Keeping, QuestionsStayWhileOtherThingsAreSaid) {
  {
    Session session;
    session.keep_in(journals());
    ASSERT_TRUE(session.open(as_qt(file())));
    grow(session, 6);
  }
  MainWindow window;
  window.keep_in(journals());
  show(window);
  window.session().tell(Notice::Kind::error, QStringLiteral("something else"));
  EXPECT_TRUE(has(said(window), "something else\n")) << said(window);
  EXPECT_NE(button(window.notice(), QStringLiteral("Open it as it was")), nullptr);
  QTest::mouseClick(button(window.notice(), QStringLiteral("Throw it away")), Qt::LeftButton);
  EXPECT_EQ(said(window), "something else");
  EXPECT_TRUE(find_journals(journals().toStdString()).empty());
}

} // namespace
} // namespace snug::test
