// The panel about reach with real events: questions, answers, promises.

#include "core/document/write.h"
#include "core/reach/explain.h"
#include "core/text/reach_panel_text.h"
#include "tests/window/hand.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/promise_view.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/reach_answer.h"
#include "ui/panels/reach_panel.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTest>
#include <QToolButton>

#include <cstdlib>

namespace snug::test {
namespace {

// The same but for the softened edge of a line.
bool is_near(const QColor& a, const QColor& b) {
  return std::abs(a.red() - b.red()) + std::abs(a.green() - b.green()) + std::abs(a.blue() - b.blue()) < 120;
}

class ReachPanels : public ::testing::Test {
 protected:
  void SetUp() override { open("skerry-ferries"); }
  void open(const char* name) {
    window.start_sample(name);
    window.action("show_reach")->trigger();
    QTest::qWait(1);
    first_bytes = write_lab(hand.lab());
  }
  ReachPanel& panel() { return window.reach(); }
  const ShownAnswer& answer() { return panel().answer(); }
  template <typename W>
  W* shown(QWidget& in, const QString& name) {
    for (W* w : in.findChildren<W*>(name))
      if (w->isVisibleTo(&window)) return w;
    ADD_FAILURE() << name.toStdString();
    return nullptr;
  }
  // With the keys of a list of choices.
  void choose(const char* box, const char* name) {
    auto* combo = shown<QComboBox>(panel(), QLatin1String(box));
    combo->setFocus();
    QTest::keyClick(combo, Qt::Key_Home);
    for (int i = 1; i < combo->count() && combo->currentText() != QLatin1String(name); ++i)
      QTest::keyClick(combo, Qt::Key_Down);
    EXPECT_EQ(combo->currentText(), QLatin1String(name));
  }
  void type_service(const char* text) {
    QLineEdit* line = shown<QComboBox>(panel(), QStringLiteral("ask_service"))->lineEdit();
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, QLatin1String(text));
  }
  QWidget* promise_row(PromiseId id) {
    return shown<QWidget>(panel(), QStringLiteral("promise_") + as_qt(to_text(AnyId(id))));
  }
  void press(QWidget& in, const char* name) {
    auto* button = shown<QPushButton>(in, QLatin1String(name));
    ASSERT_NE(button, nullptr);
    QTest::mouseClick(button, Qt::LeftButton);
  }
  std::vector<QWidget*> hops() {
    std::vector<QWidget*> out;
    for (QWidget* w : panel().findChildren<QWidget*>(QStringLiteral("hop")))
      if (w->isVisibleTo(&window)) out.push_back(w);
    return out;
  }
  QString texts(QWidget& in) {
    QStringList out;
    for (const QLabel* label : in.findChildren<QLabel*>())
      if (label->isVisibleTo(&window)) out << label->text();
    return out.join(QLatin1Char('|'));
  }
  void back_to_the_first_bytes() {
    while (hand.session().can_undo()) hand.session().undo();
    EXPECT_TRUE(write_lab(hand.lab()) == first_bytes);
  }
  const Promise& last() { return hand.lab().promises.back(); }
  PromiseId promise(const char* name) {
    for (const Promise& p : hand.lab().promises)
      if (name_of(hand.lab(), p.id) == name) return p.id;
    ADD_FAILURE() << name;
    return {};
  }
  MainWindow window;
  Hand hand{window};
  std::string first_bytes;
};

TEST_F(ReachPanels, AnswersHopByHop) {
  choose("ask_from", "tickets-1");
  choose("ask_to", "tickets-db");
  EXPECT_EQ(answer().mark, Mark::yes);
  EXPECT_TRUE(answer().sentence.startsWith(QStringLiteral("tickets-1 reaches tickets-db at 172.22.40.42")));
  EXPECT_FALSE(answer().end);
  ASSERT_EQ(hops().size(), answer().way.size());
  QTest::mouseClick(hops().front(), Qt::LeftButton);
  EXPECT_TRUE(hand.session().is_selected(hand.machine("tickets-1")));
  EXPECT_EQ(window.canvas().focus_id(), AnyId(hand.machine("tickets-1")));
  QTest::keyClick(hops().back(), Qt::Key_Return);
  EXPECT_EQ(answer().way.back().places.front(), hand.session().selection().front());
  press(panel(), "show_way");
  EXPECT_TRUE(hand.session().is_selected(hand.machine("tickets-db")));
  EXPECT_TRUE(hand.session().is_selected(hand.machine("tickets-1")));
}

TEST_F(ReachPanels, TheHopWhereItEndsStandsFirst) {
  choose("ask_from", "hold");
  choose("ask_to", "the outside");
  EXPECT_EQ(answer().mark, Mark::no);
  ASSERT_TRUE(answer().end);
  ASSERT_FALSE(hops().empty());
  EXPECT_TRUE(hops().front()->property("ends").toBool());
  EXPECT_TRUE(hops().front()->accessibleName().startsWith(words(text::answer_ends)));
  QTest::mouseClick(hops().front(), Qt::LeftButton);
  EXPECT_TRUE(hand.session().is_selected(hand.machine("hold")));
  const QString before = answer().sentence;
  press(panel(), "ask_swap");
  EXPECT_NE(answer().sentence, before);
  EXPECT_EQ(shown<QComboBox>(panel(), QStringLiteral("ask_to"))->currentText(), QStringLiteral("hold"));
}

TEST_F(ReachPanels, AnswerFollowsTheLabAndTheExercise) {
  choose("ask_from", "tickets-1");
  choose("ask_to", "tickets-db");
  ASSERT_EQ(answer().mark, Mark::yes);
  for (const Exercise& e : hand.lab().exercises)
    if (e.name == "Names and logins") hand.session().set_exercise(e.id);
  EXPECT_EQ(answer().mark, Mark::no);
  EXPECT_TRUE(answer().sentence.contains(QStringLiteral("is off")));
  hand.session().set_exercise({});
  ASSERT_EQ(answer().mark, Mark::yes);
  for (const Card& c : hand.lab().cards)
    if (c.machine == hand.machine("tickets-db"))
      hand.session().perform(set_field(hand.lab(), c.id, "connected", Value(false)));
  EXPECT_EQ(answer().mark, Mark::no);
  hand.session().perform(remove_elements(hand.lab(), std::vector<AnyId>{hand.machine("tickets-db")}));
  EXPECT_EQ(shown<QComboBox>(panel(), QStringLiteral("ask_to"))->currentText(),
            QStringLiteral("the outside"));
  back_to_the_first_bytes();
}

TEST_F(ReachPanels, ServiceIsTypedOrTakenFromWhatIsOffered) {
  choose("ask_from", "tickets-1");
  choose("ask_to", "tickets-db");
  auto* box = shown<QComboBox>(panel(), QStringLiteral("ask_service"));
  EXPECT_GE(box->findData(QStringLiteral("tcp/7450")), 0);
  type_service("tcp/7450");
  EXPECT_EQ(answer().mark, Mark::yes);
  type_service("tcp/7451");
  EXPECT_EQ(answer().mark, Mark::no);
  EXPECT_TRUE(answer().sentence.contains(QStringLiteral("offers nothing on that port")));
  type_service("tcp/x");
  EXPECT_TRUE(box->property("bad").toBool());
  QTest::keyClick(box->lineEdit(), Qt::Key_Return);
  EXPECT_FALSE(box->property("bad").toBool());
  EXPECT_EQ(box->lineEdit()->text(), QStringLiteral("tcp")); // the last that could be read
}

// Mid-drag of a machine into another hypervisor, which carries its segment or not: the answer is that of
// after the drop, and goes with Esc.
TEST_F(ReachPanels, AnswersWhileSomethingIsDragged) {
  choose("ask_from", "tickets-1");
  choose("ask_to", "tickets-db");
  ASSERT_EQ(answer().mark, Mark::yes);
  const QString before = answer().sentence;
  CardId carrier;
  for (const Card& c : hand.lab().cards)
    if (c.machine == hand.machine("deck-b"))
      for (const SegmentTag& t : c.carries)
        if (t.segment == hand.segment("Passengers")) carrier = c.id;
  ASSERT_TRUE(carrier);
  hand.session().perform(set_field(hand.lab(), carrier, "connected", Value(false)));
  ASSERT_EQ(answer().mark, Mark::yes);
  hand.press(hand.on(hand.machine("tickets-1")));
  hand.move(hand.on(hand.machine("deck-b")) + QPoint(30, 40));
  ASSERT_TRUE(hand.session().is_previewing());
  EXPECT_EQ(answer().mark, Mark::no) << answer().sentence.toStdString();
  EXPECT_TRUE(answer().sentence.startsWith(QStringLiteral("After the drop")));
  hand.key(Qt::Key_Escape);
  EXPECT_EQ(answer().sentence, before);
}

// On the picture what is passed has a ring of one colour, where it ends of another; gone with the panel.
TEST_F(ReachPanels, TheWayIsMarkedOnThePicture) {
  choose("ask_from", "beacon");
  choose("ask_to", "hold");
  const auto ring_of = [this](const char* name) {
    const snug::Box box = box_of(window.canvas().drawing(), hand.machine(name));
    const QImage image = window.canvas().viewport()->grab().toImage();
    const QColor ok = colour(window.canvas().colours(), Ink::ok);
    const QColor error = colour(window.canvas().colours(), Ink::error);
    const QRectF around = window.canvas().on_view(box);
    int green = 0, red = 0;
    for (int x = static_cast<int>(around.left()) + 12; x < around.right() - 24; ++x)
      for (int y = static_cast<int>(around.top()) - 8; y < around.top() - 1; ++y) {
        if (y < 0) continue;
        green += is_near(image.pixelColor(x, y), ok) ? 1 : 0;
        red += is_near(image.pixelColor(x, y), error) ? 1 : 0;
      }
    return std::pair(green > 10, red > 10);
  };
  EXPECT_EQ(ring_of("beacon"), std::pair(true, false));
  EXPECT_EQ(ring_of("hold"), std::pair(true, false));
  EXPECT_EQ(ring_of("gangway"), std::pair(false, false));
  choose("ask_from", "hold");
  choose("ask_to", "the outside");
  EXPECT_EQ(ring_of("hold"), std::pair(false, true));
  window.action("show_findings")->trigger();
  EXPECT_EQ(ring_of("hold"), std::pair(false, false));
}

TEST_F(ReachPanels, TwoChosenMachinesAreAskedAbout) {
  window.action("show_findings")->trigger();
  EXPECT_FALSE(window.action("ask_reach")->isEnabled());
  hand.click(hand.on(hand.machine("beacon")));
  EXPECT_FALSE(window.action("ask_reach")->isEnabled());
  hand.click(hand.on(hand.machine("wheelhouse")), Qt::ControlModifier);
  ASSERT_TRUE(window.action("ask_reach")->isEnabled());
  window.action("ask_reach")->trigger();
  EXPECT_TRUE(panel().isVisible());
  EXPECT_TRUE(answer().sentence.contains(QStringLiteral("beacon")));
  EXPECT_TRUE(answer().sentence.contains(QStringLiteral("wheelhouse")));
}

TEST_F(ReachPanels, AnAnswerIsPromisedChangedAndTakenBack) {
  const std::size_t before = hand.lab().promises.size();
  choose("ask_from", "beacon");
  choose("ask_to", "hold");
  press(panel(), "promise_answer");
  ASSERT_EQ(hand.lab().promises.size(), before + 1);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Promise that beacon reaches hold"));
  EXPECT_TRUE(hand.session().is_selected(last().id));
  press(panel(), "promise_answer"); // the notice says that it is promised already
  EXPECT_EQ(hand.lab().promises.size(), before + 1);
  const PromiseId id = last().id;
  EXPECT_TRUE(texts(*promise_row(id)).contains(words(text::promise_is_kept)));
  press(*promise_row(id), "change");
  auto* must = qobject_cast<QComboBox*>(window.properties().editor("must"));
  ASSERT_NE(must, nullptr);
  must->setFocus();
  QTest::keyClicks(must, QStringLiteral("never"));
  QTest::keyClick(must, Qt::Key_Return);
  emit must->activated(must->findData(QStringLiteral("never")));
  EXPECT_EQ(last().must, PromiseKind::never);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Change the promise that beacon reaches hold"));
  EXPECT_TRUE(texts(*promise_row(id)).contains(words(text::promise_is_broken)));
  auto* to = qobject_cast<QComboBox*>(window.properties().editor("to"));
  ASSERT_GE(to->findData(QStringLiteral("outside")), 0);
  emit to->activated(to->findData(QStringLiteral("outside")));
  EXPECT_EQ(last().to.kind, Kind::outside);
  press(*promise_row(id), "take_back");
  EXPECT_EQ(hand.lab().promises.size(), before);
  EXPECT_EQ(hand.session().undo_words(),
            QStringLiteral("Take back the promise that beacon never reaches the outside"));
  back_to_the_first_bytes();
}

TEST_F(ReachPanels, ABrokenPromiseLeadsToItsFindingAndBack) {
  const PromiseId id = promise("wheelhouse reaches deck-b on tcp 443");
  QWidget* row = promise_row(id);
  EXPECT_TRUE(texts(*row).contains(words(text::promise_is_broken)));
  QTest::mouseClick(row, Qt::LeftButton, {}, {60, 8});
  EXPECT_EQ(answer().mark, Mark::chance);
  EXPECT_TRUE(hand.session().is_selected(id));
  window.findings().heading(Severity::error).setChecked(false);
  press(*promise_row(id), "to_finding");
  EXPECT_TRUE(window.findings().isVisible());
  QWidget* finding = QApplication::focusWidget();
  if (!finding) finding = window.focusWidget();
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->objectName(), QStringLiteral("finding"));
  EXPECT_TRUE(finding->accessibleName().contains(QStringLiteral("deck-b")));
  press(*finding, "to_promise");
  EXPECT_TRUE(panel().isVisible());
  EXPECT_EQ(window.focusWidget()->objectName(), QStringLiteral("promise_") + as_qt(to_text(AnyId(id))));
}

