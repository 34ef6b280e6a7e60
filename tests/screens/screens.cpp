// usage: screens FOLDER WIDTH HEIGHT light|dark [longer|mirrored]
// longer: texts two fifths longer, as in other languages; mirrored: these from right to left.
// Pictures of the window for people to look at: start page, samples, mid-drag, address being typed, menu,
// recovery and failure bars, export dialog. Run by tests/screens/run.

#include "core/document/own_starts.h"
#include "core/document/read.h"
#include "core/embedded/embedded.h"
#include "tests/window/hand.h"
#include "tests/window/pseudo_language.h"
#include "ui/panels/address_panel.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/fix_buttons.h"
#include "ui/panels/reach_panel.h"
#include "ui/panels/when_seen.h"
#include "ui/session/tongue.h"
#include "ui/theme/theme.h"
#include "ui/window/file_choice.h"
#include "ui/window/find_box.h"
#include "ui/window/hand_out.h"
#include "ui/window/help_view.h"
#include "ui/window/notice_bar.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPainter>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>

#include <array>
#include <cstring>
#include <iostream>

namespace {

using namespace snug;

class Camera {
 public:
  Camera(const QString& folder, QSize size, Theme theme) : folder_(folder), size_(size), theme_(theme) {}

  void take(MainWindow& window, const char* name, const QWidget* over = nullptr) {
    static_cast<void>(
        QTest::qWaitFor([&] { return WhenSeen::waiting() == 0 && window.findings().fixes().is_done(); }));
    QTest::qWait(40);
    QPixmap picture = window.grab();
    if (over) {
      QPainter painter(&picture);
      painter.drawPixmap((size_.width() - over->width()) / 2, (size_.height() - over->height()) / 2,
                         const_cast<QWidget*>(over)->grab());
    }
    const QString word = theme_ == Theme::dark ? QStringLiteral("dark") : QStringLiteral("light");
    const qreal scale = picture.devicePixelRatio();
    const QString file = QStringLiteral("%1/%2-%3x%4%5-%6.png")
                             .arg(folder_, QLatin1String(name))
                             .arg(size_.width())
                             .arg(size_.height())
                             .arg(scale == 1 ? QString() : QStringLiteral("@%1").arg(scale))
                             .arg(word);
    ok = picture.save(file) && ok;
    std::cout << file.toStdString() << '\n';
  }
  // All of the picture, or what is shown at first.
  void fit(MainWindow& window, bool all = true) const {
    window.resize(size_);
    window.show();
    window.activateWindow();
    QTest::qWait(30);
    if (all) window.canvas().show_all();
  }
  bool ok = true;

 private:
  QString folder_;
  QSize size_;
  Theme theme_;
};

// A home of the pictures' own, with so many labs kept to start from, the last of them damaged.
void keep_starts(const QString& home, int count) {
  QFile dirs(home + QStringLiteral("/user-dirs.dirs"));
  if (dirs.open(QIODevice::WriteOnly)) dirs.write("XDG_TEMPLATES_DIR=\"" + home.toUtf8() + "/Templates\"\n");
  constexpr std::array kTitles{
      "Harbour, second term",
      "The whole data centre of the harbour authority, its ferries and the booking of both",
      "Handed_to_the_second_year_without_any_blank_in_its_name_2026-11",
      "Lean",
      "Storage week",
      "Wheelhouse",
      "Z"};
  constexpr std::array kFrom{"skerry-ferries", "sixty", "mistakes", "skerry-ferries-16"};
  for (int i = 0; i < count; ++i) {
    Lab lab = *read_lab(find_sample(kFrom[std::size_t(i) % kFrom.size()])->bytes, {});
    lab.facts.title = kTitles[std::size_t(i) % kTitles.size()];
    static_cast<void>(
        keep_start((home + QStringLiteral("/Templates/Snuglab")).toStdString(), lab, IfTaken::replace));
  }
  QFile broken(home + QStringLiteral("/Templates/Snuglab/broken.snuglab"));
  if (count > 1 && broken.open(QIODevice::WriteOnly)) broken.write("{\"format\": \"snuglab\",");
}

void of_start(Camera& camera, const QString& home) {
  for (const auto& [count, name] : {std::pair(0, "start"), {1, "start-one"}, {7, "start-seven"}}) {
    keep_starts(home, count);
    MainWindow window;
    camera.fit(window);
    camera.take(window, name);
  }
  MainWindow window;
  window.start_sample("skerry-ferries");
  camera.fit(window);
  window.action("keep_start")->trigger();
  camera.take(window, "keep-start");
  QTest::keyClicks(window.notice().findChild<QLineEdit*>(), QStringLiteral("lean"));
  QTest::keyClick(window.notice().findChild<QLineEdit*>(), Qt::Key_Return);
  camera.take(window, "keep-start-taken");
  QDir(home + QStringLiteral("/Templates")).removeRecursively();
}

void of_samples(Camera& camera) {
  for (const char* name : {"skerry-ferries", "mistakes", "sixty"}) {
    MainWindow window;
    window.start_sample(name);
    camera.fit(window, false);
    camera.take(window, name);
  }
}

void of_work(Camera& camera) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  test::Hand hand(window);
  camera.fit(window);
  hand.press(hand.on(hand.machine("tickets-1")));
  hand.move(hand.on(hand.machine("deck-b")) + QPoint(30, 40));
  camera.take(window, "mid-drag");
  hand.key(Qt::Key_Escape);
  hand.release(QPoint(1, 1));
  hand.click(hand.on(hand.machine("wheelhouse")));
  camera.take(window, "selected");
  hand.drag(hand.on(hand.machine("tickets-1")), hand.on(hand.machine("deck-b")) + QPoint(30, 40));
  camera.take(window, "dropped");
  window.action("show_addresses")->trigger();
  QTableView& table = window.addresses().view();
  const QModelIndex at = table.model()->index(2, 3);
  table.setCurrentIndex(at);
  for (int c = 0; c < table.model()->columnCount(); ++c)
    if (table.model()->flags(table.model()->index(2, c)) & Qt::ItemIsEditable)
      table.edit(table.model()->index(2, c));
  if (auto* line = table.findChild<QLineEdit*>()) {
    line->selectAll();
    QTest::keyClicks(line, QStringLiteral("10.20.0."));
  }
  camera.take(window, "address-editing");
}

