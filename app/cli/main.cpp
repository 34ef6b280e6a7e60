#include "app/cli/cli.h"
#include "core/base/heap.h"

#include <csignal>
#include <iostream>

#ifdef SNUG_WITH_PAINT
#include "ui/diagram/export.h"

#include <QGuiApplication>
#endif

namespace {

#ifdef SNUG_WITH_PAINT
// Fonts need an application; it is made only when a picture is asked for, and needs no display.
snug::Result<std::string> picture(const snug::Drawing& drawing, const snug::cli::PictureWish& wish) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  // Remarks of the library about the session (a missing run-time folder, say) are not for whoever wants a
  // picture.
  qInstallMessageHandler([](QtMsgType type, const QMessageLogContext&, const QString& text) {
    if (type == QtCriticalMsg || type == QtFatalMsg) std::cerr << text.toStdString() << '\n';
  });
  int argc = 1;
  char name[] = "snuglab-cli";    // NOLINT(modernize-avoid-c-arrays)
  char* argv[] = {name, nullptr}; // NOLINT(modernize-avoid-c-arrays)
  const QGuiApplication application(argc, argv);
  const snug::Palette& palette = snug::palette(wish.theme);
  const auto bytes = wish.format == snug::cli::PictureFormat::png
                         ? snug::png(drawing, palette, wish.scale_percent)
                         : snug::pdf(drawing, palette);
  if (!bytes) return snug::fail(bytes.error());
  return bytes->toStdString();
}
#endif

snug::cli::Painter painter() {
#ifdef SNUG_WITH_PAINT
  return picture;
#else
  return {};
#endif
}

} // namespace

int main(int argc, char** argv) {
  snug::keep_freed_memory();
#ifdef SIGXFSZ
  std::signal(SIGXFSZ, SIG_IGN); // a file size limit becomes a sentence instead of an end
#endif
  const std::vector<std::string> args(argv + 1, argv + argc);
  return snug::cli::run(args, {std::cout, std::cerr, painter(), &std::cin});
}