// Whether a row stands wholly in what is shown of its list.
bool is_in_sight(const QWidget* row) {
  for (QWidget* w = row->parentWidget(); w; w = w->parentWidget())
    if (const auto* area = qobject_cast<QScrollArea*>(w))
      return area->viewport()->rect().contains(
          QRect(row->mapTo(area->viewport(), QPoint(0, 0)), QSize(row->width(), 40)));
  return false;
}

TEST_F(ReachPanels, ANewPromiseComesIntoSight) {
  choose("ask_from", "beacon");
  choose("ask_to", "hold");
  press(panel(), "promise_answer");
  QTest::qWait(20);
  EXPECT_TRUE(is_in_sight(promise_row(last().id)));
  EXPECT_TRUE(promise_row(last().id)->property("chosen").toBool());
}

TEST_F(ReachPanels, ThePromiseOfAFindingComesIntoSight) {
  // The last promise is broken: nobody is left who could keep it.
  hand.session().perform(set_field(hand.lab(), hand.machine("hold"), "notes", Value(std::string("x"))));
  choose("ask_from", "hold");
  choose("ask_to", "the outside");
  press(panel(), "add_promise");
  hand.session().perform(set_field(hand.lab(), last().id, "must", Value(std::string("reach"))));
  const PromiseId id = last().id;
  window.action("show_findings")->trigger();
  QTest::qWait(20);
  for (QWidget* row : window.findings().findChildren<QWidget*>(QStringLiteral("finding"))) {
    if (!row->accessibleName().contains(QStringLiteral("hold does not reach the outside"))) continue;
    press(*row, "to_promise");
    break;
  }
  QTest::qWait(20);
  EXPECT_TRUE(is_in_sight(promise_row(id)));
  EXPECT_TRUE(hand.session().is_selected(id));
  EXPECT_TRUE(promise_row(id)->property("chosen").toBool());
}

