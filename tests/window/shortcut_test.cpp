// Every action can be said, reached and given other keys; typing never sets one off.

#include "ui/window/shortcut_table.h"

#include "tests/window/actions.h"
#include "tests/window/ferry_window.h"
#include "ui/panels/address_panel.h"
#include "ui/session/words.h"
#include "ui/window/help_view.h"
#include "ui/window/notice_bar.h"
#include "ui/window/shortcut_view.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include <map>
#include <set>

namespace snug::test {
namespace {

QString mnemonic(const QAction& a) { return QKeySequence::mnemonic(a.text()).toString(); }

class Shortcuts : public FerryWindow {
 protected:
  void SetUp() override {
    FerryWindow::SetUp();
    window.remember_in(file());
    window.show();
    QApplication::setActiveWindow(&window);
  }
  QString file() const { return folder.filePath(QStringLiteral("settings.json")); }
  ShortcutView& view() {
    window.action("change_keys")->trigger();
    auto* v = window.findChild<ShortcutView*>();
    QApplication::setActiveWindow(v);
    return *v;
  }
  KeyField& field(const char* name, int place = 0) {
    auto* line = view().findChild<QWidget*>(QLatin1String(name));
    return *line->findChildren<KeyField*>().at(place);
  }
  void press(const char* name, Qt::Key key, Qt::KeyboardModifiers with, int place = 0) {
    KeyField& f = field(name, place);
    f.setFocus();
    QTest::keyClick(&f, key, with);
  }
  void click(const char* button) {
    auto* b = view().findChild<QPushButton*>(QLatin1String(button));
    ASSERT_TRUE(b && b->isVisible()) << button;
    QTest::mouseClick(b, Qt::LeftButton);
  }
  QKeySequence keys(const char* name) { return window.action(name)->shortcut(); }
  const QTemporaryDir folder;
};

TEST_F(Shortcuts, EveryActionIsNamedAndHasItsLetterInTheMenu) {
  hand.session().select({hand.machine("beacon")});
  std::size_t seen = 0;
  for (const MenuAction& m : menu_actions(window)) {
    ++seen;
    const std::string name = m.in.toStdString() + ": " + m.action->text().toStdString();
    EXPECT_FALSE(bare_text(*m.action).isEmpty()) << name;
    if (m.action->objectName().isEmpty()) continue; // of the lab: its machines, segments, exercises
    EXPECT_FALSE(mnemonic(*m.action).isEmpty()) << name;
  }
  EXPECT_GT(seen, 50U);
}

TEST_F(Shortcuts, NoTwoActionsOfAMenuShareALetter) {
  std::map<QString, std::map<QString, QString>> taken;
  for (const MenuAction& m : menu_actions(window)) {
    if (m.action->objectName().isEmpty()) continue;
    QString& holder = taken[m.in][mnemonic(*m.action)];
    EXPECT_TRUE(holder.isEmpty()) << m.in.toStdString() << ": " << m.action->text().toStdString() << " and "
                                  << holder.toStdString();
    holder = m.action->text();
  }
}

TEST_F(Shortcuts, NoTwoActionsHaveTheSameKeysAndNoneIsForTyping) {
  const ShortcutTable& table = *window.findChild<ShortcutTable*>();
  std::map<QString, QString> taken;
  for (const QAction* a : window.findChildren<QAction*>())
    for (const QKeySequence& k : a->shortcuts()) {
      QString& holder = taken[k.toString()];
      EXPECT_TRUE(holder.isEmpty()) << k.toString().toStdString() << ": " << a->text().toStdString()
                                    << " and " << holder.toStdString();
      holder = a->text();
      EXPECT_FALSE(table.refusal(k)) << k.toString().toStdString();
    }
  EXPECT_GT(taken.size(), 25U);
}

// Everything on the keyboard that is a character, into every field that can be reached.
TEST_F(Shortcuts, TypingIntoAnyFieldSetsOffNoAction) {
  int fired = 0;
  QString which;
  for (const MenuAction& m : menu_actions(window))
    QObject::connect(m.action, &QAction::triggered, &window, [&fired, &which, a = m.action] {
      ++fired;
      which = a->text();
    });
  hand.session().select({hand.machine("beacon")});
  for (const char* panel : {"show_properties", "show_addresses", "show_reach", "show_findings"})
    window.action(panel)->trigger();
  fired = 0;
  std::set<QWidget*> fields; // also those of the panels before
  for (const char* panel : {"show_findings", "show_addresses", "show_reach"}) {
    window.action(panel)->trigger();
    QTest::qWait(30);
    for (auto* w : window.findChildren<QWidget*>())
      if (w->isVisible() && w->isEnabled() && w->focusPolicy() != Qt::NoFocus &&
          (qobject_cast<QLineEdit*>(w) || qobject_cast<QPlainTextEdit*>(w)))
        fields.insert(w);
    fired = 0;
    for (QWidget* w : fields) {
      if (!w->isVisible()) continue;
      w->setFocus();
      for (char c = ' '; c < 127; ++c) QTest::keyClick(w, c);
      QTest::keyClick(w, Qt::Key_Escape);
      EXPECT_EQ(fired, 0) << w->objectName().toStdString() << ' ' << w->accessibleName().toStdString() << ": "
                          << which.toStdString();
      fired = 0;
    }
  }
  EXPECT_GE(fields.size(), 10U);
}

TEST_F(Shortcuts, EveryActionOfAContextMenuIsInTheMenuBarToo) {
  std::set<QString> in_bar;
  const auto collect = [&] {
    for (const MenuAction& m : menu_actions(window)) in_bar.insert(bare_text(*m.action));
  };
  const Lab& lab = hand.lab();
  std::set<QString> offered;
  for (const AnyId id : {AnyId{Kind::pc, 0}, AnyId(hand.machine("beacon")), AnyId(hand.machine("deck-a")),
                         AnyId(lab.cards.front().id), AnyId(lab.segments.front().id),
                         AnyId(lab.lans.front().id), AnyId(lab.exercises.front().id)}) {
    hand.session().select(id.kind == Kind::pc ? std::vector<AnyId>{} : std::vector<AnyId>{id});
    collect();
    QTimer::singleShot(30, [&] {
      auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
      ASSERT_NE(menu, nullptr) << to_text(id);
      for (const MenuAction& m : actions_of(*menu, {})) offered.insert(bare_text(*m.action));
      menu->close();
    });
    emit window.canvas().menu_wanted(id, window.mapToGlobal(QPoint(200, 200)));
  }
  window.action("show_addresses")->trigger();
  collect();
  QTimer::singleShot(30, [&] {
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    ASSERT_NE(menu, nullptr) << "of the table";
    EXPECT_EQ(menu->actions().size(), 3);
    for (const QAction* a : menu->actions()) offered.insert(bare_text(*a));
    menu->close();
  });
  emit window.addresses().view().customContextMenuRequested(QPoint(40, 40));
  EXPECT_GT(offered.size(), 15U);
  for (const QString& o : offered) EXPECT_TRUE(in_bar.contains(o)) << o.toStdString();
}

TEST_F(Shortcuts, NewKeysWorkAtOnceAndAreKept) {
  press("tidy", Qt::Key_J, Qt::ControlModifier);
  EXPECT_EQ(keys("tidy"), QKeySequence(Qt::CTRL | Qt::Key_J));
  EXPECT_TRUE(view().said().isEmpty());
  EXPECT_TRUE(window.action("tidy")->toolTip().contains(QStringLiteral("Ctrl+J")))
      << window.action("tidy")->toolTip().toStdString();
  view().hide();
  QApplication::setActiveWindow(&window);
  QSignalSpy done(window.action("tidy"), &QAction::triggered);
  QTest::keyClick(&window.canvas(), Qt::Key_T, Qt::ControlModifier);
  EXPECT_EQ(done.count(), 0);
  QTest::keyClick(&window.canvas(), Qt::Key_J, Qt::ControlModifier);
  EXPECT_EQ(done.count(), 1);
  MainWindow next;
  next.remember_in(file());
  EXPECT_EQ(next.action("tidy")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_J));
  EXPECT_TRUE(next.notice().text().isEmpty()) << next.notice().text().toStdString();
}

TEST_F(Shortcuts, AClashIsSaidBeforeAnythingIsTaken) {
  press("tidy", Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(view().said(), QStringLiteral("Ctrl+S is the key of “Save”. Should “Tidy” have it?"));
  EXPECT_EQ(keys("save"), QKeySequence(Qt::CTRL | Qt::Key_S));
  EXPECT_EQ(keys("tidy"), QKeySequence(Qt::CTRL | Qt::Key_T));
  click("leave");
  EXPECT_TRUE(view().said().isEmpty());
  EXPECT_EQ(keys("tidy"), QKeySequence(Qt::CTRL | Qt::Key_T));
  EXPECT_EQ(field("tidy").keySequence(), QKeySequence(Qt::CTRL | Qt::Key_T));
  press("tidy", Qt::Key_S, Qt::ControlModifier);
  click("take");
  EXPECT_EQ(keys("tidy"), QKeySequence(Qt::CTRL | Qt::Key_S));
  EXPECT_TRUE(keys("save").isEmpty());
  EXPECT_TRUE(field("save").keySequence().isEmpty());
  MainWindow next;
  next.remember_in(file());
  EXPECT_EQ(next.action("tidy")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_S));
  EXPECT_TRUE(next.action("save")->shortcut().isEmpty());
}

TEST_F(Shortcuts, WhatIsTypedOrMovesIsRefusedWithTheReason) {
  const struct {
    Qt::Key key;
    Qt::KeyboardModifiers with;
    const char* part;
  } cases[]{{Qt::Key_K, {}, "K alone is for typing"},
            {Qt::Key_K, Qt::ShiftModifier, "Shift+K alone is for typing"},
            {Qt::Key_7, {}, "7 alone"},
            {Qt::Key_Space, {}, "Space alone"},
            {Qt::Key_Return, {}, "Return alone"},
            {Qt::Key_Left, {}, "Left alone"},
            {Qt::Key_E, Qt::AltModifier, "Alt+E opens the menu “Edit”"},
            {Qt::Key_F10, Qt::ShiftModifier, "opens the menu of what is chosen"}};
  for (const auto& c : cases) {
    press("tidy", c.key, c.with);
    EXPECT_TRUE(view().said().contains(QString::fromUtf8(c.part)))
        << c.part << ": " << view().said().toStdString();
    EXPECT_EQ(keys("tidy"), QKeySequence(Qt::CTRL | Qt::Key_T));
    EXPECT_EQ(field("tidy").keySequence(), QKeySequence(Qt::CTRL | Qt::Key_T));
  }
  press("tidy", Qt::Key_F9, {});
  EXPECT_EQ(keys("tidy"), QKeySequence(Qt::Key_F9));
  EXPECT_TRUE(view().said().isEmpty());
}

TEST_F(Shortcuts, AsItWasForOneAndForAll) {
  auto* again = view().findChild<QWidget*>(QStringLiteral("tidy"))->findChild<QPushButton*>();
  EXPECT_FALSE(again->isVisible());
  press("tidy", Qt::Key_Backspace, {});
  EXPECT_TRUE(keys("tidy").isEmpty());
  ASSERT_TRUE(again->isVisible());
  press("quit", Qt::Key_T, Qt::ControlModifier);
  QTest::mouseClick(again, Qt::LeftButton); // its keys are another's now
  EXPECT_TRUE(view().said().startsWith(QStringLiteral("Ctrl+T is the key of “Quit”")))
      << view().said().toStdString();
  click("take");
  EXPECT_EQ(keys("tidy"), QKeySequence(Qt::CTRL | Qt::Key_T));
  EXPECT_TRUE(keys("quit").isEmpty());
  press("larger", Qt::Key_L, Qt::ControlModifier, 1); // the second of two
  EXPECT_EQ(window.action("larger")->shortcuts(),
            (QList<QKeySequence>{Qt::CTRL | Qt::Key_Plus, Qt::CTRL | Qt::Key_L}));
  click("restore_all");
  EXPECT_EQ(keys("quit"), QKeySequence(Qt::CTRL | Qt::Key_Q));
  EXPECT_EQ(window.action("larger")->shortcuts(),
            (QList<QKeySequence>{Qt::CTRL | Qt::Key_Plus, Qt::CTRL | Qt::Key_Equal}));
  EXPECT_TRUE(window.settings().get().keys.isEmpty());
}

TEST_F(Shortcuts, TheListIsSearchedByNameAndByKeys) {
  auto* filter = view().findChild<QLineEdit*>(QStringLiteral("find_keys"));
  const auto shown = [&] {
    QStringList out;
    for (const KeyField* f : view().findChildren<KeyField*>())
      if (f->isVisible()) out << f->parentWidget()->objectName();
    return out;
  };
  EXPECT_GT(shown().size(), 40);
  QTest::keyClicks(filter, QStringLiteral("tidy"));
  EXPECT_EQ(shown(), QStringList{QStringLiteral("tidy")});
  filter->clear();
  QTest::keyClicks(filter, QStringLiteral("ctrl+k"));
  EXPECT_EQ(shown(), QStringList{QStringLiteral("find_anything")});
  filter->setText(QStringLiteral("zebra"));
  EXPECT_TRUE(shown().isEmpty());
}

TEST_F(Shortcuts, DamagedKeysFallBackRowByRow) {
  const auto starts_with = [this](const char* text) {
    QFile f(file());
    EXPECT_TRUE(f.open(QIODevice::WriteOnly));
    f.write(text);
    f.close();
    auto w = std::make_unique<MainWindow>();
    w->remember_in(file());
    return w;
  };
  // A bare letter, words that are no keys, keys that two have; the others count, unknown names stay.
  const auto odd = starts_with(
      R"({"version": 1, "keys": {"tidy": ["K"], "save": ["Ctrl+S", "Ctrl+1", "Ctrl+2"], "open": ["no key at all"],
          "quit": ["Ctrl+Z"], "copy": ["Ctrl+J"], "of_later": ["Ctrl+L"]}})");
  EXPECT_EQ(odd->action("tidy")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_T));
  EXPECT_EQ(odd->action("save")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_S));
  EXPECT_EQ(odd->action("open")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_O));
  EXPECT_EQ(odd->action("quit")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_Q));
  EXPECT_EQ(odd->action("copy")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_J));
  EXPECT_TRUE(odd->settings().get().keys.contains(QStringLiteral("of_later")));
  for (const char* said : {"Tidy", "Save", "Open", "Quit"})
    EXPECT_TRUE(odd->notice().text().contains(QLatin1String(said))) << odd->notice().text().toStdString();
  EXPECT_FALSE(odd->notice().text().contains(QStringLiteral("Copy")));
  // What this program never writes makes the file a damaged one.
  for (const char* text : {R"({"version": 1, "keys": []})", R"({"version": 1, "keys": {"tidy": "Ctrl+J"}})",
                           R"({"version": 1, "keys": {"tidy": [7]}})"}) {
    const auto damaged = starts_with(text);
    EXPECT_EQ(damaged->action("tidy")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_T)) << text;
    EXPECT_TRUE(QFile::exists(file() + QStringLiteral(".damaged"))) << text;
  }
  // Two that changed places.
  const auto swapped = starts_with(R"({"version": 1, "keys": {"tidy": ["Ctrl+S"], "save": ["Ctrl+T"]}})");
  EXPECT_EQ(swapped->action("tidy")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_S));
  EXPECT_EQ(swapped->action("save")->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_T));
}

