#include "ui/session/tongue.h"

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QStandardPaths>
#include <QTranslator>

namespace snug {

namespace {

constexpr const char* kContext = "snug";

class ScreenTongue : public Tongue {
 public:
  bool translated = false;

 protected:
  std::string_view pattern(const Template& t, std::optional<std::int64_t> n,
                           std::string& room) const override {
    if (translated) {
      const std::string source(t.other), id(t.id);
      constexpr std::int64_t kMost = std::numeric_limits<int>::max();
      const int count = n ? static_cast<int>(std::clamp<std::int64_t>(*n, 0, kMost)) : -1;
      room = QCoreApplication::translate(kContext, source.c_str(), id.c_str(), count).toStdString();
      if (room != source) return room;
    }
    return Tongue::pattern(t, n, room);
  }

  std::string term(std::string_view word) const override {
    if (!translated || word.empty()) return Tongue::term(word);
    const std::string told =
        QCoreApplication::translate(kContext, std::string(word).c_str(), "term").toStdString();
    return told == word ? Tongue::term(word) : told;
  }

  std::string number(std::string digits) const override {
    QLocale locale;
    if (locale.language() == QLocale::C) return digits;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    const QString plain = QString::fromStdString(digits);
    const auto point = plain.indexOf(QLatin1Char('.'));
    if (point < 0) return locale.toString(plain.toLongLong()).toStdString();
    return locale.toString(plain.toDouble(), 'f', static_cast<int>(plain.size() - point - 1)).toStdString();
  }
};

ScreenTongue& tongue() {
  static ScreenTongue one;
  return one;
}

// The one that is asked now; Qt only keeps a pointer.
std::unique_ptr<QTranslator>& asked() {
  static std::unique_ptr<QTranslator> one;
  return one;
}

} // namespace

QString in_locale(QString number) { return number.replace(QLatin1Char('.'), QLocale().decimalPoint()); }

const Tongue& spoken() { return tongue(); }

void speak(std::unique_ptr<QTranslator> language) {
  if (asked()) QCoreApplication::removeTranslator(asked().get());
  asked() = std::move(language);
  tongue().translated = asked() != nullptr;
  if (asked()) QCoreApplication::installTranslator(asked().get());
}

bool speak(const QLocale& locale, const QStringList& folders) {
  for (const QString& folder : folders) {
    auto language = std::make_unique<QTranslator>();
    if (!language->load(locale, QStringLiteral("snuglab"), QStringLiteral("_"), folder)) continue;
    speak(std::move(language));
    static QTranslator toolkit; // "Copy", "Paste" of the menus in fields
    if (toolkit.load(locale, QStringLiteral("qtbase"), QStringLiteral("_"),
                     QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
      QCoreApplication::installTranslator(&toolkit);
    return true;
  }
  return false;
}

QStringList language_folders() {
  QStringList folders{QStringLiteral(":/translations")};
  for (const QString& data : QStandardPaths::standardLocations(QStandardPaths::AppDataLocation))
    folders << data + QStringLiteral("/translations");
  return folders;
}

} // namespace snug