// Of several addresses the best, or the one that is chosen.
TEST_F(ReachPanels, OneOfSeveralAddressesIsChosen) {
  choose("ask_from", "manifest");
  choose("ask_to", "beacon");
  choose("ask_to", "tickets-db");
  auto* at = shown<QComboBox>(panel(), QStringLiteral("ask_at"));
  ASSERT_NE(at, nullptr);
  ASSERT_EQ(at->count(), 3);
  choose("ask_at", "172.22.40.42 on Passengers");
  EXPECT_TRUE(answer().sentence.contains(QStringLiteral("172.22.40.42"))) << answer().sentence.toStdString();
  choose("ask_at", "172.22.50.42 on Crew");
  EXPECT_TRUE(answer().sentence.contains(QStringLiteral("172.22.50.42"))) << answer().sentence.toStdString();
  choose("ask_to", "manifest");
  choose("ask_to", "gangway");
  EXPECT_EQ(at->currentText(), words(text::ask_at_any));
  choose("ask_to", "the outside");
  EXPECT_FALSE(at->isVisible());
}

TEST_F(ReachPanels, APortThatIsLeftOutIsAny) {
  const PromiseId id = promise("Cargo never reaches the outside");
  hand.session().select({id});
  EXPECT_EQ(window.properties().editor("port"), nullptr) << "ping has none";
  window.properties().editor("transport")->setFocus();
  QTest::keyClick(window.properties().editor("transport"), Qt::Key_Home);
  EXPECT_EQ(find<Promise>(hand.lab(), id)->transport, Transport::tcp);
  auto* port = qobject_cast<QLineEdit*>(window.properties().editor("port"));
  ASSERT_NE(port, nullptr);
  EXPECT_EQ(port->text(), QStringLiteral("any"));
  port->setFocus();
  port->selectAll();
  QTest::keyClicks(port, QStringLiteral("443"));
  QTest::keyClick(port, Qt::Key_Return);
  EXPECT_EQ(find<Promise>(hand.lab(), id)->port, 443);
  port = qobject_cast<QLineEdit*>(window.properties().editor("port"));
  port->selectAll();
  QTest::keyClicks(port, QStringLiteral("any"));
  QTest::keyClick(port, Qt::Key_Return);
  EXPECT_EQ(find<Promise>(hand.lab(), id)->port, 0);
}