// What is folded at a small size, opened; fields of two machines that differ.
void of_sides(Camera& camera) {
  MainWindow window;
  window.start_blank(false);
  camera.fit(window, false);
  camera.take(window, "blank");
  window.start_sample("skerry-ferries");
  test::Hand hand(window);
  camera.fit(window, false);
  window.action("show_parts")->trigger();
  camera.take(window, "parts");
  window.action("show_outline")->trigger();
  camera.take(window, "outline");
  hand.session().select({hand.machine("beacon"), hand.machine("deck-a")});
  window.action("show_properties")->trigger();
  camera.take(window, "two-chosen");
  hand.session().select({hand.machine("wheelhouse")});
  window.action("hold")->trigger();
  window.action("show_findings")->trigger();
  camera.take(window, "kept-in-place");
}

void of_finding(Camera& camera) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  camera.fit(window);
  window.action("show_addresses")->trigger();
  camera.take(window, "address-twice");
  window.find_box().setFocus();
  QTest::keyClicks(&window.find_box(), QStringLiteral("dhcp"));
  camera.take(window, "find");
  window.find_box().clear();
  const auto dialog = file_dialog(&window, {QStringLiteral("Save as…"), QStringLiteral("samples/lab.snuglab"),
                                            QStringLiteral("Labs (*.snuglab)"), true});
  dialog->show();
  QTest::qWait(200);
  camera.take(window, "save-dialog", dialog.get());
}

void of_reach(Camera& camera) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  test::Hand hand(window);
  camera.fit(window);
  window.action("show_reach")->trigger();
  window.reach().ask(hand.machine("tickets-1"), hand.machine("tickets-db"));
  camera.take(window, "reach-yes");
  for (const Exercise& e : hand.lab().exercises)
    if (e.name == "Hands on the wheel") window.session().set_exercise(e.id);
  window.reach().ask(hand.machine("hold"), {Kind::outside, 0});
  camera.take(window, "reach-no");
  window.reach().ask(hand.machine("hold"), hand.machine("deck-a"));
  auto* at = window.findChild<QComboBox*>(QStringLiteral("ask_at"));
  at->showPopup();
  QTest::qWait(30);
  camera.take(window, "reach-addresses", at->view()->window());
  at->hidePopup();
  for (const Promise& p : hand.lab().promises)
    if (p.port == 443) window.reach().show_promise(p.id);
  camera.take(window, "promise-chosen");
  window.start_sample("mistakes");
  window.action("show_reach")->trigger();
  camera.fit(window);
  camera.take(window, "reach-mistakes");
}

void of_dialogs(Camera& camera) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  camera.fit(window);
  window.session().tell(
      Notice::Kind::error,
      QStringLiteral("/home/teacher/labs/ferries.snuglab: the disk is full: make room or save "
                     "elsewhere; the file is as it was"));
  window.notice().ask(
      QStringLiteral("recovery"),
      {Notice::Kind::caution, QStringLiteral("Work on untitled lab was not saved when the "
                                             "program ended on 25 Nov 2026 21:47.")},
      {{QStringLiteral("Open it as it was"), [] {}}, {QStringLiteral("Throw it away"), [] {}}});
  camera.take(window, "bars");
  for (const char* page : {"help_words", "help_keys", "about"}) {
    window.action(page)->trigger();
    camera.take(window, page, window.findChild<HelpView*>());
  }
  window.findChild<HelpView*>()->close();
  HandOut dialog(window.session(), &window);
  dialog.show();
  QTest::qWait(30);
  camera.take(window, "hand-out-picture", &dialog);
  dialog.choose(Paper::table_markdown);
  QTest::qWait(30);
  camera.take(window, "hand-out-table", &dialog);
  dialog.hide();
  QMenu* menu = window.menuBar()->actions()[1]->menu();
  emit menu->aboutToShow();
  menu->ensurePolished();
  menu->resize(menu->sizeHint());
  camera.take(window, "menu", menu);
}

} // namespace

int main(int argc, char** argv) {
  if (argc < 5) return 2;
  const QString folder = QString::fromLocal8Bit(argv[1]);
  const Theme theme = std::strcmp(argv[4], "dark") == 0 ? Theme::dark : Theme::light;
  const QSize size(QByteArray(argv[2]).toInt(), QByteArray(argv[3]).toInt());
  const QTemporaryDir home; // nothing of the person who looks
  qputenv("XDG_CONFIG_HOME", home.path().toUtf8());
  QApplication application(argc, argv);
  wear(application, theme);
  if (argc > 5) speak(std::make_unique<snug::test::PseudoLanguage>());
  if (argc > 5 && std::strcmp(argv[5], "mirrored") == 0) QApplication::setLayoutDirection(Qt::RightToLeft);
  QDir().mkpath(folder);
  Camera camera(folder, size, theme);
  of_start(camera, home.path());
  of_samples(camera);
  of_sides(camera);
  of_finding(camera);
  of_work(camera);
  of_reach(camera);
  of_dialogs(camera);
  return camera.ok ? 0 : 1;
}
