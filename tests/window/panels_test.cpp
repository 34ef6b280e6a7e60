// Panels with real events: findings in groups, rows of the property panel, the slider of memory, colours.

#include "core/document/write.h"
#include "core/text/window_text.h"
#include "tests/support/process.h"
#include "tests/window/ferry_window.h"
#include "ui/canvas/minimap.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/memory_slider.h"
#include "ui/panels/property_panel.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QTest>
#include <QToolButton>

#include <algorithm>

namespace snug::test {
namespace {

class Panels : public FerryWindow {
 protected:
  void press(const char* name) {
    auto* button = shown<QPushButton>(name);
    ASSERT_NE(button, nullptr) << name;
    QTest::mouseClick(button, Qt::LeftButton);
  }
  // What stands in the property panel now; what is to be deleted is hidden.
  template <typename W>
  W* shown(const char* name) {
    for (W* w : window.properties().findChildren<W*>(QLatin1String(name)))
      if (w->isVisibleTo(&window.properties())) return w;
    return nullptr;
  }
  void type(const char* name, const char* text) {
    auto* line = shown<QLineEdit>(name);
    ASSERT_NE(line, nullptr) << name;
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, QLatin1String(text));
  }
};

TEST_F(Panels, FindingsStandBySeverityAndFold) {
  FindingsPanel& panel = window.findings();
  std::array<int, 3> count{};
  for (const Finding& f : hand.session().analysis().findings())
    if (!f.accepted && holds_in(hand.lab(), f, hand.session().exercise()))
      ++count[static_cast<std::size_t>(f.severity)];
  const int all = count[0] + count[1] + count[2];
  EXPECT_EQ(panel.shown_count(), all);
  EXPECT_EQ(panel.heading(Severity::error).text(), words(text::findings_errors, Count{count[0]}));
  QToolButton& errors = panel.heading(Severity::error);
  ASSERT_TRUE(errors.isVisibleTo(&panel));
  QTest::mouseClick(&errors, Qt::LeftButton);
  EXPECT_EQ(panel.shown_count(), all - count[0]);
  EXPECT_TRUE(errors.isVisibleTo(&panel));
  QTest::keyClick(&errors, Qt::Key_Space);
  EXPECT_EQ(panel.shown_count(), all);
  QTest::keyClicks(&panel.filter(), QStringLiteral("deck-b"));
  EXPECT_LT(panel.shown_count(), all);
  EXPECT_GT(panel.shown_count(), 0);
  panel.filter().selectAll();
  QTest::keyClicks(&panel.filter(), QStringLiteral("Neighbours find now the one")); // a reason
  EXPECT_EQ(panel.shown_count(), 1);
}

TEST_F(Panels, RoutesAreAddedTypedAndRemoved) {
  hand.session().select({hand.machine("beacon")});
  const std::size_t before = machine("beacon").routes.size();
  press("add_routes");
  ASSERT_EQ(machine("beacon").routes.size(), before + 1);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Change routes of beacon"));
  const std::string row = "routes_" + std::to_string(before) + "_to";
  type(row.c_str(), "10.9.0.0/99");
  EXPECT_TRUE(shown<QLineEdit>(row.c_str())->property("bad").toBool());
  EXPECT_EQ(machine("beacon").routes.back().to, Prefix());
  type(row.c_str(), "10.9.0.0/16");
  QTest::keyClick(shown<QLineEdit>(row.c_str()), Qt::Key_Return);
  EXPECT_EQ(to_text(machine("beacon").routes.back().to), "10.9.0.0/16");
  press(("remove_routes_" + std::to_string(before)).c_str());
  EXPECT_EQ(machine("beacon").routes.size(), before);
  back_to_the_first_bytes();
}

// What is being typed is judged below the line: why it is refused, how a size without a unit is understood.
TEST_F(Panels, TypingIsAnsweredBelowTheLine) {
  hand.session().select({hand.machine("beacon")});
  type("memory", "32");
  EXPECT_EQ(shown<QLabel>("memory_echo")->text(), QStringLiteral("= 32 MiB; for 32 GiB write 32g"));
  type("memory", "6 GB");
  EXPECT_EQ(shown<QLabel>("memory_echo")->property("tone").toString(), QStringLiteral("bad"));
  EXPECT_TRUE(shown<QLabel>("memory_echo")->text().contains(QStringLiteral("6 GiB")));
  EXPECT_TRUE(QTest::qWaitFor([this] {
    const auto* told = shown<QLabel>("memory_echo");
    return told->height() >= told->heightForWidth(told->width());
  })) << "all of it is seen";
  QTest::keyClick(shown<QLineEdit>("memory"), Qt::Key_Return);
  EXPECT_EQ(shown<QLineEdit>("memory")->text(), QStringLiteral("6 GB"))
      << "what was typed is not thrown away";
  EXPECT_TRUE(shown<QLineEdit>("memory")->hasFocus());
  type("memory", "3.5g");
  EXPECT_EQ(shown<QLabel>("memory_echo")->text(), QStringLiteral("= 3.5 GiB"));
  EXPECT_EQ(shown<QLabel>("memory_echo")->property("tone").toString(), QStringLiteral("muted"));
  QTest::keyClick(shown<QLineEdit>("memory"), Qt::Key_Return);
  EXPECT_EQ(machine("beacon").memory, 3584);
  EXPECT_EQ(shown<QLabel>("memory_echo"), nullptr);
  back_to_the_first_bytes();
}

// An empty field says what holds instead, and what is entered takes its place.
TEST_F(Panels, AnEmptyFieldSaysWhatIsInForce) {
  hand.session().select({AnyId{Kind::pc, 0}});
  window.action("show_properties")->trigger();
  QTest::qWait(30);
  auto* line = window.properties().findChild<QLineEdit*>(QStringLiteral("keep_free"));
  ASSERT_NE(line, nullptr);
  EXPECT_EQ(line->text(), QString());
  EXPECT_EQ(line->placeholderText(), QStringLiteral("(2 GiB)"));
  EXPECT_TRUE(line->toolTip().contains(QStringLiteral("Not entered: 2 GiB holds")))
      << line->toolTip().toStdString();
  EXPECT_FALSE(line->accessibleDescription().isEmpty());
  line->setFocus();
  QTest::keyClicks(line, QStringLiteral("3g"));
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_EQ(hand.lab().pc.keep_free, 3 * 1024);
  EXPECT_EQ(line->text(), QStringLiteral("3 GiB"));
  hand.session().undo();
}

// After Enter the keyboard is still in the field, and the keys for undoing are those of the lab again.
TEST_F(Panels, UndoAfterEnterInAField) {
  window.activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
  hand.click(hand.on(hand.machine("beacon")));
  window.action("show_properties")->trigger();
  QTest::qWait(30);
  auto* line = window.properties().findChild<QLineEdit*>(QStringLiteral("memory"));
  ASSERT_NE(line, nullptr);
  const std::int64_t before = machine("beacon").memory;
  line->setFocus();
  line->selectAll();
  QTest::keyClicks(line, QStringLiteral("7g"));
  QTest::keyClick(line, Qt::Key_Z, Qt::ControlModifier); // typed, not yet entered: the field's own
  EXPECT_EQ(machine("beacon").memory, before);
  line->selectAll();
  QTest::keyClicks(line, QStringLiteral("7g"));
  QTest::keyClick(line, Qt::Key_Return);
  ASSERT_EQ(machine("beacon").memory, 7 * 1024);
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(machine("beacon").memory, before);
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Y, Qt::ControlModifier);
  EXPECT_EQ(machine("beacon").memory, 7 * 1024);
  hand.session().undo();
}