TEST_F(ReachPanels, NamesAreNeverMarkup) {
  const char* evil = "<b>a</b>&amp;<img src='x'>";
  hand.session().perform(set_field(hand.lab(), hand.machine("hold"), "name", Value(std::string(evil))));
  panel().ask(hand.machine("beacon"), AnyId(hand.lab().machines[2].id));
  press(panel(), "promise_answer");
  for (const QLabel* label : panel().findChildren<QLabel*>()) {
    if (!label->text().contains(QLatin1Char('<'))) continue;
    EXPECT_EQ(label->textFormat(), Qt::PlainText);
  }
  EXPECT_TRUE(texts(panel()).contains(QLatin1String(evil)));
  for (const QWidget* w : panel().findChildren<QWidget*>())
    EXPECT_FALSE(w->toolTip().contains(QLatin1Char('<')));
}

TEST_F(ReachPanels, ALabWithoutMachinesSaysWhatToDo) {
  window.start_blank(false);
  QTest::qWait(1);
  EXPECT_EQ(answer().sentence, words(text::ask_nobody));
  EXPECT_TRUE(hops().empty());
  EXPECT_EQ(panel().promises().shown_count(), 0);
  EXPECT_FALSE(shown<QPushButton>(panel(), QStringLiteral("promise_answer"))->isEnabled());
  EXPECT_FALSE(shown<QComboBox>(panel(), QStringLiteral("ask_from"))->isEnabled());
}

TEST_F(ReachPanels, EverythingIsReachedByTabAndHasAName) {
  for (QWidget* w : panel().findChildren<QWidget*>()) {
    if (!w->isVisibleTo(&window) || (w->focusPolicy() & Qt::TabFocus) == 0) continue;
    const auto* button = qobject_cast<QAbstractButton*>(w);
    EXPECT_FALSE(w->accessibleName().isEmpty() && (!button || button->text().isEmpty()))
        << w->metaObject()->className() << ' ' << w->objectName().toStdString();
  }
}

} // namespace
} // namespace snug::test
