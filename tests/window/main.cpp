#include "ui/theme/theme.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QTemporaryDir>

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  const QTemporaryDir config; // nothing of the person who runs the tests
  qputenv("XDG_CONFIG_HOME", config.path().toUtf8());
  QApplication application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("snuglab-tests"));
  snug::wear(application, snug::Theme::light);
  ::testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
