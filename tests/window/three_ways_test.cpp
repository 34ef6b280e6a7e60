// One lab of twelve machines and six segments, built from a blank one three times: by dragging, by clicks
// alone, by the keyboard alone. The files are equal.

#include "core/analyse/analyse.h"
#include "core/document/new_lab.h"
#include "core/document/write.h"
#include "core/gesture/add.h"
#include "tests/window/hand.h"
#include "ui/window/find_box.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QPushButton>
#include <QTest>

#include <algorithm>

namespace snug::test {
namespace {

constexpr AnyId kPc{Kind::pc, 0};

Lab blank() {
  Lab lab = blank_lab("00112233445566778899aabbccddeeff");
  lab.pc.installed = 64 * 1024;
  Lan lan;
  lan.id.number = lab.facts.next_id++;
  lan.name = "home";
  lab.lans.push_back(lan);
  return lab;
}

// A person at the window. Every way to do a thing is one of these.
class Person {
 public:
  Person() : hand_((window_.start_blank(false), window_)) {
    window_.session().start(blank());
    QTest::qWait(20);
    look();
    tap(button("More roles"));
  }
  virtual ~Person() = default;
  virtual void add(const char* part, AnyId to, int count) = 0;
  virtual void connect(const char* machine, const char* segment) = 0;

  std::string build() {
    for (const char* part : {"Isolated segment", "Isolated segment", "NAT segment", "Isolated segment",
                             "Bridged segment", "Isolated segment"})
      add(part, kPc, 1);
    add("Directory server", segment("Segment 1"), 1);
    add("Management server", segment("Segment 1"), 1);
    add("Shared storage", segment("Segment 2"), 1);
    add("Router", segment("Segment 3"), 1);
    add("Hypervisor (nested)", kPc, 2);
    for (const char* host : {"nested-hypervisor", "nested-hypervisor-2"}) {
      connect(host, "Segment 1");
      connect(host, "Segment 2");
    }
    connect("router", "Segment 1");
    connect("router", "Segment 4");
    add("Application", machine("nested-hypervisor"), 3);
    add("Web server", machine("nested-hypervisor-2"), 2);
    add("Database", machine("nested-hypervisor-2"), 1);
    for (const char* guest : {"application", "application-2", "application-3", "web-server", "web-server-2"})
      connect(guest, "Segment 4");
    connect("database", "Segment 6");
    return write_lab(hand_.lab());
  }

 protected:
  MachineId machine(const char* name) { return hand_.machine(name); }
  SegmentId segment(const char* name) { return hand_.segment(name); }
  QPushButton* button(const char* title) {
    for (QPushButton* b : window_.findChildren<QPushButton*>())
      if (b->isVisibleTo(&window_) && b->text().section(QLatin1Char('\n'), 0, 0) == QLatin1String(title))
        return b;
    ADD_FAILURE() << "no part " << title;
    return nullptr;
  }
  void tap(QPushButton* b) { QTest::mouseClick(b, Qt::LeftButton); }
  void look() { window_.canvas().show_all(); }
  // The end of what stands there.
  QPoint place(AnyId to) {
    if (to.kind == Kind::segment) return hand_.rail(SegmentId{to.number});
    const snug::Box box = box_of(window_.canvas().drawing(), to);
    return window_.canvas().on_view(QPointF(box.right() - 3, box.bottom() - 3)).toPoint();
  }
  QPoint handle(MachineId id) {
    hand_.hover(hand_.on(id));
    const auto at = window_.canvas().handle_of(id);
    EXPECT_TRUE(at);
    return at.value_or(QPointF()).toPoint();
  }

  MainWindow window_;
  Hand hand_;
};

class Dragger : public Person {
  void add(const char* part, AnyId to, int count) override {
    look();
    QPushButton* b = button(part);
    const QPoint goal = window_.canvas().viewport()->mapToGlobal(place(to));
    QTest::mousePress(b, Qt::LeftButton, {}, QPoint(8, 8));
    const QPoint from = b->mapToGlobal(QPoint(8, 8));
    constexpr int kSteps = 9;
    for (int i = 1; i <= kSteps; ++i) {
      const QPoint at = from + (goal - from) * i / kSteps;
      QMouseEvent event(QEvent::MouseMove, b->mapFromGlobal(at), at, Qt::NoButton, Qt::LeftButton, {});
      QCoreApplication::sendEvent(b, &event);
    }
    if (count > 1) QTest::keyClicks(b, QString::number(count));
    QTest::mouseRelease(b, Qt::LeftButton, {}, b->mapFromGlobal(goal));
  }
  void connect(const char* machine_name, const char* segment_name) override {
    look();
    const QPoint to = hand_.rail(segment(segment_name));
    hand_.drag(handle(machine(machine_name)), to);
  }
};

class Clicker : public Person {
  void add(const char* part, AnyId to, int count) override {
    for (int i = 0; i < count; ++i) {
      look();
      const QPoint at = place(to);
      tap(button(part));
      hand_.hover(at);
      EXPECT_TRUE(hand_.session().is_previewing()) << window_.canvas().gesture_words().toStdString();
      hand_.click(at);
    }
  }
  void connect(const char* machine_name, const char* segment_name) override {
    look();
    const QPoint to = hand_.rail(segment(segment_name));
    hand_.click(handle(machine(machine_name)));
    hand_.hover(to);
    hand_.click(to);
  }
};

class Typist : public Person {
  void type_to(const QString& what) {
    QTest::keyClick(&window_, Qt::Key_K, Qt::ControlModifier);
    ASSERT_TRUE(window_.find_box().hasFocus());
    QTest::keyClicks(&window_.find_box(), what);
    QTest::keyClick(&window_.find_box(), Qt::Key_Return);
  }
  void add(const char* part, AnyId to, int count) override {
    if (to != kPc) type_to(QString::fromStdString(name_of(hand_.lab(), to)));
    QTest::keyClick(&window_, Qt::Key_3, Qt::AltModifier);
    const QPushButton* wanted = button(part);
    constexpr int kMost = 60;
    for (int i = 0; i < kMost && QApplication::focusWidget() != wanted; ++i)
      QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    ASSERT_EQ(QApplication::focusWidget(), wanted) << part;
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    ASSERT_EQ(QApplication::focusWidget(), &window_.canvas());
    if (to == kPc) QTest::keyClick(QApplication::focusWidget(), Qt::Key_Home);
    if (count > 1) QTest::keyClicks(QApplication::focusWidget(), QString::number(count));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
  }
  void connect(const char* machine_name, const char* segment_name) override {
    type_to(QLatin1String(machine_name));
    ASSERT_EQ(hand_.session().selection(), std::vector<AnyId>{machine(machine_name)});
    type_to(QStringLiteral("Connect to: ") + QLatin1String(segment_name));
  }
};

TEST(ThreeWays, DragsClicksAndKeysBuildTheSameLab) {
  const std::string dragged = Dragger().build();
  if (HasFailure()) FAIL() << "by dragging";
  const std::string clicked = Clicker().build();
  if (HasFailure()) FAIL() << "by clicks";
  const std::string typed = Typist().build();
  const auto count = [&](const char* what) {
    std::size_t n = 0;
    for (std::size_t at = dragged.find(what); at != std::string::npos; at = dragged.find(what, at + 1)) ++n;
    return n;
  };
  EXPECT_EQ(count("{\"id\": \"s"), 6U) << dragged;
  EXPECT_EQ(count("{\"id\": \"m"), 12U) << dragged;
  EXPECT_EQ(dragged, clicked);
  EXPECT_EQ(dragged, typed);
}

} // namespace
} // namespace snug::test
