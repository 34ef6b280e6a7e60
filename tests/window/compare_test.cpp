// The ruler beside another exercise, chosen in the menu.

#include "tests/support/sample.h"
#include "tests/window/hand.h"
#include "ui/ruler/ruler.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QCoreApplication>
#include <QEnterEvent>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>

namespace snug::test {
namespace {

QAction* offer(MainWindow& window, const QString& name) {
  QMenu* menu = window.action("compare_with")->menu();
  emit menu->aboutToShow();
  for (QAction* a : menu->actions())
    if (a->text() == name) return a;
  ADD_FAILURE() << name.toStdString();
  return nullptr;
}

std::string said(const Drawing& ruler) {
  std::string out;
  for (const AnyShape& s : ruler.shapes)
    if (const auto* t = std::get_if<TextShape>(&s)) out += t->text + "\n";
  return out;
}

TEST(Compare, TheRulerShowsWhatTheOtherTakesUntilItIsToldOtherwise) {
  MainWindow window;
  Hand hand(window);
  window.start_sample("skerry-ferries");
  const std::string plain = said(window.ruler().drawing());
  const QImage before = window.ruler().grab().toImage();
  ASSERT_TRUE(window.action("compare_with"));
  offer(window, QStringLiteral("Names and logins"))->trigger();
  EXPECT_NE(said(window.ruler().drawing()).find("Names and logins: "), std::string::npos);
  EXPECT_NE(window.ruler().grab().toImage(), before);
  EXPECT_TRUE(offer(window, QStringLiteral("Names and logins"))->isChecked());
  hand.session().set_exercise(exercise(hand.lab(), "Names and logins"));
  EXPECT_EQ(said(window.ruler().drawing()).find("Names and logins: "), std::string::npos)
      << "is what is shown";
  EXPECT_FALSE(offer(window, QStringLiteral("Names and logins"))->isEnabled());
  hand.session().set_exercise({});
  offer(window, QStringLiteral("Nothing"))->trigger();
  EXPECT_EQ(said(window.ruler().drawing()), plain);
}

// The pointer over an exercise shows what it would take, for as long as it is there.
TEST(Compare, LookingAtAnExerciseShowsWhatItTakes) {
  MainWindow window;
  Hand hand(window);
  window.start_sample("skerry-ferries");
  const std::string plain = said(window.ruler().drawing());
  QPushButton* chip = nullptr;
  for (QPushButton* b : window.findChildren<QPushButton*>())
    if (b->isVisible() && b->text().startsWith(QStringLiteral("Names and logins"))) chip = b;
  ASSERT_NE(chip, nullptr);
  QEnterEvent enter(QPointF(4, 4), QPointF(4, 4), chip->mapToGlobal(QPointF(4, 4)));
  QCoreApplication::sendEvent(chip, &enter);
  EXPECT_NE(said(window.ruler().drawing()).find("Names and logins: "), std::string::npos);
  QEvent leave(QEvent::Leave);
  QCoreApplication::sendEvent(chip, &leave);
  EXPECT_EQ(said(window.ruler().drawing()), plain);
  chip->setFocus(Qt::TabFocusReason);
  EXPECT_NE(said(window.ruler().drawing()).find("Names and logins: "), std::string::npos) << "by keyboard";
  window.canvas().setFocus();
  EXPECT_EQ(said(window.ruler().drawing()), plain);
}

// An exercise that goes is compared with no longer.
TEST(Compare, AnExerciseThatGoesIsForgotten) {
  MainWindow window;
  Hand hand(window);
  window.start_sample("skerry-ferries");
  const ExerciseId other = exercise(hand.lab(), "Names and logins");
  window.ruler().compare_with(other);
  const std::vector<AnyId> gone{other};
  ASSERT_TRUE(hand.session().perform(remove_elements(hand.lab(), gone)));
  EXPECT_FALSE(window.ruler().compared());
}

} // namespace
} // namespace snug::test
