// What a window does before its first picture, counted: PERFORMANCE row 7 without a clock.

#include "core/edit/build.h"
#include "ui/canvas/canvas.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/fix_buttons.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/when_seen.h"
#include "ui/window/main_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

namespace snug::test {
namespace {

// Looks when the canvas was painted for the first time.
class FirstPicture : public QObject {
 public:
  FirstPicture(Canvas& canvas, std::function<void()> look) : canvas_(canvas), look_(std::move(look)) {
    canvas.viewport()->installEventFilter(this);
  }
  bool eventFilter(QObject*, QEvent* event) override {
    if (event->type() == QEvent::UpdateRequest || event->type() == QEvent::Paint)
      QMetaObject::invokeMethod(
          this, [this] { ask(); }, Qt::QueuedConnection);
    return false;
  }
  bool was_painted() const { return was_painted_; }

 private:
  void ask() {
    if (was_painted_ || canvas_.take_painted().frames == 0) return;
    was_painted_ = true;
    look_();
  }
  Canvas& canvas_;
  std::function<void()> look_;
  bool was_painted_ = false;
};

int buttons_of(const QWidget& panel, const char* role) {
  int n = 0;
  for (const QPushButton* b : panel.findChildren<QPushButton*>())
    if (b->isVisible() && b->property("role") == QLatin1String(role)) ++n;
  return n;
}

TEST(Start, NothingIsTriedOutBeforeTheFirstPicture) {
  MainWindow window;
  window.resize(1720, 1000); // all panels are open
  window.start_sample("skerry-ferries");
  FindingsPanel& panel = window.findings();
  std::int64_t asked = -1;
  int rows = -1, fields = -1;
  const FirstPicture picture(window.canvas(), [&] {
    asked = panel.fixes().asked();
    rows = panel.shown_count();
    fields = static_cast<int>(window.properties().findChildren<QLineEdit*>().size());
  });
  window.show();
  ASSERT_TRUE(QTest::qWaitFor([&] { return picture.was_painted(); }));
  EXPECT_EQ(asked, 0);
  EXPECT_EQ(rows, 0);
  EXPECT_EQ(fields, 0);
  ASSERT_TRUE(QTest::qWaitFor([&] { return WhenSeen::waiting() == 0 && panel.fixes().is_done(); }));
  EXPECT_GT(panel.shown_count(), 0);
  int with_fix = 0;
  for (const Finding& f : window.session().analysis().findings())
    if (!f.accepted && holds_in(window.session().lab(), f, {}))
      with_fix += static_cast<int>(window.session().analysis().fixes(f).size());
  EXPECT_GT(with_fix, 0);
  EXPECT_EQ(buttons_of(panel, "fix"), with_fix);
}

// A window that is not shown holds nothing back for those after it.
TEST(Start, TheSheetIsPutOnOnce) {
  ASSERT_FALSE(qApp->styleSheet().isEmpty());
  const QString worn = qApp->styleSheet();
  {
    MainWindow window;
    EXPECT_TRUE(qApp->styleSheet().isEmpty());
    window.show();
    EXPECT_EQ(qApp->styleSheet(), worn);
    const MainWindow other;
    EXPECT_EQ(qApp->styleSheet(), worn);
  }
  { const MainWindow never_shown; }
  EXPECT_EQ(qApp->styleSheet(), worn);
}

// A repair is tried only for rows that are there, and none during a drag.
TEST(Start, NoRepairIsTriedDuringADrag) {
  MainWindow window;
  window.resize(1720, 1000); // all panels are open
  window.start_sample("skerry-ferries");
  window.show();
  FindingsPanel& panel = window.findings();
  ASSERT_TRUE(QTest::qWaitFor([&] { return WhenSeen::waiting() == 0 && panel.fixes().is_done(); }));
  const std::int64_t before = panel.fixes().asked();
  Session& session = window.session();
  Edit edit = set_field(session.lab(), session.lab().machines.front().id, "memory", std::int64_t{1});
  session.preview(edit);
  QTest::qWait(10);
  EXPECT_EQ(panel.fixes().asked(), before);
  session.perform(std::move(edit));
  EXPECT_FALSE(panel.fixes().is_done());
  ASSERT_TRUE(QTest::qWaitFor([&] { return panel.fixes().is_done(); }));
  EXPECT_GT(panel.fixes().asked(), before);
}

} // namespace
} // namespace snug::test
