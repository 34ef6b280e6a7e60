// The walk of the main job as a person does it: every click, drag and key is made by xdotool on a display of
// its own (Xvfb); what is read is the lab and what is painted.

#include "core/document/read.h"
#include "core/document/write.h"
#include "tests/support/display.h"
#include "tests/support/temp_folder.h"
#include "ui/canvas/canvas.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/when_seen.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"
#include "ui/window/hand_out.h"
#include "ui/window/main_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QFileDialog>
#include <QLineEdit>
#include <QMimeData>
#include <QMouseEvent>
#include <QPointer>
#include <QProcess>
#include <QPushButton>
#include <QTabBar>
#include <QTabWidget>
#include <QTest>
#include <QTimer>
#include <QToolButton>
#include <QWindow>

#include <filesystem>
#include <functional>

namespace snug::test {
namespace {

constexpr int kLimit = 20'000; // ms; only a broken program takes that long

template <typename F>
bool until(F&& done) {
  return QTest::qWaitFor(std::forward<F>(done), kLimit);
}

// What has arrived at the windows of this program.
class Arrived : public QObject {
 public:
  bool eventFilter(QObject* to, QEvent* event) override {
    if (!to->isWindowType()) return false;
    if (const auto* mouse = dynamic_cast<QMouseEvent*>(event)) at = mouse->globalPosition().toPoint();
    releases += event->type() == QEvent::MouseButtonRelease;
    presses += event->type() == QEvent::MouseButtonPress || event->type() == QEvent::MouseButtonDblClick;
    keys += event->type() == QEvent::KeyRelease;
    return false;
  }
  QPoint at;
  int presses = 0, releases = 0, keys = 0;
};
Arrived& arrived() {
  static Arrived all;
  return all;
}

void tool(const QStringList& arguments) {
  ASSERT_EQ(QProcess::execute(QStringLiteral("xdotool"), arguments), 0)
      << arguments.join(QLatin1Char(' ')).toStdString();
}
void point(QPoint global) {
  tool({QStringLiteral("mousemove"), QString::number(global.x()), QString::number(global.y())});
  EXPECT_TRUE(until([&] { return arrived().at == global; }))
      << "the pointer went to " << global.x() << "," << global.y();
}
void press() {
  const int before = arrived().presses;
  tool({QStringLiteral("mousedown"), QStringLiteral("1")});
  EXPECT_TRUE(until([&] { return arrived().presses > before; }));
}
void release() {
  const int before = arrived().releases;
  tool({QStringLiteral("mouseup"), QStringLiteral("1")});
  EXPECT_TRUE(until([&] { return arrived().releases > before; }));
}
void click(QPoint global, int times = 1) {
  point(global);
  for (int i = 0; i < times; ++i) press(), release();
}
void click(const QWidget& w) { click(w.mapToGlobal(w.rect().center())); }
// What the key does is to be waited for.
void key(const char* keys) { tool({QStringLiteral("key"), QLatin1String(keys)}); }
void type(const QString& text, const QLineEdit& into) {
  tool({QStringLiteral("type"), QStringLiteral("--delay"), QStringLiteral("2"), text});
  EXPECT_TRUE(until([&] { return into.text() == text; })) << into.text().toStdString();
}
// Without a window manager nobody gives the keyboard to a window.
void focus(const QWidget& w) {
  tool({QStringLiteral("windowfocus"), QString::number(w.window()->winId())});
  EXPECT_TRUE(until([&] { return QApplication::activeWindow() == w.window(); }));
}

// Presses keys that open a modal window of this type; `then` runs inside it and closes it.
template <typename Window>
void in_modal(const std::function<void()>& open, const std::function<void(Window&)>& then) {
  bool seen = false;
  QTimer wait;
  QObject::connect(&wait, &QTimer::timeout, [&] {
    auto* window = qobject_cast<Window*>(QApplication::activeModalWidget());
    if (!window || !window->isVisible() || !window->windowHandle()->isExposed()) return;
    wait.stop();
    then(*window);
    seen = true;
  });
  wait.start(10);
  open();
  EXPECT_TRUE(until([&] { return seen && !qobject_cast<Window*>(QApplication::activeModalWidget()); }));
}

// Names a file in the dialog that the keys open.
void name_file(const std::function<void()>& open, const QString& path) {
  in_modal<QFileDialog>(open, [&](QFileDialog& dialog) {
    focus(dialog);
    auto* line = dialog.findChild<QLineEdit*>();
    click(*line);
    key("ctrl+a");
    type(path, *line);
    const QPointer<QFileDialog> still(&dialog);
    key("Return"); // the list of completions may take the first
    if (!QTest::qWaitFor([&] { return !still || !still->isVisible(); }, 1000)) key("Return");
    EXPECT_TRUE(until([&] { return !still || !still->isVisible(); }));
  });
}

class Walk : public ::testing::Test {
 protected:
  void SetUp() override {
    window.resize(1280, 860);
    window.move(0, 0);
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    focus(window);
  }
  const Lab& lab() { return window.session().lab(); }
  Canvas& canvas() { return window.canvas(); }
  MachineId machine(std::string_view name) {
    for (const Machine& m : lab().machines)
      if (m.name == name) return m.id;
    ADD_FAILURE() << name;
    return {};
  }
  QPoint on(AnyId id, QPointF by = {14, 14}) {
    const snug::Box box = box_of(canvas().drawing(), id);
    return canvas().viewport()->mapToGlobal(canvas().on_view(QPointF(box.x, box.y) + by).toPoint());
  }
  QPoint pin(CardId card) {
    for (const AnyShape& s : canvas().drawing().shapes)
      if (const auto* b = std::get_if<BoxShape>(&s); b && b->of == AnyId(card) && b->part == Part::pin)
        return canvas().viewport()->mapToGlobal(canvas().on_view(b->box).center().toPoint());
    ADD_FAILURE() << "no pin";
    return {};
  }
  QString texts(AnyId id) {
    QString out;
    for (const AnyShape& s : canvas().drawing().shapes)
      if (const auto* t = std::get_if<TextShape>(&s); t && t->of == id)
        out += as_qt(t->text) + QLatin1Char('\n');
    return out;
  }
  const Finding* twice(MachineId machine_id) {
    for (const Finding& f : window.session().analysis().findings())
      if (f.rule->id == "address-twice")
        for (const AnyId id : f.places) {
          const Card* c = id.kind == Kind::card ? find<Card>(lab(), CardId{id.number}) : nullptr;
          if (c && c->machine == machine_id) return &f;
        }
    return nullptr;
  }
  QPushButton* fix_button(const QString& sentence) {
    for (QFrame* row : window.findings().findChildren<QFrame*>(QStringLiteral("finding")))
      for (QPushButton* b : row->findChildren<QPushButton*>())
        if (!row->isHidden() && row->accessibleName() == sentence &&
            b->property("role") == QStringLiteral("fix"))
          return b;
    return nullptr;
  }
  static bool is_seen(const QWidget* w) {
    return w && w->isVisible() && w->visibleRegion().contains(w->rect().center());
  }
  void drag_a_guest();
  void make_and_mend_a_conflict();
  void save_and_reopen();
  void hand_everything_out();
  void drag_the_picture_out();
  void drag_a_guest_into_another_window();
  void carry_out(QPoint from, QPoint to, const std::function<bool()>& arrived_there);