TEST_F(Shortcuts, HelpSaysTheKeysAsTheyAreNow) {
  window.action("help_keys")->trigger();
  auto* help = window.findChild<HelpView*>();
  const auto says = [&](const QString& keys) {
    for (const QLabel* l : help->findChildren<QLabel*>())
      if (l->isVisibleTo(help->findChild<QTabWidget*>()) && l->text() == keys) return true;
    return false;
  };
  EXPECT_TRUE(says(QStringLiteral("Ctrl+T")));
  EXPECT_TRUE(says(QStringLiteral("Ctrl++, Ctrl+=")));
  press("tidy", Qt::Key_J, Qt::ControlModifier);
  press("start_page", Qt::Key_H, Qt::ControlModifier);
  EXPECT_FALSE(says(QStringLiteral("Ctrl+T")));
  EXPECT_TRUE(says(QStringLiteral("Ctrl+J")));
  EXPECT_TRUE(says(QStringLiteral("Ctrl+H")));
}

TEST_F(Shortcuts, EscAndTabLeaveAFieldAsEverywhere) {
  KeyField& f = field("tidy");
  f.setFocus();
  QTest::keyClick(&f, Qt::Key_Tab);
  EXPECT_NE(view().focusWidget(), &f);
  EXPECT_EQ(keys("tidy"), QKeySequence(Qt::CTRL | Qt::Key_T));
  f.setFocus();
  QTest::keyPress(&f, Qt::Key_Control, Qt::ControlModifier); // begins something and leaves it
  QTest::keyRelease(&f, Qt::Key_Control);
  QTest::keyClick(&f, Qt::Key_Tab);
  EXPECT_EQ(f.keySequence(), QKeySequence(Qt::CTRL | Qt::Key_T));
  QTest::keyClick(&f, Qt::Key_Escape);
  EXPECT_FALSE(window.findChild<ShortcutView*>()->isVisible());
}

} // namespace
} // namespace snug::test
