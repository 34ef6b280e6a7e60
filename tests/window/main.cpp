#include "ui/theme/theme.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QTemporaryDir>

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  const QTemporaryDir config; // nothing of the person who runs the tests
  qputenv("XDG_CONFIG_HOME", config.path().toUtf8());
  if (QFile dirs(config.filePath(QStringLiteral("user-dirs.dirs"))); dirs.open(QIODevice::WriteOnly))
    dirs.write("XDG_TEMPLATES_DIR=\"" + config.path().toUtf8() + "/Templates\"\n");
  QApplication application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("snuglab-tests"));
  snug::wear(application, snug::Theme::light);
  ::testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