// "All" on a slider is not all machines.
TEST_F(Panels, AllIsOfThePicture) {
  window.activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
  const MachineId beacon = hand.machine("beacon");
  hand.click(hand.on(beacon));
  window.action("show_properties")->trigger();
  QTest::qWait(30);
  auto* slider = window.properties().findChild<QSlider*>(QStringLiteral("memory_slider"));
  ASSERT_NE(slider, nullptr);
  slider->setFocus();
  QTest::keyClick(slider, Qt::Key_A, Qt::ControlModifier);
  EXPECT_EQ(hand.session().selection(), std::vector<AnyId>{beacon});
  window.canvas().setFocus();
  QTest::keyClick(&window.canvas(), Qt::Key_A, Qt::ControlModifier);
  EXPECT_EQ(hand.session().selection().size(), hand.lab().machines.size());
}

// After a click on empty ground F2 names nothing, least of all what was chosen before.
TEST_F(Panels, WhereNothingIsNothingIsMeant) {
  hand.click(hand.on(hand.machine("beacon")));
  hand.click(QPoint(3, 3));
  EXPECT_TRUE(hand.session().selection().empty());
  EXPECT_EQ(window.canvas().focus_id(), AnyId{});
  hand.key(Qt::Key_F2);
  EXPECT_FALSE(qobject_cast<QLineEdit*>(QApplication::focusWidget()));
}

