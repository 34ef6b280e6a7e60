// Ends when the window was painted for the first time (PERFORMANCE row 7). first_paint plain: a main window
// with menus, a toolbar, two docks and a view with 100 items; first_paint lab: Snuglab with its sample.

#include "ui/theme/theme.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QDockWidget>
#include <QGraphicsTextItem>
#include <QGraphicsView>
#include <QListWidget>
#include <QMenuBar>
#include <QTimer>
#include <QToolBar>

#include <cstring>

namespace {

// Watches for the last widget of interest to be painted.
class FirstPaint : public QObject {
 public:
  explicit FirstPaint(QWidget* watched) { watched->installEventFilter(this); }
  bool eventFilter(QObject*, QEvent* event) override {
    if (event->type() == QEvent::Paint) QTimer::singleShot(0, qApp, &QCoreApplication::quit);
    return false;
  }
};

int plain() {
  QMainWindow window;
  window.resize(1440, 900);
  for (const char* name : {"File", "Edit", "View"}) {
    QMenu* menu = window.menuBar()->addMenu(QLatin1String(name));
    for (int i = 0; i < 8; ++i) menu->addAction(QStringLiteral("Action %1").arg(i));
  }
  QToolBar* bar = window.addToolBar(QStringLiteral("Bar"));
  for (int i = 0; i < 6; ++i) bar->addAction(QStringLiteral("Button %1").arg(i));
  for (const Qt::DockWidgetArea area : {Qt::LeftDockWidgetArea, Qt::RightDockWidgetArea}) {
    auto* dock = new QDockWidget(QStringLiteral("Dock"), &window);
    auto* list = new QListWidget(dock);
    for (int i = 0; i < 20; ++i) list->addItem(QStringLiteral("Row %1").arg(i));
    dock->setWidget(list);
    window.addDockWidget(area, dock);
  }
  QGraphicsScene scene;
  for (int i = 0; i < 100; ++i) {
    const int x = i % 10 * 110, y = i / 10 * 80;
    scene.addRect(x, y, 90, 60);
    scene.addText(QStringLiteral("Item %1").arg(i))->setPos(x, y);
  }
  QGraphicsView view(&scene);
  window.setCentralWidget(&view);
  const FirstPaint watch(view.viewport());
  window.show();
  const int code = QApplication::exec();
  window.takeCentralWidget();
  return code;
}

int lab() {
  snug::wear(*qApp, snug::theme_of(QApplication::palette()));
  snug::MainWindow window;
  window.start_sample("skerry-ferries");
  const FirstPaint watch(window.findChild<QAbstractScrollArea*>(QStringLiteral("canvas"))->viewport());
  window.show();
  return QApplication::exec();
}

} // namespace

int main(int argc, char** argv) {
  const QApplication application(argc, argv);
  return argc == 2 && std::strcmp(argv[1], "plain") == 0 ? plain() : lab();
}
