#include "ui/window/recent.h"

#include <QFileInfo>
#include <QSettings>

namespace snug {

namespace {

QString key() { return QStringLiteral("recent"); }

} // namespace

QStringList Recent::files() const { return QSettings().value(key()).toStringList().mid(0, kMost); }

void Recent::add(const QString& path) {
  QStringList all = files();
  const QString whole = QFileInfo(path).absoluteFilePath();
  all.removeAll(whole);
  all.prepend(whole);
  QSettings().setValue(key(), all.mid(0, kMost));
}

void Recent::remove(const QString& path) {
  QStringList all = files();
  all.removeAll(path);
  QSettings().setValue(key(), all);
}

void Recent::clear() { QSettings().remove(key()); }

} // namespace snug
