// Labs kept to start from, by hand: on the start page, opened as copies, kept under a name, damaged ones.

#include "ui/window/own_starts_view.h"

#include "core/document/write.h"
#include "tests/support/sample.h"
#include "tests/support/temp_folder.h"
#include "tests/window/actions.h"
#include "tests/window/hand.h"
#include "ui/session/words.h"
#include "ui/window/find_box.h"
#include "ui/window/lab_card.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include <filesystem>

namespace snug::test {
namespace {

class OwnStartsByHand : public ::testing::Test {
 protected:
  OwnStartsByHand() : before_(qgetenv("XDG_CONFIG_HOME")) {
    qputenv("XDG_CONFIG_HOME", QByteArray::fromStdString(home.path()));
    put_bytes(home.path("user-dirs.dirs"), "XDG_TEMPLATES_DIR=\"" + home.path("Models") + "\"\n");
  }
  void TearDown() override { qputenv("XDG_CONFIG_HOME", before_); }

  std::string file(const std::string& name) const { return home.path("Models/Snuglab/" + name); }
  void put(const std::string& name, const std::string& bytes) const {
    std::filesystem::create_directories(home.path("Models/Snuglab"));
    put_bytes(file(name), bytes);
  }
  std::vector<std::string> files() const {
    std::vector<std::string> out;
    if (!std::filesystem::exists(home.path("Models/Snuglab"))) return out;
    for (const auto& f : std::filesystem::directory_iterator(home.path("Models/Snuglab")))
      out.push_back(f.path().filename().string());
    std::sort(out.begin(), out.end());
    return out;
  }
  static void show(MainWindow& window) {
    window.resize(1280, 800);
    window.show();
    QApplication::setActiveWindow(&window);
  }
  static std::vector<LabCard*> cards(const MainWindow& window) {
    std::vector<LabCard*> out;
    for (auto* c : window.findChild<OwnStartsView*>()->findChildren<LabCard*>())
      if (c->isVisible()) out.push_back(c);
    return out;
  }
  static QLineEdit* line(MainWindow& window) {
    for (auto* l : window.notice().findChildren<QLineEdit*>(QStringLiteral("notice_line")))
      if (l->isVisible()) return l;
    return nullptr;
  }
  static QPushButton* button(MainWindow& window, const char* words_of) {
    for (auto* b : window.notice().findChildren<QPushButton*>())
      if (b->isVisible() && b->text() == QString::fromUtf8(words_of)) return b;
    return nullptr;
  }
  static void type_name(MainWindow& window, const QString& name) {
    window.action("keep_start")->trigger();
    ASSERT_NE(line(window), nullptr);
    line(window)->selectAll();
    QTest::keyClicks(line(window), name);
    QTest::keyClick(line(window), Qt::Key_Return);
  }
  static bool says(MainWindow& window, const char* part) {
    return window.notice().text().contains(QLatin1String(part));
  }
  const TempFolder home;

