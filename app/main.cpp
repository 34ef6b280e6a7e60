// The window. snuglab [FILE | --sample NAME]: a lab, a copy of a sample, or the start page.

#include "core/embedded/embedded.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QCommandLineParser>
#include <QSessionManager>
#include <QStandardPaths>

#include <csignal>
#include <iostream>

namespace {

constexpr int kUsage = 2, kNoDisplay = 5; // as snuglab-cli

bool has_display() {
#ifdef Q_OS_LINUX
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    if (!qEnvironmentVariableIsEmpty(name)) return true;
  return false;
#else
  return true;
#endif
}

int complain(const QString& sentence, int code) {
  std::cerr << "snuglab: " << sentence.toStdString() << '\n';
  return code;
}

struct Wish {
  QString file, sample;
  bool dark = false, light = false;
};

// Nothing: said already; `code` is what to end with.
std::optional<Wish> read(const QStringList& arguments, int& code) {
  using namespace snug;
  QCommandLineParser parser;
  parser.addPositionalArgument(QStringLiteral("FILE"), words(text::arg_file), QStringLiteral("[FILE]"));
  const QCommandLineOption sample(QStringLiteral("sample"), words(text::arg_sample), QStringLiteral("NAME"));
  const QCommandLineOption theme(QStringLiteral("theme"), words(text::arg_theme), QStringLiteral("WORD"));
  parser.addOptions({sample, theme});
  const QCommandLineOption help = parser.addHelpOption(), version = parser.addVersionOption();
  if (!parser.parse(arguments)) return code = complain(parser.errorText(), kUsage), std::nullopt;
  if (parser.isSet(help) || parser.isSet(version)) {
    std::cout << (parser.isSet(help) ? parser.helpText() : QStringLiteral("snuglab " SNUG_VERSION "\n"))
                     .toStdString();
    return code = 0, std::nullopt;
  }
  Wish wish{parser.positionalArguments().value(0), parser.value(sample),
            parser.value(theme) == QStringLiteral("dark"), parser.value(theme) == QStringLiteral("light")};
  if (parser.positionalArguments().size() > 1)
    return code = complain(words(text::arg_one), kUsage), std::nullopt;
  if (parser.isSet(theme) && !wish.dark && !wish.light)
    return code = complain(words(text::arg_no_theme, parser.value(theme).toStdString()), kUsage),
           std::nullopt;
  if (!wish.sample.isEmpty() && !find_sample(wish.sample.toStdString()))
    return code = complain(words(text::arg_no_sample, wish.sample.toStdString()), kUsage), std::nullopt;
  return wish;
}

// Asks only where work would be lost, and only if the desktop lets programs ask.
void end_session(snug::MainWindow& window, QSessionManager& manager) {
  if (window.session_ends(false) || !manager.allowsInteraction()) return;
  const bool ends = window.session_ends(true);
  manager.release();
  if (!ends) manager.cancel();
}

} // namespace

int main(int argc, char** argv) {
#ifdef SIGXFSZ
  std::signal(SIGXFSZ, SIG_IGN); // a file size limit becomes a sentence instead of an end
#endif
  QStringList arguments;
  for (int i = 0; i < argc; ++i) arguments << QString::fromLocal8Bit(argv[i]);
  int code = 0;
  const std::optional<Wish> wish = read(arguments, code);
  if (!wish) return code;
  if (!has_display()) return complain(snug::words(snug::text::arg_no_display), kNoDisplay);
  QApplication application(argc, argv);
  QApplication::setOrganizationName(QStringLiteral("snuglab"));
  QApplication::setApplicationName(QStringLiteral("snuglab"));
  QApplication::setApplicationVersion(QStringLiteral(SNUG_VERSION));
  const snug::Theme desktop = snug::theme_of(QApplication::palette());
  snug::wear(application, wish->dark ? snug::Theme::dark : wish->light ? snug::Theme::light : desktop);
  snug::MainWindow window;
  window.remember_in(QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation) +
                     QStringLiteral("/snuglab/settings.json"));
  if (wish->dark || wish->light)
    window.choose_colours(wish->dark ? snug::Colours::dark : snug::Colours::light);
  window.keep_in(QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation) +
                 QStringLiteral("/journals"));
  QObject::connect(&application, &QGuiApplication::commitDataRequest, &window,
                   [&window](QSessionManager& manager) { end_session(window, manager); });
  if (!wish->sample.isEmpty()) window.start_sample(wish->sample.toStdString());
  if (!wish->file.isEmpty()) window.open_file(wish->file);
  window.show();
  return QApplication::exec();
}