TEST_F(Panels, EscLeavesAFieldAsItWas) {
  hand.session().select({hand.machine("beacon")});
  const QString before = shown<QLineEdit>("memory")->text();
  type("memory", "6 GB");
  QTest::keyClick(shown<QLineEdit>("memory"), Qt::Key_Return);
  ASSERT_NE(shown<QLabel>("memory_echo"), nullptr);
  QTest::keyClick(shown<QLineEdit>("memory"), Qt::Key_Escape);
  EXPECT_EQ(shown<QLineEdit>("memory")->text(), before);
  EXPECT_TRUE(shown<QLineEdit>("memory")->hasFocus());
  EXPECT_FALSE(shown<QLineEdit>("memory")->property("bad").toBool());
  EXPECT_EQ(shown<QLabel>("memory_echo"), nullptr);
  back_to_the_first_bytes();
}

TEST_F(Panels, WhatIsRefusedDoesNotStayInAList) {
  hand.session().select({hand.machine("deck-a")});
  auto* carrier = qobject_cast<QComboBox*>(window.properties().editor("carrier"));
  ASSERT_NE(carrier, nullptr);
  ASSERT_EQ(carrier->count(), 3) << "the PC and two hypervisors";
  ASSERT_EQ(carrier->currentIndex(), 0);
  carrier->setFocus();
  QTest::keyClick(carrier, Qt::Key_Down); // itself
  carrier = qobject_cast<QComboBox*>(window.properties().editor("carrier"));
  EXPECT_EQ(carrier->currentIndex(), 0);
  EXPECT_FALSE(machine("deck-a").carrier);
  EXPECT_TRUE(window.notice().isVisibleTo(&window));
  back_to_the_first_bytes();
}

// A segment that does not translate shows nothing of a translator; the keyboard stays where it is.
TEST_F(Panels, FieldsOfATranslatorComeWithIt) {
  const auto& all = hand.lab().segments;
  const auto isolated = std::find_if(all.begin(), all.end(), [](const Segment& s) {
    return s.type == SegmentKind::isolated && !s.pc_socket;
  });
  ASSERT_NE(isolated, all.end());
  const SegmentId id = isolated->id;
  hand.session().select({id});
  PropertyPanel& panel = window.properties();
  for (const char* key : {"translator4", "translator_dhcp", "pc_address4", "lan"})
    EXPECT_EQ(panel.editor(key), nullptr) << key;
  panel.editor("type")->setFocus();
  QTest::keyClick(panel.editor("type"), Qt::Key_Down);
  QTest::keyClick(panel.editor("type"), Qt::Key_Down);
  EXPECT_EQ(find<Segment>(hand.lab(), id)->type, SegmentKind::nat);
  ASSERT_NE(panel.editor("translator4"), nullptr);
  EXPECT_TRUE(panel.editor("translator4")->isVisible());
  EXPECT_TRUE(panel.editor("type")->hasFocus());
  QTest::mouseClick(panel.editor("pc_socket"), Qt::LeftButton, {},
                    {8, panel.editor("pc_socket")->height() / 2});
  EXPECT_NE(panel.editor("pc_address4"), nullptr);
  back_to_the_first_bytes();
}

