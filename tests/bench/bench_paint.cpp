// The direct SVG writer beside Qt's generator painting the same drawing (PERFORMANCE row 6). "result" is the
// number of texts in the file.

#include "core/layout/draw.h"
#include "core/report/svg.h"
#include "tests/bench/bench_lab.h"
#include "tests/bench/measure.h"
#include "ui/diagram/paint.h"

#include <QBuffer>
#include <QGuiApplication>
#include <QSvgGenerator>

namespace snug::bench {
namespace {

constexpr std::size_t kNodes = 5000;

const Drawing& drawing() {
  static const Lab lab = guest_lab(kNodes);
  static const Drawing made = [] {
    const Analysis a = analyse(lab);
    return draw(a);
  }();
  return made;
}

double texts_in(std::string_view svg) {
  std::size_t n = 0;
  for (std::size_t at = svg.find("<text"); at != std::string_view::npos; at = svg.find("<text", at + 5)) ++n;
  return static_cast<double>(n);
}

void svg_subject(benchmark::State& state) {
  const Drawing& d = drawing();
  std::string out;
  for (auto _ : state) benchmark::DoNotOptimize((out = svg(d)).size());
  state.counters["result"] = texts_in(out);
  state.counters["octets"] = static_cast<double>(out.size());
}

void svg_generator(benchmark::State& state) {
  const Drawing& d = drawing();
  QByteArray bytes;
  for (auto _ : state) {
    bytes.clear();
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(QSize(d.width, d.height));
    generator.setViewBox(QRect(0, 0, d.width, d.height));
    QPainter painter(&generator);
    paint(painter, d, palette(Theme::light));
    painter.end();
    benchmark::DoNotOptimize(bytes.size());
  }
  state.counters["result"] =
      texts_in(std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
  state.counters["octets"] = static_cast<double>(bytes.size());
}

} // namespace
} // namespace snug::bench

int main(int argc, char** argv) {
  using namespace snug::bench;
  const QGuiApplication application(argc, argv);
  benchmark::RegisterBenchmark("svg/subject/5000", svg_subject)->Unit(benchmark::kMicrosecond);
  benchmark::RegisterBenchmark("svg/generator/5000", svg_generator)->Unit(benchmark::kMicrosecond);
  return run_all(argc, argv);
}