  TempFolder folder;
  MainWindow window;
};

void Walk::drag_a_guest() {
  const MachineId guest = machine("tickets-1"), from = machine("deck-a"), to = machine("deck-b");
  const std::string before = write_lab(lab());
  const QString room_from = texts(from), room_to = texts(to);
  const QImage ruler = window.ruler().grab().toImage();
  const QPoint start = on(guest), end = on(to, {60, 40});
  point(start);
  press();
  for (int i = 1; i <= 4; ++i) point(start + (end - start) * i / 4);
  ASSERT_TRUE(until([&] { return window.session().is_previewing(); }));
  EXPECT_TRUE(canvas().gesture_words().contains(QStringLiteral("deck-b then has")))
      << canvas().gesture_words().toStdString();
  const QString then_from = texts(from), then_to = texts(to);
  const QImage then_ruler = window.ruler().grab().toImage();
  EXPECT_NE(then_from, room_from);
  EXPECT_NE(then_to, room_to);
  EXPECT_NE(then_ruler, ruler);
  EXPECT_EQ(write_lab(lab()), before) << "a drag changes nothing before the drop";
  release();
  EXPECT_EQ(find<Machine>(lab(), guest)->carrier, to);
  EXPECT_EQ(texts(from), then_from);
  EXPECT_EQ(texts(to), then_to);
  key("ctrl+z");
  EXPECT_TRUE(until([&] { return write_lab(lab()) == before; }));
  EXPECT_EQ(texts(to), room_to);
  key("ctrl+shift+z");
  EXPECT_TRUE(until([&] { return find<Machine>(lab(), guest)->carrier == to; }));
}

void Walk::make_and_mend_a_conflict() {
  const MachineId hold = machine("hold");
  CardId card;
  for (const Card& c : lab().cards)
    if (c.machine == hold && !c.addresses.empty() && c.addresses.front().address &&
        to_text(*c.addresses.front().address).starts_with("172.22.10."))
      card = c.id;
  ASSERT_TRUE(card);
  ASSERT_EQ(twice(hold), nullptr);
  click(pin(card), 2);
  const QLineEdit* line = nullptr;
  ASSERT_TRUE(until([&] {
    line = canvas().findChild<QLineEdit*>(QStringLiteral("in_place"));
    return line && line->isVisible() && line->hasFocus();
  }));
  key("ctrl+a");
  type(QStringLiteral("172.22.10.10"), *line);
  key("Return");
  ASSERT_TRUE(until([&] { return twice(hold) != nullptr; }));
  const Finding* f = twice(hold);
  const auto fix = window.session().analysis().fix(*f);
  ASSERT_TRUE(fix);
  const QTabBar& tabs = *window.findChild<QTabWidget*>(QStringLiteral("sheet"))->tabBar();
  click(tabs.mapToGlobal(tabs.tabRect(0).center())); // the panels are folded in a low window
  ASSERT_TRUE(until([&] { return window.findings().isVisible(); }));
  QLineEdit* filter = &window.findings().filter();
  click(*filter);
  type(QStringLiteral("172.22.10.10"), *filter);
  ASSERT_TRUE(until([&] { return is_seen(fix_button(words(f->message))); }));
  EXPECT_EQ(fix_button(words(f->message))->text(), words(fix->label));
  click(*fix_button(words(f->message)));
  EXPECT_TRUE(until([&] { return twice(hold) == nullptr; }));
}

void Walk::save_and_reopen() {
  const QString path = as_qt(folder.path("ferries.snuglab"));
  name_file([] { key("ctrl+s"); }, path);
  EXPECT_FALSE(window.session().is_dirty());
  const std::string saved = write_lab(lab());
  EXPECT_EQ(bytes_of(path.toStdString()), saved);
  const auto loaded = load_file(path.toStdString());
  ASSERT_TRUE(loaded) << english(loaded.error());
  EXPECT_EQ(find<Machine>(loaded->lab, machine("tickets-1"))->carrier, machine("deck-b"));
  focus(window);
  key("ctrl+n");
  ASSERT_TRUE(until([&] { return lab().machines.empty(); }));
  name_file([] { key("ctrl+o"); }, path);
  ASSERT_TRUE(until([&] { return !lab().machines.empty(); }));
  EXPECT_EQ(write_lab(lab()), saved);
  EXPECT_EQ(window.session().path(), path);
  focus(window);
}

void Walk::hand_everything_out() {
  in_modal<HandOut>([] { key("ctrl+e"); },
                    [&](HandOut& dialog) {
                      auto* what = dialog.findChild<QComboBox*>(QStringLiteral("paper"));
                      const QList<QPushButton*> buttons = dialog.findChildren<QPushButton*>();
                      const auto save = std::find_if(buttons.begin(), buttons.end(),
                                                     [](const QPushButton* b) { return b->isDefault(); });
                      ASSERT_NE(save, buttons.end());
                      for (int i = 0; i < what->count(); ++i) {
                        focus(dialog);
                        what->setFocus();
                        if (i > 0) key("Down");
                        ASSERT_TRUE(until([&] { return what->currentIndex() == i; }));
                        const std::string file = folder.path("paper-" + std::to_string(i) +
                                                             std::string(papers()[std::size_t(i)].ending));
                        name_file([&] { click(**save); }, as_qt(file));
                        EXPECT_TRUE(until([&] { return std::filesystem::exists(file); })) << file;
                      }
                      focus(dialog);
                      key("Escape");
                      EXPECT_TRUE(until([&] { return !dialog.isVisible(); }));
                    });
  const auto begins = [this](int i, std::string_view ending) {
    return bytes_of(folder.path("paper-" + std::to_string(i) + std::string(ending))).substr(0, 400);
  };
  ASSERT_EQ(papers().size(), 7U);
  EXPECT_TRUE(begins(0, ".svg").find("<svg") != std::string::npos);
  EXPECT_EQ(begins(1, ".png").substr(1, 3), "PNG");
  EXPECT_EQ(begins(2, ".pdf").substr(0, 5), "%PDF-");
  EXPECT_TRUE(begins(3, "-addresses.csv").find(',') != std::string::npos);
  EXPECT_TRUE(begins(4, "-addresses.md").find('|') != std::string::npos);
  EXPECT_TRUE(begins(5, "-addresses.html").find("<html") != std::string::npos);
  EXPECT_TRUE(begins(6, "-findings.md").find('#') != std::string::npos);
}

// Takes whatever is dropped on it.
class Target : public QWidget {
 public:
  explicit Target(QRect where) {
    setWindowFlags(Qt::BypassWindowManagerHint);
    setAcceptDrops(true);
    setGeometry(where);
    show();
    raise();
  }
  QStringList formats;
  QImage image;

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override { event->acceptProposedAction(); }
  void dragMoveEvent(QDragMoveEvent* event) override { event->acceptProposedAction(); }
  void dropEvent(QDropEvent* event) override {
    formats = event->mimeData()->formats();
    image = qvariant_cast<QImage>(event->mimeData()->imageData());
    event->acceptProposedAction();
  }
};

// A drag out of the window has an event loop of its own, in which the hand goes on.
void Walk::carry_out(QPoint from, QPoint to, const std::function<bool()>& arrived_there) {
  point(from);
  press();
  int step = 0;
  QTimer hand;
  QObject::connect(&hand, &QTimer::timeout, [&] {
    const QPoint at = from + (to - from) * std::min(++step, 12) / 12;
    if (step <= 14)
      tool({QStringLiteral("mousemove"), QString::number(at.x() + step % 2), QString::number(at.y())});
    else if (step == 20)
      tool({QStringLiteral("mouseup"), QStringLiteral("1")});
  });
  hand.start(40);
  EXPECT_TRUE(until(arrived_there));
  hand.stop();
}

// A guest becomes a copy there, with what it costs said before it is let go; here everything stays.
void Walk::drag_a_guest_into_another_window() {
  MainWindow other;
  other.setWindowFlags(Qt::BypassWindowManagerHint);
  other.start_blank(false);
  other.setGeometry(1290, 0, 620, 860);
  other.show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&other));
  const std::string before = write_lab(lab());
  QString said;
  QTimer look;
  QObject::connect(&look, &QTimer::timeout, [&] {
    if (!other.canvas().is_busy()) return;
    said = other.canvas().gesture_words();
    EXPECT_TRUE(canvas().ghost_box().isNull()) << "the window that was left says nothing of it";
  });
  look.start(20);
  const QPoint to = other.canvas().viewport()->mapToGlobal(
      other.canvas().on_view(box_of(other.canvas().drawing(), AnyId{Kind::pc, 0})).center().toPoint());
  carry_out(on(machine("beacon")), to, [&] { return other.session().lab().machines.size() == 1; });
  EXPECT_TRUE(said.contains(QStringLiteral("PC"))) << said.toStdString();
  EXPECT_EQ(other.session().lab().machines.at(0).name, "beacon");
  EXPECT_TRUE(write_lab(lab()) == before);
  EXPECT_TRUE(until([&] { return !canvas().is_busy(); }));
  other.session().close();
}

