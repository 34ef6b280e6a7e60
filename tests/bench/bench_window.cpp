// Dragging on a large lab beside painting its whole view, at the same zoom (PERFORMANCE row 4). Every move of
// the drag changes the room that is aimed at, so each frame holds apply, analysis, drawing and painting.
// "drag" holds the guest at the end of a room, where no other moves; "restyle" at its beginning, where all
// guests of both rooms, nearly all that is in view, make room in every frame. "result" is the number of
// machines.

#include "core/document/write.h"
#include "tests/bench/bench_lab.h"
#include "tests/bench/measure.h"
#include "ui/canvas/canvas.h"
#include "ui/theme/theme.h"
#include "ui/window/hand_out.h"
#include "ui/window/main_window.h"

#include <QAction>
#include <QApplication>
#include <QElapsedTimer>
#include <QFile>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <QTimer>

#include <array>
#include <functional>

namespace snug::bench {
namespace {

// A window that shows a lab at one pixel of the window for one of the drawing.
class Scene {
 public:
  explicit Scene(std::size_t machines) {
    window_.resize(1600, 1000);
    window_.session().start(guest_lab(machines));
    window_.show();
    settle();
    canvas().set_zoom(1, {0, 0});
    settle();
  }
  Canvas& canvas() { return window_.canvas(); }
  double machines() { return static_cast<double>(window_.session().lab().machines.size()); }
  // Behind the last guest of a room.
  QPointF end_of(MachineId id) {
    const Box box = box_of(canvas().drawing(), id);
    return canvas().on_view(QPointF(box.right() - 14, box.bottom() - 8));
  }
  // The first inner guest that the view shows, and two hypervisors that it can be held over.
  QPointF at(MachineId id) {
    const Box box = box_of(canvas().drawing(), id);
    return canvas().on_view(QPointF(box.x + 16, box.y + 16));
  }
  std::vector<MachineId> rooms() {
    std::vector<MachineId> out;
    for (const std::uint32_t h : window_.session().analysis().index().hypervisors()) {
      const MachineId id = window_.session().lab().machines[h].id;
      if (canvas().viewport()->rect().contains(at(id).toPoint())) out.push_back(id);
    }
    return out;
  }
  MachineId guest_of(MachineId room) {
    for (const Machine& m : window_.session().lab().machines)
      if (m.carrier == room) return m.id;
    return {};
  }
  void send(QEvent::Type type, QPointF where, Qt::MouseButton button) {
    QMouseEvent event(type, where, canvas().viewport()->mapToGlobal(where), button,
                      type == QEvent::MouseButtonRelease ? Qt::NoButton : Qt::LeftButton, {});
    QCoreApplication::sendEvent(canvas().viewport(), &event);
  }
  void wait_for_frame() {
    while (canvas().take_painted().frames == 0) QCoreApplication::processEvents();
  }
  static void settle() {
    for (int i = 0; i < 20; ++i) QCoreApplication::processEvents();
  }

