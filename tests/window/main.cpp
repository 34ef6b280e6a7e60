#include "ui/theme/theme.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  const QTemporaryDir settings; // no test touches a person's own
  QSettings::setDefaultFormat(QSettings::IniFormat);
  QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
  QApplication application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("snuglab-tests"));
  snug::wear(application, snug::Theme::light);
  ::testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