// Of two machines: what differs says so, whatever kind of field it is, and nothing is blank.
TEST_F(Panels, WhatDiffersIsSaidInEveryField) {
  const std::vector<AnyId> both{hand.machine("beacon"), hand.machine("deck-a")};
  hand.session().select(both);
  const QString differ = words(text::property_mixed);
  int lines = 0, choices = 0, boxes = 0;
  for (const FieldInfo& f : info_of(Kind::machine).fields) {
    QWidget* w = window.properties().editor(f.key);
    if (!w) continue;
    const bool same = f.get(object_at(hand.lab(), both[0])) == f.get(object_at(hand.lab(), both[1]));
    if (const auto* line = qobject_cast<QLineEdit*>(w)) {
      const QString said = line->text().isEmpty() ? line->placeholderText() : line->text();
      EXPECT_FALSE(said.isEmpty()) << f.key;
      EXPECT_EQ(said == differ, !same) << f.key << ": " << said.toStdString();
      lines += !same;
    } else if (const auto* choice = qobject_cast<QComboBox*>(w)) {
      const QString said = choice->currentIndex() < 0 ? choice->placeholderText() : choice->currentText();
      EXPECT_EQ(said == differ, !same) << f.key << ": " << said.toStdString();
      choices += !same;
    } else if (const auto* box = qobject_cast<QCheckBox*>(w)) {
      EXPECT_EQ(box->text() == differ, !same) << f.key;
      EXPECT_EQ(box->checkState() == Qt::PartiallyChecked, !same) << f.key;
      boxes += !same;
    }
  }
  EXPECT_GT(lines, 2);
  EXPECT_GT(choices, 0);
  EXPECT_GT(boxes, 0);
  const auto* role = qobject_cast<QComboBox*>(window.properties().editor("role"));
  ASSERT_NE(role, nullptr);
  const QImage with = window.properties().editor("role")->grab().toImage();
  hand.session().select({both[0]});
  EXPECT_NE(with, window.properties().editor("role")->grab().toImage());
}

TEST_F(Panels, CardsAndDisksOfAMachine) {
  const MachineId beacon = hand.machine("beacon");
  hand.session().select({beacon});
  const std::size_t cards = hand.lab().cards.size(), disks = hand.lab().disks.size();
  press("add_disk");
  ASSERT_EQ(hand.lab().disks.size(), disks + 1);
  EXPECT_TRUE(hand.session().is_selected(hand.lab().disks.back().id));
  type("size", "3.5g");
  QTest::keyClick(shown<QLineEdit>("size"), Qt::Key_Return);
  EXPECT_EQ(hand.lab().disks.back().size, 3584);
  press("back");
  EXPECT_TRUE(hand.session().is_selected(beacon));
  press("add_card");
  ASSERT_EQ(hand.lab().cards.size(), cards + 1);
  press("back");
  press(("remove_" + to_text(hand.lab().cards.back().id)).c_str());
  EXPECT_EQ(hand.lab().cards.size(), cards);
  back_to_the_first_bytes();
}

