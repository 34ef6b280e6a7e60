// The parts on the left in a small window: whole, however many are shown.

#include "tests/window/hand.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QFontMetrics>
#include <QPushButton>
#include <QTest>

namespace snug::test {
namespace {

TEST(Parts, TwoLinesAreNeverSqueezed) {
  MainWindow window;
  Hand hand(window);
  window.resize(1280, 800);
  window.start_blank(false);
  QTest::qWait(50);
  QPushButton* more = nullptr;
  for (QPushButton* b : window.findChildren<QPushButton*>())
    if (b->isVisible() && b->isCheckable() && b->text() == QStringLiteral("More roles")) more = b;
  ASSERT_NE(more, nullptr);
  for (const bool all : {false, true}) {
    if (all) QTest::mouseClick(more, Qt::LeftButton);
    QTest::qWait(50);
    int parts = 0;
    for (QPushButton* b : window.findChildren<QPushButton*>()) {
      if (!b->isVisible() || !b->text().contains(QLatin1Char('\n'))) continue;
      ++parts;
      EXPECT_GE(b->height(), 2 * QFontMetrics(b->font()).height()) << b->text().toStdString();
      EXPECT_GE(b->height(), b->sizeHint().height()) << b->text().toStdString();
    }
    EXPECT_GE(parts, all ? 15 : 5);
  }
}

} // namespace
} // namespace snug::test