 private:
  MainWindow window_;
};

enum class Place : std::uint8_t { end, beginning };

void drag(benchmark::State& state, Place place) {
  Scene scene(static_cast<std::size_t>(state.range(0)));
  const std::vector<MachineId> rooms = scene.rooms();
  if (rooms.size() < 3) return state.SkipWithError("fewer than three rooms are in view");
  const auto hold = [&](MachineId room) { return place == Place::end ? scene.end_of(room) : scene.at(room); };
  const std::array<QPointF, 2> over{hold(rooms[1]), hold(rooms[2])};
  const QPointF from = scene.at(scene.guest_of(rooms[0]));
  scene.send(QEvent::MouseButtonPress, from, Qt::LeftButton);
  scene.send(QEvent::MouseMove, from + QPointF(20, 20), Qt::NoButton);
  Scene::settle();
  scene.canvas().take_painted();
  std::size_t n = 0;
  for (auto _ : state) {
    scene.send(QEvent::MouseMove, over[n++ % 2], Qt::NoButton);
    scene.wait_for_frame();
  }
  state.counters["result"] = scene.machines();
  scene.canvas().cancel();
}

void repaint(benchmark::State& state) {
  Scene scene(static_cast<std::size_t>(state.range(0)));
  scene.canvas().take_painted();
  for (auto _ : state) {
    scene.canvas().viewport()->update();
    scene.wait_for_frame();
  }
  state.counters["result"] = scene.machines();
}

// The longest time without an answer while something large is done, seen by a heartbeat of 10 ms
// (CONVENTIONS 36: less than 100 ms).
double longest_gap(const std::function<void()>& act) {
  constexpr int kBeat = 10, kAfter = 100; // ms
  qint64 longest = 0;
  QElapsedTimer since, all;
  QTimer beat;
  beat.setTimerType(Qt::PreciseTimer);
  QObject::connect(&beat, &QTimer::timeout, &beat,
                   [&] { longest = std::max(longest, since.nsecsElapsed()), since.start(); });
  beat.start(kBeat);
  since.start();
  act();
  for (all.start(); all.elapsed() < kAfter;) QCoreApplication::processEvents(QEventLoop::AllEvents, kBeat);
  return static_cast<double>(std::max(longest, since.nsecsElapsed())) / 1e9;
}

enum class Large : std::uint8_t {
  opening,
  tidying,
  emptying,
  undoing,
  duplicating,
  pasting,
  picture,
  exercise
};

void gap(benchmark::State& state, Large what) {
  const Lab lab = guest_lab(static_cast<std::size_t>(state.range(0)));
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("large.snuglab"));
  QFile file(path);
  if (!file.open(QIODevice::WriteOnly)) return state.SkipWithError("no file");
  const std::string text = write_lab(lab);
  file.write(text.data(), static_cast<qint64>(text.size()));
  file.close();
  for (auto _ : state) {
    MainWindow window;
    window.resize(1600, 1000);
    window.show();
    if (what != Large::opening) window.open_file(path);
    if (what == Large::duplicating || what == Large::pasting || what == Large::undoing)
      window.action("select_all")->trigger();
    if (what == Large::pasting) window.action("copy")->trigger();
    if (what == Large::undoing) window.action("remove")->trigger();
    Scene::settle();
    state.SetIterationTime(longest_gap([&] {
      switch (what) {
      case Large::opening:
        window.open_file(path);
        break;
      case Large::tidying:
        window.action("tidy")->trigger();
        break;
      case Large::emptying:
        window.action("select_all")->trigger();
        window.action("remove")->trigger();
        break;
      case Large::undoing:
        window.action("undo")->trigger();
        break;
      case Large::duplicating:
        window.action("duplicate")->trigger();
        break;
      case Large::pasting:
        window.action("paste")->trigger();
        break;
      case Large::picture:
        benchmark::DoNotOptimize(make_paper(window.session().analysis(), {}, Paper::png, Theme::light));
        break;
      case Large::exercise:
        window.session().set_exercise(window.session().lab().exercises.front().id);
        break;
      }
    }));
  }
}

void allowed(benchmark::State& state) {
  constexpr double kSeconds = 0.1;
  for (auto _ : state) state.SetIterationTime(kSeconds);
}

void add_gaps(int machines) {
  constexpr std::array<std::pair<const char*, Large>, 8> kAll{{{"gap/opening", Large::opening},
                                                               {"gap/tidying", Large::tidying},
                                                               {"gap/emptying", Large::emptying},
                                                               {"gap/undoing", Large::undoing},
                                                               {"gap/duplicating", Large::duplicating},
                                                               {"gap/pasting", Large::pasting},
                                                               {"gap/picture", Large::picture},
                                                               {"gap/exercise", Large::exercise}}};
  for (const auto& [name, what] : kAll)
    benchmark::RegisterBenchmark(name, gap, what)
        ->Arg(machines)
        ->Iterations(1)
        ->UseManualTime()
        ->Unit(benchmark::kMicrosecond);
  benchmark::RegisterBenchmark("gap/allowed", allowed)
      ->Iterations(1)
      ->UseManualTime()
      ->Unit(benchmark::kMicrosecond);
}

} // namespace
} // namespace snug::bench

int main(int argc, char** argv) {
  using namespace snug::bench;
  qputenv("QT_QPA_UPDATE_IDLE_TIME", "0");
  QApplication application(argc, argv);
  snug::wear(application, snug::Theme::light);
  for (const int machines : {2000, 10000}) {
    benchmark::RegisterBenchmark("drag/subject", drag, Place::end)
        ->Arg(machines)
        ->Unit(benchmark::kMicrosecond);
    benchmark::RegisterBenchmark("drag/restyle", drag, Place::beginning)
        ->Arg(machines)
        ->Unit(benchmark::kMicrosecond);
    benchmark::RegisterBenchmark("drag/repaint", repaint)->Arg(machines)->Unit(benchmark::kMicrosecond);
  }
  add_gaps(1000);
  return run_all(argc, argv);
}
