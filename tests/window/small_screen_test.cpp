// On a small screen the picture has the room, and every panel is one click away; with real events.

#include "tests/support/temp_folder.h"
#include "tests/window/hand.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/parts_panel.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/when_seen.h"
#include "ui/session/words.h"

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QLineEdit>
#include <QScrollBar>
#include <QTabBar>
#include <QTabWidget>
#include <QTest>

namespace snug::test {
namespace {

class SmallScreen : public ::testing::Test {
 protected:
  void open(MainWindow& w, int width = 1280, int height = 800) {
    w.resize(width, height);
    w.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&w));
    ASSERT_TRUE(QTest::qWaitFor([] { return WhenSeen::waiting() == 0; }));
    QTest::qWait(20);
  }
  void start(int width = 1280, int height = 800) {
    window.start_sample("skerry-ferries");
    open(window, width, height);
  }
  void resize(int width, int height) {
    window.resize(width, height);
    QTest::qWait(20);
  }
  static QAbstractButton* tab(MainWindow& w, const char* title) {
    for (auto* b : w.findChildren<QAbstractButton*>(QStringLiteral("upright_tab")))
      if (b->text() == QLatin1String(title)) return b;
    ADD_FAILURE() << title;
    return nullptr;
  }
  void press(const char* title) {
    QTest::mouseClick(tab(window, title), Qt::LeftButton);
    QTest::qWait(5);
  }
  QTabWidget& sheet() { return *window.findChild<QTabWidget*>(QStringLiteral("sheet")); }
  void press_sheet(int at) {
    QTabBar& bar = *sheet().tabBar();
    QTest::mouseClick(&bar, Qt::LeftButton, {}, bar.tabRect(at).center());
    QTest::qWait(5);
  }
  QWidget& parts() { return *window.findChild<PartsPanel*>(); }
  bool is_whole() {
    const Canvas& c = window.canvas();
    const QRectF all = c.on_view(snug::Box{0, 0, c.drawing().width, c.drawing().height});
    return c.viewport()->rect().adjusted(-1, -1, 1, 1).contains(all.toAlignedRect());
  }
  MainWindow window;
};

TEST_F(SmallScreen, TheWholeLabIsInSightAndItsNamesCanBeRead) {
  start();
  EXPECT_TRUE(is_whole());
  EXPECT_GE(window.canvas().zoom(), 0.7);
  EXPECT_EQ(window.canvas().horizontalScrollBar()->maximum(), 0);
  resize(1366, 768);
  EXPECT_TRUE(is_whole());
  EXPECT_GE(window.canvas().zoom(), 0.65);
}

TEST_F(SmallScreen, EverythingIsOpenWhereThereIsRoom) {
  start(1920, 1080);
  EXPECT_TRUE(parts().isVisible());
  EXPECT_TRUE(window.properties().isVisible());
  EXPECT_TRUE(window.findings().isVisible());
  EXPECT_TRUE(is_whole());
  EXPECT_GE(window.canvas().zoom(), 0.8);
}

TEST_F(SmallScreen, OneClickOpensASideAndAnotherOneClosesIt) {
  start();
  EXPECT_FALSE(parts().isVisible());
  EXPECT_FALSE(window.properties().isVisible());
  const qreal zoom = window.canvas().zoom();
  press("Parts");
  EXPECT_TRUE(parts().isVisible());
  EXPECT_GE(parts().width(), 170);
  EXPECT_TRUE(tab(window, "Parts")->isChecked());
  press("Outline");
  EXPECT_FALSE(parts().isVisible());
  EXPECT_FALSE(tab(window, "Parts")->isChecked());
  press("Outline");
  EXPECT_NEAR(window.canvas().zoom(), zoom, 0.001);
  press("Properties");
  EXPECT_TRUE(window.properties().isVisible());
  EXPECT_NE(window.properties().editor("name"), nullptr) << "it is filled when it is seen";
}

TEST_F(SmallScreen, TheNameOfATabOpensAndClosesWhatIsBelow) {
  start();
  EXPECT_FALSE(window.findings().isVisible());
  EXPECT_TRUE(sheet().tabText(0).startsWith(QStringLiteral("Findings ")));
  EXPECT_FALSE(sheet().tabIcon(0).isNull()) << "that there are errors is seen";
  press_sheet(0);
  EXPECT_TRUE(window.findings().isVisible());
  EXPECT_GE(window.findings().height(), 150);
  press_sheet(1);
  EXPECT_EQ(sheet().currentIndex(), 1) << "another one comes in its place";
  EXPECT_FALSE(window.findings().isVisible());
  press_sheet(1);
  EXPECT_LE(sheet().height(), sheet().tabBar()->height() + 4);
  QTest::mouseClick(window.findChild<QAbstractButton*>(QStringLiteral("fold")), Qt::LeftButton);
  QTest::qWait(5);
  EXPECT_GE(sheet().height(), 150);
}