// What is pressed is made anew with all the rest; the keyboard does not wander off.
TEST_F(Panels, TheKeyboardStaysInThePanel) {
  PropertyPanel& panel = window.properties();
  const auto here = [&] { return panel.isAncestorOf(QApplication::focusWidget()); };
  hand.session().select({});
  auto* add = shown<QPushButton>("add_volume");
  ASSERT_NE(add, nullptr);
  add->setFocus();
  QTest::keyClick(add, Qt::Key_Space);
  ASSERT_EQ(hand.session().selection().size(), 1U);
  ASSERT_EQ(hand.session().selection().front().kind, Kind::volume);
  ASSERT_TRUE(here());
  EXPECT_EQ(QApplication::focusWidget(), panel.editor("name")) << "its name can be typed at once";
  auto* back = shown<QPushButton>("back");
  back->setFocus();
  QTest::keyClick(back, Qt::Key_Space);
  EXPECT_TRUE(hand.session().selection().empty());
  EXPECT_TRUE(here());
  const std::string name = "remove_" + to_text(hand.lab().volumes.back().id);
  auto* gone = shown<QPushButton>(name.c_str());
  ASSERT_NE(gone, nullptr);
  gone->setFocus();
  QTest::keyClick(gone, Qt::Key_Space);
  EXPECT_TRUE(here());
  hand.session().select({hand.machine("beacon")});
  shown<QPushButton>("add_routes")->setFocus();
  QTest::keyClick(shown<QPushButton>("add_routes"), Qt::Key_Space);
  EXPECT_EQ(QApplication::focusWidget(), shown<QPushButton>("add_routes"));
  back_to_the_first_bytes();
}

TEST_F(Panels, SharesOfAMachine) {
  const MachineId hold = hand.machine("hold");
  hand.session().select({hold});
  const std::size_t before = hand.lab().shares.size();
  press("add_share");
  ASSERT_EQ(hand.lab().shares.size(), before + 1);
  const ShareId made = hand.lab().shares.back().id;
  EXPECT_TRUE(hand.session().is_selected(made));
  EXPECT_EQ(hand.lab().shares.back().machine, hold);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Add a share to hold"));
  type("name", "spare-bay");
  QTest::keyClick(shown<QLineEdit>("name"), Qt::Key_Return);
  EXPECT_EQ(find<Share>(hand.lab(), made)->name, "spare-bay");
  type("size", "12g");
  QTest::keyClick(shown<QLineEdit>("size"), Qt::Key_Return);
  EXPECT_EQ(find<Share>(hand.lab(), made)->size, 12 * 1024);
  press("back");
  EXPECT_TRUE(hand.session().is_selected(hold));
  const std::string open = "open_" + to_text(made);
  ASSERT_NE(shown<QPushButton>(open.c_str()), nullptr);
  EXPECT_EQ(shown<QPushButton>(open.c_str())->accessibleName(), QStringLiteral("spare-bay · 12 GiB"));
  press(open.c_str());
  EXPECT_TRUE(hand.session().is_selected(made));
  press("back");
  press(("remove_" + to_text(made)).c_str());
  EXPECT_FALSE(exists(hand.lab(), made));
  back_to_the_first_bytes();
}

