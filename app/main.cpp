// The window. snuglab [FILE | --sample NAME]: a lab, a copy of a sample, or the start page.

#include "core/base/likeness.h"
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
#include <cstdlib>
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

// "snuglab [options] [FILE]" without an application, which a help text does not need.
QString help_of(const QCommandLineParser& parser) {
  return parser.helpText().replace(QStringLiteral("<executable_name>"), QStringLiteral("snuglab"));
}

// What the parser did not understand, what may have been meant, and where to look.
QString misuse(const QCommandLineParser& parser, const QList<QCommandLineOption>& options) {
  using namespace snug;
  const QStringList unknown = parser.unknownOptionNames();
  if (unknown.isEmpty()) return words(text::arg_parser, parser.errorText().toStdString());
  std::vector<std::string> known;
  for (const QCommandLineOption& o : options)
    for (const QString& name : o.names()) known.push_back(name.toStdString());
  const std::string word = unknown.front().toStdString();
  const std::string near = nearest_word(word, known);
  return near.empty() ? words(text::arg_unknown, word) : words(text::arg_unknown_meant, word, near);
}

// What is wrong about arguments that the parser understood.
std::optional<QString> wrong_value(const QCommandLineParser& parser, const Wish& wish, const QString& theme) {
  using namespace snug;
  if (parser.positionalArguments().size() > 1) return words(text::arg_one);
  if (parser.isSet(theme) && !wish.dark && !wish.light)
    return words(text::arg_no_theme, parser.value(theme).toStdString());
  if (parser.isSet(QStringLiteral("sample")) && !find_sample(wish.sample.toStdString()))
    return words(text::arg_no_sample, wish.sample.toStdString());
  return std::nullopt;
}

// Nothing: said already; `code` is what to end with.
std::optional<Wish> read(const QStringList& arguments, int& code) {
  using namespace snug;
  QCommandLineParser parser;
  parser.addPositionalArgument(QStringLiteral("FILE"), words(text::arg_file), QStringLiteral("[FILE]"));
  const QCommandLineOption sample(QStringLiteral("sample"), words(text::arg_sample), QStringLiteral("NAME"));
  const QCommandLineOption theme(QStringLiteral("theme"), words(text::arg_theme), QStringLiteral("WORD"));
  parser.addOptions({sample, theme});
  const QCommandLineOption help = parser.addHelpOption(), version = parser.addVersionOption();
  if (!parser.parse(arguments))
    return code = complain(misuse(parser, {sample, theme, help, version}), kUsage), std::nullopt;
  if (parser.isSet(help) || parser.isSet(version)) {
    const QString told = parser.isSet(help) ? help_of(parser) : QStringLiteral("snuglab " SNUG_VERSION "\n");
    std::cout << told.toStdString();
    return code = 0, std::nullopt;
  }
  Wish wish{parser.positionalArguments().value(0), parser.value(sample),
            parser.value(theme) == QStringLiteral("dark"), parser.value(theme) == QStringLiteral("light")};
  if (const auto wrong = wrong_value(parser, wish, QStringLiteral("theme")))
    return code = complain(*wrong, kUsage), std::nullopt;
  return wish;
}

// A display that is named but does not answer ends the program from inside the library.
void say_no_display(QtMsgType type, const QMessageLogContext&, const QString& told) {
  if (type == QtFatalMsg) std::_Exit(complain(snug::words(snug::text::arg_no_display), kNoDisplay));
  if (type == QtCriticalMsg) std::cerr << told.toStdString() << '\n';
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
  const QtMessageHandler usual = qInstallMessageHandler(say_no_display);
  QApplication application(argc, argv);
  qInstallMessageHandler(usual);
  QApplication::setOrganizationName(QStringLiteral("snuglab"));
  QApplication::setApplicationName(QStringLiteral("snuglab"));
  QApplication::setApplicationVersion(QStringLiteral(SNUG_VERSION));
  snug::speak(QLocale(), snug::language_folders());
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