// The button that hands out is dragged into another window: the diagram comes there as a picture.
void Walk::drag_the_picture_out() {
  QToolButton* button = nullptr;
  for (auto* b : window.findChildren<QToolButton*>())
    if (b->defaultAction() == window.action("hand_out")) button = b;
  ASSERT_NE(button, nullptr);
  Target target(QRect(200, 300, 240, 180));
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&target));
  carry_out(button->mapToGlobal(button->rect().center()), target.geometry().center(),
            [&] { return !target.formats.isEmpty(); });
  EXPECT_TRUE(target.formats.contains(QStringLiteral("image/png")))
      << target.formats.join(u'|').toStdString();
  EXPECT_TRUE(target.formats.contains(QStringLiteral("image/svg+xml")));
  EXPECT_GT(target.image.width(), 800);
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr) << "a drag is no click";
}

TEST_F(Walk, OpenDragMendSaveHandOut) {
  auto* sample = window.findChild<QPushButton*>(QStringLiteral("sample_skerry-ferries"));
  ASSERT_NE(sample, nullptr);
  click(*sample);
  ASSERT_TRUE(until([&] { return lab().machines.size() == 9; }));
  ASSERT_TRUE(until([] { return WhenSeen::waiting() == 0; }));
  QTest::qWait(50); // what was filled is laid out, and the picture has its place
  for (auto* b : window.findChildren<QToolButton*>())
    if (b->defaultAction() == window.action("show_all")) click(*b);
  ASSERT_TRUE(until([&] {
    const QPointF end = canvas().on_view(QPointF(canvas().drawing().width, canvas().drawing().height));
    return end.x() <= canvas().viewport()->width() + 1 && end.y() <= canvas().viewport()->height() + 1;
  }));
  QTest::qWait(200); // the scroll bars go, and it is shown larger
  drag_a_guest();
  make_and_mend_a_conflict();
  save_and_reopen();
  hand_everything_out();
  drag_the_picture_out();
  drag_a_guest_into_another_window();
  window.session().close();
}

} // namespace
} // namespace snug::test

int main(int argc, char** argv) {
  ::testing::InitGoogleTest(&argc, argv);
  const snug::test::Display display;
  if (!display.is_there()) {
    std::fputs("no display: Xvfb did not start\n", stderr);
    return 1;
  }
  qputenv("DISPLAY", QByteArray::fromStdString(display.name()));
  qputenv("QT_QPA_PLATFORM", "xcb");
  qputenv("QT_QPA_PLATFORMTHEME", ""); // file dialogs of Qt itself
  QApplication application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("snuglab-walk"));
  snug::wear(application, snug::Theme::light);
  application.installEventFilter(&snug::test::arrived());
  return RUN_ALL_TESTS();
}