TEST_F(Panels, AddressesOfACardAndClientsOfAShare) {
  const Card* card = nullptr;
  for (const Card& c : hand.lab().cards)
    if (c.machine == hand.machine("hold") && c.segment && !c.addresses.empty()) card = &c;
  ASSERT_NE(card, nullptr);
  const CardId id = card->id;
  const std::size_t before = card->addresses.size();
  hand.session().select({id});
  press("add_addresses");
  ASSERT_EQ(find<Card>(hand.lab(), id)->addresses.size(), before + 1);
  EXPECT_EQ(find<Card>(hand.lab(), id)->addresses.back().kind, AddressKind::suggested);
  press(("remove_addresses_" + std::to_string(before)).c_str());
  EXPECT_EQ(find<Card>(hand.lab(), id)->addresses.size(), before);
  ASSERT_FALSE(hand.lab().shares.empty());
  const ShareId share = hand.lab().shares.front().id;
  const std::size_t clients = hand.lab().shares.front().clients.size();
  hand.session().select({share});
  const std::vector<MachineId> before_tick = hand.lab().shares.front().clients;
  const auto is_client = [&](MachineId m) {
    return std::find(before_tick.begin(), before_tick.end(), m) != before_tick.end();
  };
  const auto& all = hand.lab().machines;
  const MachineId other =
      std::find_if(all.begin(), all.end(), [&](const Machine& m) { return !is_client(m.id); })->id;
  auto* box = shown<QCheckBox>(("clients_" + to_text(other)).c_str());
  ASSERT_NE(box, nullptr);
  QTest::mouseClick(box, Qt::LeftButton, {}, QPoint(8, box->height() / 2));
  EXPECT_EQ(find<Share>(hand.lab(), share)->clients.size(), clients + 1);
  EXPECT_TRUE(box->isChecked());
  back_to_the_first_bytes();
}

// One step however far it is dragged; marks where the role's figures are.
TEST_F(Panels, SliderSetsMemoryInOneStep) {
  hand.session().select({hand.machine("wheelhouse")});
  auto* slider = shown<MemorySlider>("memory_slider");
  ASSERT_NE(slider, nullptr);
  const Role& role = *find<Role>(hand.lab(), machine("wheelhouse").role);
  EXPECT_LT(slider->x_of(role.current_least), slider->x_of(role.current_usual));
  EXPECT_LE(slider->x_of(role.current_usual), slider->width());
  const QPoint from(slider->x_of(machine("wheelhouse").memory), 11);
  QTest::mousePress(slider, Qt::LeftButton, {}, from);
  for (int x = from.x(); x >= slider->x_of(4096); --x) {
    QMouseEvent move(QEvent::MouseMove, QPointF(x, 11), slider->mapToGlobal(QPointF(x, 11)), Qt::NoButton,
                     Qt::LeftButton, {});
    QCoreApplication::sendEvent(slider, &move);
  }
  QTest::mouseRelease(slider, Qt::LeftButton, {}, {slider->x_of(4096), 11});
  EXPECT_NEAR(static_cast<double>(machine("wheelhouse").memory), 4096, 256);
  EXPECT_EQ(machine("wheelhouse").memory % 256, 0);
  hand.session().undo();
  EXPECT_TRUE(write_lab(hand.lab()) == first_bytes);
  slider->setFocus();
  QTest::keyClick(slider, Qt::Key_Right);
  EXPECT_GT(machine("wheelhouse").memory, find<Machine>(hand.lab(), hand.machine("beacon"))->memory);
  back_to_the_first_bytes();
}

// The style sheet and what is painted follow the palette; what a person chose stays.
TEST_F(Panels, ColoursFollowTheDesktop) {
  const auto sheet_is = [](Theme t) { return qApp->styleSheet() == style_sheet(snug::palette(t)); };
  QPalette dark;
  dark.setColor(QPalette::Window, Qt::black);
  dark.setColor(QPalette::WindowText, Qt::white);
  QApplication::setPalette(dark);
  QCoreApplication::processEvents();
  EXPECT_TRUE(sheet_is(Theme::dark));
  EXPECT_EQ(&window.canvas().colours(), &snug::palette(Theme::dark));
  QEvent change(QEvent::ThemeChange); // what a desktop that is light tells its windows
  QCoreApplication::sendEvent(&window, &change);
  EXPECT_TRUE(sheet_is(Theme::light));
  EXPECT_EQ(&window.canvas().colours(), &snug::palette(Theme::light));
  window.action("colours_dark")->trigger();
  EXPECT_TRUE(sheet_is(Theme::dark));
  QCoreApplication::sendEvent(&window, &change);
  EXPECT_TRUE(sheet_is(Theme::dark));
  EXPECT_EQ(window.settings().get().colours, Colours::dark);
  window.action("colours_light")->trigger();
  EXPECT_TRUE(sheet_is(Theme::light));
}

