// Dragging on a large lab beside painting its whole view, at the same zoom (PERFORMANCE row 4). Every move of
// the drag changes the room that is aimed at, so each frame holds apply, analysis, drawing and painting.
// "drag" holds the guest at the end of a room, where no other moves; "restyle" at its beginning, where all
// guests of both rooms, nearly all that is in view, make room in every frame. "result" is the number of
// machines.

#include "tests/bench/bench_lab.h"
#include "tests/bench/measure.h"
#include "ui/canvas/canvas.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QMouseEvent>

#include <array>

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
  return run_all(argc, argv);
}
