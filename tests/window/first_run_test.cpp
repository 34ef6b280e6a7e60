// The first start of a person who has nothing yet: no question, no wizard, and a document by keyboard alone.

#include "core/document/read.h"
#include "core/embedded/embedded.h"
#include "tests/support/temp_folder.h"
#include "ui/canvas/canvas.h"
#include "ui/session/words.h"
#include "ui/window/main_window.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>

#include <array>

namespace snug::test {
namespace {

class FirstRun : public ::testing::Test {
 protected:
  FirstRun() {
    for (std::size_t i = 0; i < kNames.size(); ++i) {
      before_[i] = qgetenv(kNames[i]);
      qputenv(kNames[i], QByteArray::fromStdString(home.path()));
    }
  }
  void TearDown() override {
    for (std::size_t i = 0; i < kNames.size(); ++i) qputenv(kNames[i], before_[i]);
  }
  // As the program does it.
  void start(MainWindow& window) const {
    window.remember_in(as_qt(home.path("snuglab/settings.json")));
    window.keep_in(as_qt(home.path("share/journals")));
    window.resize(1280, 800);
    window.show();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    QCoreApplication::processEvents();
  }
  static void press(Qt::Key key) {
    ASSERT_NE(QApplication::focusWidget(), nullptr);
    QTest::keyClick(QApplication::focusWidget(), key);
  }
  // Goes on with Tab until this has the keyboard.
  static void tab_to(const char* name) {
    for (int i = 0; i < 20; ++i) {
      if (QApplication::focusWidget() && QApplication::focusWidget()->objectName() == QLatin1String(name))
        return;
      press(Qt::Key_Tab);
    }
    FAIL() << name << " is not reached";
  }
  static constexpr std::array<const char*, 4> kNames{"HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME",
                                                     "XDG_CACHE_HOME"};
  const TempFolder home;

 private:
  std::array<QByteArray, 4> before_;
};

TEST_F(FirstRun, NothingStandsInTheWay) {
  MainWindow window;
  start(window);
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
  EXPECT_EQ(QApplication::activePopupWidget(), nullptr);
  EXPECT_TRUE(window.notice().text().isEmpty()) << window.notice().text().toStdString();
  for (const QWidget* w : QApplication::topLevelWidgets())
    EXPECT_TRUE(w == &window || !w->isVisible()) << w->metaObject()->className();
  EXPECT_TRUE(home.names().empty()) << home.names().front()
                                    << ": nothing is written before there is something";
}

TEST_F(FirstRun, TabAndEnterGiveABlankLab) {
  MainWindow window;
  start(window);
  tab_to("start_blank");
  press(Qt::Key_Return);
  EXPECT_TRUE(window.canvas().isVisible());
  EXPECT_TRUE(window.canvas().hasFocus());
  EXPECT_TRUE(window.session().lab().machines.empty());
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
}

TEST_F(FirstRun, TabArrowsAndEnterGiveASample) {
  MainWindow window;
  start(window);
  const auto samples = embedded_samples();
  ASSERT_GE(samples.size(), 2U);
  tab_to(("sample_" + std::string(samples[0].name)).c_str());
  press(Qt::Key_Right);
  ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("sample_") + as_qt(samples[1].name));
  press(Qt::Key_Enter);
  EXPECT_TRUE(window.canvas().hasFocus());
  const auto expected = read_lab(samples[1].bytes, samples[1].name);
  ASSERT_TRUE(expected);
  EXPECT_EQ(window.session().lab().facts.title, expected->facts.title);
  EXPECT_EQ(window.session().lab().machines.size(), expected->machines.size());
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
}

} // namespace
} // namespace snug::test