// The words at the pointer do not hide the room that a guest is held over, even at the right edge.
TEST_F(Panels, WordsStandBesideTheTarget) {
  window.resize(1280, 800);
  QTest::qWait(1);
  window.canvas().show_all();
  const MachineId room = hand.machine("deck-b");
  hand.press(hand.on(hand.machine("tickets-1")));
  hand.move(hand.on(room) + QPoint(40, 40));
  const QRectF target = window.canvas().on_view(box_of(window.canvas().drawing(), room));
  const QRectF ghost = window.canvas().ghost_box();
  EXPECT_FALSE(ghost.isNull());
  EXPECT_FALSE(ghost.intersects(target));
  EXPECT_TRUE(QRectF(window.canvas().viewport()->rect()).contains(ghost));
  hand.key(Qt::Key_Escape);
}

// Work of a drag, counted: no frame paints the whole view, and few shapes are painted again.
TEST_F(Panels, DragFramesPaintLittle) {
  window.canvas().viewport()->repaint();
  window.canvas().take_painted();
  const auto shapes = static_cast<std::int64_t>(window.canvas().drawing().shapes.size());
  hand.press(hand.on(hand.machine("tickets-1")));
  hand.move(hand.on(hand.machine("deck-b")) + QPoint(40, 40));
  QTest::qWait(5);
  window.canvas().take_painted(); // the two rooms change once
  const QPoint at = hand.on(hand.machine("deck-b")) + QPoint(40, 40);
  constexpr int kFrames = 20;
  for (int i = 0; i < kFrames; ++i) {
    QMouseEvent move(QEvent::MouseMove, at + QPoint(i, i / 2),
                     window.canvas().viewport()->mapToGlobal(at + QPoint(i, i / 2)), Qt::NoButton,
                     Qt::LeftButton, {});
    QCoreApplication::sendEvent(window.canvas().viewport(), &move);
    QTest::qWait(1);
  }
  const Canvas::Painted painted = window.canvas().take_painted();
  EXPECT_GT(painted.frames, 0);
  EXPECT_EQ(painted.whole, 0);
  EXPECT_LT(painted.shapes, painted.frames * shapes / 3) << shapes;
  hand.key(Qt::Key_Escape);
}

// There while a part of the lab is out of view; a click brings the view there.
TEST_F(Panels, MinimapGoesWhereItIsClicked) {
  auto* map = window.canvas().findChild<QWidget*>(QStringLiteral("minimap"));
  ASSERT_NE(map, nullptr);
  window.canvas().show_all();
  EXPECT_FALSE(map->isVisible());
  window.canvas().set_zoom(2.5, {0, 0});
  EXPECT_TRUE(map->isVisible());
  const auto* bar = window.canvas().horizontalScrollBar();
  ASSERT_EQ(bar->value(), 0);
  const QRectF frame = static_cast<Minimap*>(map)->frame();
  EXPECT_LT(frame.width(), map->width());
  QTest::mouseClick(map, Qt::LeftButton, {}, {map->width() - 2, map->height() / 2});
  EXPECT_EQ(bar->value(), bar->maximum());
  EXPECT_GT(static_cast<Minimap*>(map)->frame().x(), frame.x());
  window.canvas().show_all();
  EXPECT_FALSE(map->isVisible());
}

TEST(Page, PassesTheLintOfMandoc) {
  const std::string page = std::string(SNUG_SOURCE_DIR) + "/app/window/snuglab.1";
  const auto done = run_program({"mandoc", "-T", "lint", "-W", "warning", page});
  if (done.code == 127) GTEST_SKIP() << "skipped: mandoc is not installed";
  EXPECT_EQ(done.code, 0) << done.out << done.err;
}

} // namespace
} // namespace snug::test
