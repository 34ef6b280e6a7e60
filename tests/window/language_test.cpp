// The screens in another language: nothing stays English, nothing is clipped when texts grow by two fifths or
// run from the right, numbers follow the locale, files do not.

#include "core/document/write.h"
#include "core/model/choices.h"
#include "core/model/field.h"
#include "core/text/gesture_text.h"
#include "tests/support/overlaps.h"
#include "tests/support/process.h"
#include "tests/support/temp_folder.h"
#include "tests/window/hand.h"
#include "tests/window/pseudo_language.h"
#include "tests/window/screen_texts.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/ghost_words.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/fix_buttons.h"
#include "ui/panels/when_seen.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/window/hand_out.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPainter>
#include <QTest>
#include <QToolButton>
#include <nlohmann/json.hpp>

#include <set>

namespace snug::test {
namespace {

class Language : public ::testing::Test {
 protected:
  void TearDown() override {
    speak(nullptr);
    QLocale::setDefault(QLocale::c());
    QApplication::setLayoutDirection(Qt::LeftToRight);
  }
  static void speak_pseudo() { speak(std::make_unique<PseudoLanguage>()); }
  static void settle(MainWindow& window) {
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return WhenSeen::waiting() == 0 && window.findings().fixes().is_done(); }, 20'000));
    QTest::qWait(30);
  }
  static void open(MainWindow& window, const char* sample, QSize size) {
    window.start_sample(sample);
    window.resize(size);
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    settle(window);
  }
};

// What people typed, and other words that no language changes.
void collect_strings(const nlohmann::json& j, std::set<QString>& out) {
  if (j.is_string()) out.insert(as_qt(j.get<std::string>()));
  if (j.is_structured())
    for (const auto& item : j) collect_strings(item, out);
}

bool by_length(const QString& a, const QString& b) {
  return a.size() != b.size() ? a.size() > b.size() : a < b;
}

// Whether English is left when what is translated, typed or a unit is taken out.
bool is_english(QString text, const std::vector<QString>& typed) {
  if (text.contains(u'[')) return false;
  for (const QString& t : typed) text.replace(t, QStringLiteral("·"));
  int letters = 0;
  for (const QChar c : text) {
    letters = c.isLetter() ? letters + 1 : 0;
    if (letters == 3) return true;
  }
  return false;
}

std::vector<QString> words_of(const Lab& lab) {
  std::set<QString> all{as_qt(lab.pc.name)};
  collect_strings(nlohmann::json::parse(write_lab(lab)), all);
  for (const char* word : {"Snuglab", "Ctrl", "Alt", "Shift", "Del", "Esc", "MiB", "GiB", "Enter", "Space",
                           "ping", "tcp", "udp", "SVG", "PNG", "PDF", "CSV", "HTML", "Markdown"})
    all.insert(QLatin1String(word));
  std::vector<QString> out(all.begin(), all.end());
  std::sort(out.begin(), out.end(), by_length);
  return out;
}

// Qt translates its own; cells of addresses are what is handed out: these stay English (DEVELOPERS.md, D55).
bool is_exempt(const QString& where) {
  return where.contains(QStringLiteral("#ScrollLeftButton")) ||
         where.contains(QStringLiteral("#ScrollRightButton")) ||
         where == QStringLiteral("snug::AddressPanel#addresses/QTableView item");
}

void expect_translated(QWidget& window, const Lab& lab) {
  const std::vector<QString> typed = words_of(lab);
  std::set<QString> told;
  for (const ScreenText& t : texts_of(window))
    if (!is_exempt(t.where) && is_english(t.text, typed) && told.insert(t.where + t.text).second)
      ADD_FAILURE() << t.where.toStdString() << ": " << t.text.toStdString();
}

TEST_F(Language, NoTextStaysEnglish) {
  speak_pseudo();
  MainWindow window;
  open(window, "mistakes", {1600, 1000});
  Hand hand(window);
  hand.click(hand.on(hand.lab().machines.front().id));
  settle(window);
  for (const char* panel :
       {"show_addresses", "show_reach", "show_outline", "show_properties", "show_parts"}) {
    window.action(panel)->trigger();
    settle(window);
  }
  expect_translated(window, hand.lab());
  HandOut paper(hand.session());
  expect_translated(paper, hand.lab());
}

// What stands on a drawing, and what is spoken of its elements.
void expect_translated(const Drawing& drawing, const std::vector<QString>& typed) {
  const auto look = [&](const char* what, std::string_view text) {
    EXPECT_FALSE(is_english(as_qt(text), typed)) << what << ": " << text;
  };
  int texts = 0;
  for (const AnyShape& s : drawing.shapes)
    if (const auto* t = std::get_if<TextShape>(&s)) {
      look("text", t->text);
      ++texts;
    }
  EXPECT_GT(texts, 3);
  look("description", drawing.description);
  for (const Group& g : drawing.groups) look("spoken description", g.description);
}

// Nor does what is longer lie over anything.
TEST_F(Language, ThePictureIsTranslated) {
  speak_pseudo();
  for (const char* sample : {"skerry-ferries", "mistakes", "branch-office", "old-pc"}) {
    SCOPED_TRACE(sample);
    MainWindow window;
    open(window, sample, {1600, 1000});
    const std::vector<QString> typed = words_of(window.session().lab());
    for (std::size_t e = 0; e <= window.session().lab().exercises.size(); ++e) {
      if (e > 0) window.session().set_exercise(window.session().lab().exercises[e - 1].id);
      expect_translated(window.canvas().drawing(), typed);
      expect_translated(window.ruler().drawing(), typed);
      for (const std::string& what : overlaps(window.canvas().drawing())) ADD_FAILURE() << what;
    }
  }
  MainWindow blank;
  open(blank, "skerry-ferries", {1600, 1000});
  blank.start_blank(false);
  settle(blank);
  expect_translated(blank.canvas().drawing(), words_of(blank.session().lab()));
}

// What stands beside the pointer stays in its box, from whichever side it is read.
TEST_F(Language, WordsAtThePointerStayInTheirBox) {
  for (const Qt::LayoutDirection way : {Qt::LeftToRight, Qt::RightToLeft}) {
    GhostWords ghost;
    ghost.take(QStringLiteral("a machine"), QStringLiteral("one line that is rather long\ntwo"), way);
    QImage image(500, 200, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    ghost.paint(painter, {60, 40}, Qt::black, Qt::black);
    painter.end();
    const QRect box(QPoint(60, 40), ghost.size().toSize());
    int inside = 0;
    for (int y = 0; y < image.height(); ++y)
      for (int x = 0; x < image.width(); ++x) {
        if (qGray(image.pixel(x, y)) > 128) continue;
        EXPECT_TRUE(box.contains(x, y)) << x << ", " << y;
        ++inside;
      }
    EXPECT_GT(inside, 100);
  }
}

// As many buttons as from the other side.
TEST_F(Language, MirroredTheCornerHasItsButtons) {
  const auto buttons = [&] {
    MainWindow window;
    open(window, "skerry-ferries", {1280, 800});
    int n = 0;
    for (const auto* b : window.menuBar()->cornerWidget()->findChildren<QToolButton*>())
      n += b->isVisible() ? 1 : 0;
    return n;
  };
  const int before = buttons();
  EXPECT_EQ(before, 5);
  QApplication::setLayoutDirection(Qt::RightToLeft);
  EXPECT_EQ(buttons(), before);
}

TEST_F(Language, ThePictureHasTheNumbersOfTheLocale) {
  QLocale::setDefault(QLocale(QLocale::German));
  MainWindow window;
  open(window, "skerry-ferries", {1600, 1000});
  Hand hand(window);
  const QString words = hand.texts(hand.machine("deck-a"));
  EXPECT_TRUE(words.contains(QStringLiteral("von 8,0 GiB")) || words.contains(QStringLiteral("of 8,0 GiB")))
      << words.toStdString();
  const auto file = make_paper(window.session().analysis(), {}, Paper::svg, Theme::light);
  ASSERT_TRUE(file);
  EXPECT_TRUE(file->contains("8.0 GiB")) << "files are the same everywhere";
  EXPECT_FALSE(file->contains("8,0 GiB"));
}

void expect_room(MainWindow& window) {
  static_cast<void>(QTest::qWaitFor([&] { return squeezed(window).empty(); }, 1'000));
  for (const QString& s : squeezed(window)) ADD_FAILURE() << s.toStdString();
}

TEST(ScreenTexts, FindWhatIsSqueezedAndWhatLiesOver) {
  QWidget window;
  auto* row = new QHBoxLayout(&window);
  auto* narrow = new QLabel(QStringLiteral("a sentence that needs its room"), &window);
  auto* other = new QLabel(QStringLiteral("b"), &window);
  row->addWidget(narrow);
  row->addWidget(other);
  window.show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
  EXPECT_TRUE(squeezed(window).empty());
  narrow->setFixedWidth(20);
  ASSERT_TRUE(QTest::qWaitFor([&] { return narrow->width() == 20; }));
  EXPECT_EQ(squeezed(window).size(), 1U);
  narrow->setMinimumWidth(0);
  narrow->setMaximumWidth(1000);
  narrow->resize(400, 20);
  EXPECT_EQ(squeezed(window).size(), 1U);
}

TEST(ScreenTexts, KnowWhatIsEnglish) {
  EXPECT_TRUE(is_english(QStringLiteral("Undo"), {}));
  EXPECT_FALSE(is_english(QStringLiteral("[Ûñdö ~~]"), {}));
  EXPECT_FALSE(
      is_english(QStringLiteral("beacon 4.0 GiB"), {QStringLiteral("beacon"), QStringLiteral("GiB")}));
}

struct Screen {
  QSize size;
  Qt::LayoutDirection direction;
};

class GrownTexts : public Language, public ::testing::WithParamInterface<Screen> {};

TEST_P(GrownTexts, HaveRoom) {
  speak_pseudo();
  QApplication::setLayoutDirection(GetParam().direction);
  for (const char* sample : {"skerry-ferries", "mistakes"}) {
    SCOPED_TRACE(sample);
    MainWindow window;
    open(window, sample, GetParam().size);
    Hand hand(window);
    hand.click(hand.on(hand.lab().machines.front().id));
    window.resize(GetParam().size);
    settle(window);
    EXPECT_EQ(window.size(), GetParam().size) << "grew beyond the screen";
    expect_room(window);
  }
  MainWindow window;
  window.resize(GetParam().size);
  window.show();
  settle(window);
  expect_room(window);
}

INSTANTIATE_TEST_SUITE_P(Language, GrownTexts,
                         ::testing::Values(Screen{{1280, 800}, Qt::LeftToRight},
                                           Screen{{1920, 1080}, Qt::LeftToRight},
                                           Screen{{1280, 800}, Qt::RightToLeft}));

TEST_F(Language, NumbersFollowTheLocaleOnScreensOnly) {
  const Message said = say(Template{"test-size", "{0}"}, Mib{3584});
  QLocale::setDefault(QLocale(QLocale::German));
  EXPECT_EQ(words(Mib{3584}), QStringLiteral("3,5 GiB"));
  EXPECT_EQ(size_words(3584), QStringLiteral("3,5 GiB"));
  EXPECT_EQ(words(Hundredths{350}), QStringLiteral("3,5"));
  EXPECT_EQ(english(Argument(Mib{3584})), "3.5 GiB");
  EXPECT_EQ(show_mib(3584), "3.5 GiB");
  QLocale::setDefault(QLocale(QLocale::Arabic, QLocale::Egypt));
  EXPECT_EQ(words(Count{12}), QLocale().toString(12));
}

TEST_F(Language, ASizeIsShownAndReadInTheLocale) {
  QLocale::setDefault(QLocale(QLocale::German));
  MainWindow window;
  open(window, "skerry-ferries", {1600, 1000});
  Hand hand(window);
  const MachineId beacon = hand.machine("beacon");
  hand.click(hand.on(beacon));
  settle(window);
  auto* line = window.findChild<QLineEdit*>(QStringLiteral("memory"));
  ASSERT_NE(line, nullptr);
  line->setFocus();
  line->selectAll();
  QTest::keyClicks(line, QStringLiteral("3,5g"));
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_EQ(hand.lab().machines[0].id, hand.lab().machines[0].id);
  const Machine* m = find<Machine>(hand.lab(), beacon);
  EXPECT_EQ(m->memory, 3584);
  EXPECT_EQ(line->text(), QStringLiteral("3,5 GiB"));
}

// The plural rules of Polish (CLDR 44: one; few 2-4, 22-24; many) come from Qt's lrelease.
TEST_F(Language, ATranslatedFileIsSpokenWithItsPlurals) {
  const Ran collected = run_program({SNUG_SOURCE_DIR "/resources/translations/collect", "pl"});
  ASSERT_EQ(collected.code, 0) << collected.err;
  std::string ts = collected.out;
  const std::string_view empty = "<numerusform></numerusform>";
  const auto at = ts.find(empty, ts.find("<comment>gesture-machines</comment>"));
  ASSERT_NE(at, std::string::npos);
  ts.replace(at, empty.size(),
             "<numerusform>{0} maszyna</numerusform><numerusform>{0} maszyny</numerusform>"
             "<numerusform>{0} maszyn</numerusform>");
  for (auto i = ts.find(" type=\"unfinished\""); i != std::string::npos; i = ts.find(" type=\"unfinished\""))
    ts.erase(i, std::string_view(" type=\"unfinished\"").size());
  TempFolder folder;
  const QString file = as_qt(folder.path()) + QStringLiteral("/snuglab_pl.ts");
  QFile out(file);
  ASSERT_TRUE(out.open(QIODevice::WriteOnly) && out.write(QByteArray::fromStdString(ts)) > 0);
  out.close();
  const Ran made = run_program({"/usr/lib/qt6/bin/lrelease", "-removeidentical", file.toStdString()});
  ASSERT_EQ(made.code, 0) << made.out << made.err;
  ASSERT_TRUE(speak(QLocale(QLocale::Polish), {as_qt(folder.path())}));
  QLocale::setDefault(QLocale::c());
  for (const auto& [n, said] :
       {std::pair{1, "1 maszyna"}, {2, "2 maszyny"}, {5, "5 maszyn"}, {22, "22 maszyny"}})
    EXPECT_EQ(words(text::gesture_machines, Count{n}).toStdString(), said);
  EXPECT_EQ(words(text::gesture_promises, Count{1}).toStdString(),
            english(say(text::gesture_promises, Count{1})));
}

// Labels, hints, nouns and choices of every field are among what translators get.
TEST_F(Language, TranslatorsGetEveryWordOfTheFields) {
  const Ran collected = run_program({SNUG_SOURCE_DIR "/resources/translations/collect", "xx"});
  ASSERT_EQ(collected.code, 0) << collected.err;
  const auto expect = [&](std::string_view word) {
    if (word.empty()) return;
    const std::string entry =
        "<source>" +
        as_qt(word).toHtmlEscaped().replace(QStringLiteral("&quot;"), QStringLiteral("\"")).toStdString() +
        "</source><comment>term</comment>";
    EXPECT_NE(collected.out.find(entry), std::string::npos) << word;
  };
  const std::function<void(const StructInfo&)> look = [&](const StructInfo& table) {
    expect(table.noun);
    for (const FieldInfo& f : table.fields) {
      expect(f.label);
      expect(f.help);
      for (const std::string_view word : f.choices) expect(word);
      if (f.row) look(*f.row);
    }
  };
  for (const Kind kind : kinds_in_document()) look(info_of(kind));
}

} // namespace
} // namespace snug::test