TEST_F(SmallScreen, KeysOpenThemToo) {
  start();
  QTest::keyClick(&window, Qt::Key_3, Qt::AltModifier);
  EXPECT_TRUE(parts().isVisible());
  QTest::keyClick(&window, Qt::Key_6, Qt::AltModifier);
  EXPECT_TRUE(window.properties().isVisible());
  QTest::keyClick(&window, Qt::Key_1, Qt::AltModifier);
  EXPECT_TRUE(window.findings().isVisible());
  QAbstractButton* properties = tab(window, "Properties");
  properties->setFocus();
  QTest::keyClick(properties, Qt::Key_Space);
  EXPECT_FALSE(window.properties().isVisible());
}

// Who begins with nothing sees what can be put into it.
TEST_F(SmallScreen, ABlankLabShowsTheParts) {
  window.start_blank(false);
  open(window);
  EXPECT_TRUE(parts().isVisible());
  EXPECT_FALSE(window.properties().isVisible());
}

TEST_F(SmallScreen, WhatAPersonChoseStays) {
  const TempFolder folder;
  const QString file = as_qt(folder.path("settings.json"));
  window.remember_in(file);
  start();
  press("Properties");
  resize(1920, 1080);
  press("Parts"); // closes it
  resize(1280, 800);
  EXPECT_TRUE(window.properties().isVisible());
  resize(1920, 1080);
  EXPECT_FALSE(parts().isVisible());
  press_sheet(0); // closes it
  window.close();
  MainWindow next;
  next.remember_in(file);
  next.start_sample("skerry-ferries");
  open(next, 1920, 1080);
  EXPECT_TRUE(next.properties().isVisible());
  EXPECT_FALSE(next.findings().isVisible());
  EXPECT_FALSE(next.findChild<PartsPanel*>()->isVisible());
}

// What was folded when the window was closed has its width when it is opened next time.
TEST_F(SmallScreen, AWidthIsKeptWhileItIsFolded) {
  const TempFolder folder;
  const QString file = as_qt(folder.path("settings.json"));
  window.remember_in(file);
  start();
  press("Parts");
  const int width = parts().width();
  press("Parts");
  window.close();
  MainWindow next;
  next.remember_in(file);
  next.start_sample("skerry-ferries");
  open(next);
  QTest::mouseClick(tab(next, "Parts"), Qt::LeftButton);
  QTest::qWait(5);
  EXPECT_NEAR(next.findChild<PartsPanel*>()->width(), width, 2);
}

// A part is dragged out of the opened panel onto the picture.
TEST_F(SmallScreen, APartIsDraggedFromTheOpenedPanel) {
  start();
  press("Parts");
  QAbstractButton* router = nullptr;
  for (auto* b : parts().findChildren<QAbstractButton*>())
    if (b->accessibleName() == QLatin1String("Router")) router = b;
  ASSERT_NE(router, nullptr);
  const std::size_t before = window.session().lab().machines.size();
  const Canvas& canvas = window.canvas();
  const snug::Box frame = box_of(canvas.drawing(), AnyId{Kind::pc, 0});
  const QPoint goal =
      canvas.viewport()->mapTo(&window, canvas.on_view(QPointF(frame.x + 60, frame.y + 60)).toPoint());
  QTest::mousePress(router, Qt::LeftButton, {}, QPoint(10, 10));
  for (int i = 1; i <= 10; ++i) {
    const QPoint at =
        router->mapFrom(&window, router->mapTo(&window, QPoint(10, 10)) * (10 - i) / 10 + goal * i / 10);
    QMouseEvent move(QEvent::MouseMove, at, router->mapToGlobal(at), Qt::NoButton, Qt::LeftButton, {});
    QCoreApplication::sendEvent(router, &move);
  }
  QTest::mouseRelease(router, Qt::LeftButton, {}, router->mapFrom(&window, goal));
  EXPECT_EQ(window.session().lab().machines.size(), before + 1);
}

} // namespace
} // namespace snug::test