 private:
  QByteArray before_;
};

TEST_F(OwnStartsByHand, NoneLeavesNoTrace) {
  MainWindow window;
  show(window);
  EXPECT_FALSE(window.findChild<OwnStartsView*>()->isVisible());
  EXPECT_EQ(own_starts_folder().toStdString(), home.path("Models/Snuglab"));
  EXPECT_FALSE(std::filesystem::exists(home.path("Models"))) << "looking makes no folder";
}

TEST_F(OwnStartsByHand, TheyStandBesideTheSamplesAsTheyAreNow) {
  put("port.snuglab", write_lab(titled("Port, second term")));
  MainWindow window;
  show(window);
  ASSERT_EQ(cards(window).size(), 1U);
  LabCard* card = cards(window).front();
  EXPECT_EQ(card->accessibleName(), QStringLiteral("Port, second term"));
  EXPECT_GT(card->drawing().shapes.size(), 50U);
  const QImage first = card->grab().toImage();
  put("port.snuglab", write_lab(titled("Port, second term", "mistakes")));
  window.start_blank(false);
  window.action("start_page")->trigger();
  ASSERT_EQ(cards(window).size(), 1U);
  EXPECT_NE(cards(window).front()->grab().toImage(), first) << "the picture follows the file";
}

TEST_F(OwnStartsByHand, APressOpensACopyAndTheFileStaysAsItIs) {
  put("port.snuglab", write_lab(titled("Port")));
  const std::string bytes = bytes_of(file("port.snuglab"));
  MainWindow window;
  show(window);
  QTest::mouseClick(cards(window).front(), Qt::LeftButton);
  Session& session = window.session();
  EXPECT_EQ(session.lab().facts.title, "Port");
  EXPECT_EQ(session.lab().machines.size(), sample("skerry-ferries").machines.size());
  EXPECT_NE(session.lab().facts.uid, sample("skerry-ferries").facts.uid) << "a lab of its own";
  EXPECT_TRUE(session.path().isEmpty());
  EXPECT_FALSE(session.is_dirty());
  EXPECT_TRUE(session.perform(set_memory(session.lab(), session.lab().machines.front().id, 4096)));
  ASSERT_TRUE(session.save_as(as_qt(home.path("mine.snuglab"))));
  EXPECT_EQ(bytes_of(file("port.snuglab")), bytes);
  EXPECT_EQ(files(), std::vector<std::string>{"port.snuglab"}) << "not even a lock";
}

TEST_F(OwnStartsByHand, ADamagedOneIsSaidAndHidesNoOther) {
  put("a-broken.snuglab", "{");
  put("port.snuglab", write_lab(titled("Port")));
  MainWindow window;
  show(window);
  ASSERT_EQ(cards(window).size(), 1U);
  const auto said = window.findChildren<QLabel*>(QStringLiteral("own_start_problem"));
  ASSERT_EQ(said.size(), 1);
  EXPECT_TRUE(said.front()->isVisible());
  EXPECT_TRUE(said.front()->text().contains(QStringLiteral("a-broken.snuglab")))
      << said.front()->text().toStdString();
  EXPECT_TRUE(said.front()->text().contains(QStringLiteral("stays as it is")));
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
  // One that is damaged while it stands there is refused where it is pressed.
  put("port.snuglab", "{");
  QTest::mouseClick(cards(window).front(), Qt::LeftButton);
  EXPECT_TRUE(says(window, "port.snuglab")) << window.notice().text().toStdString();
  EXPECT_TRUE(window.session().lab().machines.empty());
  EXPECT_EQ(bytes_of(file("a-broken.snuglab")), "{");
}

TEST_F(OwnStartsByHand, KeptUnderANameTypedInPlace) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  show(window);
  const std::string bytes = write_lab(window.session().lab());
  window.action("keep_start")->trigger();
  ASSERT_NE(line(window), nullptr);
  EXPECT_TRUE(line(window)->hasFocus());
  EXPECT_EQ(line(window)->text(), as_qt(window.session().lab().facts.title)) << "its title is proposed";
  QTest::keyClick(line(window), Qt::Key_Escape);
  EXPECT_EQ(line(window), nullptr);
  EXPECT_TRUE(window.canvas().hasFocus());
  EXPECT_TRUE(files().empty());
  type_name(window, QStringLiteral("  "));
  ASSERT_NE(line(window), nullptr) << "a name that says nothing stays to be mended";
  EXPECT_TRUE(says(window, "needs a name")) << window.notice().text().toStdString();
  QTest::keyClicks(line(window), QStringLiteral("Second term"));
  QTest::mouseClick(button(window, "Keep"), Qt::LeftButton);
  EXPECT_EQ(line(window), nullptr);
  EXPECT_EQ(files(), std::vector<std::string>{"second-term.snuglab"});
  EXPECT_TRUE(says(window, "second-term.snuglab")) << window.notice().text().toStdString();
  EXPECT_EQ(write_lab(window.session().lab()), bytes) << "the lab is not touched";
  EXPECT_FALSE(window.session().is_dirty());
  EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
  window.action("start_page")->trigger();
  ASSERT_EQ(cards(window).size(), 1U);
  EXPECT_EQ(cards(window).front()->accessibleName(), QStringLiteral("Second term"));
}

TEST_F(OwnStartsByHand, ANameThatIsTakenIsAQuestion) {
  put("port.snuglab", write_lab(titled("Port", "mistakes")));
  const std::string before = bytes_of(file("port.snuglab"));
  MainWindow window;
  window.start_sample("skerry-ferries");
  show(window);
  type_name(window, QStringLiteral("port"));
  EXPECT_EQ(line(window), nullptr);
  ASSERT_NE(button(window, "Replace it"), nullptr);
  EXPECT_EQ(bytes_of(file("port.snuglab")), before) << "nothing before the answer";
  QTest::mouseClick(button(window, "Close"), Qt::LeftButton);
  EXPECT_EQ(bytes_of(file("port.snuglab")), before);
  type_name(window, QStringLiteral("port"));
  QTest::mouseClick(button(window, "Another name…"), Qt::LeftButton);
  ASSERT_NE(line(window), nullptr);
  EXPECT_EQ(line(window)->text(), QStringLiteral("port"));
  QTest::keyClicks(line(window), QStringLiteral("Port two"));
  QTest::keyClick(line(window), Qt::Key_Return);
  EXPECT_EQ(files(), (std::vector<std::string>{"port-two.snuglab", "port.snuglab"}));
  EXPECT_EQ(bytes_of(file("port.snuglab")), before);
  type_name(window, QStringLiteral("port"));
  QTest::mouseClick(button(window, "Replace it"), Qt::LeftButton);
  Lab expected = window.session().lab();
  expected.facts.title = "port";
  EXPECT_EQ(bytes_of(file("port.snuglab")), write_lab(expected));
  EXPECT_EQ(files().size(), 2U);
}

TEST_F(OwnStartsByHand, AQuestionAboutALabGoesWithIt) {
  MainWindow window;
  window.start_sample("skerry-ferries");
  show(window);
  window.action("keep_start")->trigger();
  ASSERT_NE(line(window), nullptr);
  window.start_blank(false);
  EXPECT_EQ(line(window), nullptr);
}

TEST_F(OwnStartsByHand, FoundByItsWords) {
  MainWindow window;
  show(window);
  EXPECT_FALSE(window.action("keep_start")->isEnabled()) << "there is no lab yet";
  window.start_sample("skerry-ferries");
  window.action("find_anything")->trigger();
  QTest::keyClicks(&window.find_box(), QStringLiteral("keep starting"));
  QTest::keyClick(&window.find_box(), Qt::Key_Return);
  EXPECT_NE(line(window), nullptr);
}

TEST_F(OwnStartsByHand, SevenAndLongTitlesFitTheirCards) {
  const std::string words_of(
      "The whole data centre of the harbour authority, its ferries and the booking of both, third revision");
  const std::string no_blanks(150, 'W');
  for (int i = 0; i < 5; ++i)
    put("n" + std::to_string(i) + ".snuglab", write_lab(titled("Number " + std::to_string(i))));
  put("long.snuglab", write_lab(titled(words_of)));
  put("wide.snuglab", write_lab(titled(no_blanks)));
  MainWindow window;
  show(window);
  const std::vector<LabCard*> all = cards(window);
  ASSERT_EQ(all.size(), 7U);
  for (const LabCard* c : all) {
    EXPECT_EQ(c->width(), all.front()->width());
    const QStringList lines = c->title_lines();
    const bool is_long = c->accessibleName().size() > 60;
    EXPECT_EQ(lines.size(), is_long ? 2 : 1) << lines.join(u'|').toStdString();
    EXPECT_EQ(lines.last().endsWith(QChar(0x2026)), is_long);
    EXPECT_TRUE(c->toolTip().startsWith(c->accessibleName())) << "the whole title is told beside the pointer";
  }
  // In the order in which they are seen, before the samples.
  auto* open = window.findChild<QPushButton*>(QStringLiteral("start_open"));
  window.action("start_page")->trigger();
  window.start_blank(false);
  window.action("start_page")->trigger();
  QStringList reached;
  open->setFocus();
  for (int i = 0; i < 8; ++i) {
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    reached << QApplication::focusWidget()->objectName();
  }
  EXPECT_EQ(reached.mid(0, 7).filter(QStringLiteral("own_start_")).size(), 7)
      << reached.join(u'|').toStdString();
  EXPECT_TRUE(reached.last().startsWith(QStringLiteral("sample_"))) << reached.join(u'|').toStdString();
}

} // namespace
} // namespace snug::test
