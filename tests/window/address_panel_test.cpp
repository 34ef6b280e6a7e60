// The table of addresses with real events: what is wrong is said in the cell, and nothing is cut off.

#include "core/layout/draw_parts.h"
#include "tests/window/hand.h"
#include "ui/panels/address_panel.h"
#include "ui/panels/when_seen.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"
#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QTest>

namespace snug::test {
namespace {

class AddressTable : public ::testing::Test {
 protected:
  void SetUp() override {
    window.start_sample("skerry-ferries");
    window.action("show_addresses")->trigger();
    EXPECT_TRUE(QTest::qWaitFor([] { return WhenSeen::waiting() == 0; }));
  }
  QTableView& view() { return window.addresses().view(); }
  QString text(int row, int column) { return view().model()->index(row, column).data().toString(); }
  int column(const char* title) {
    for (int c = 0; c < view().model()->columnCount(); ++c)
      if (view().model()->headerData(c, Qt::Horizontal).toString() == QLatin1String(title)) return c;
    ADD_FAILURE() << title;
    return 0;
  }
  QModelIndex cell(const char* machine, const char* segment, const char* title) {
    for (int r = 0; r < view().model()->rowCount(); ++r)
      if (text(r, column("Machine")) == QLatin1String(machine) &&
          text(r, column("Segment")) == QLatin1String(segment))
        return view().model()->index(r, column(title));
    ADD_FAILURE() << machine << " on " << segment;
    return {};
  }
  void type(const QModelIndex& at, const char* address) {
    view().scrollTo(at);
    const QPoint middle = view().visualRect(at).center();
    QTest::mouseClick(view().viewport(), Qt::LeftButton, {}, middle);
    QTest::mouseDClick(view().viewport(), Qt::LeftButton, {}, middle);
    auto* line = view().viewport()->findChild<QLineEdit*>();
    ASSERT_NE(line, nullptr);
    line->selectAll();
    QTest::keyClicks(line, QLatin1String(address));
    QTest::keyClick(line, Qt::Key_Return);
    QTest::qWait(5);
  }
  // Pixels of a colour in a cell as it is drawn.
  int pixels(const QModelIndex& at, QColor wanted) {
    view().clearSelection();
    view().scrollTo(at);
    const QImage all = view().viewport()->grab(view().visualRect(at)).toImage();
    int n = 0;
    for (int y = 0; y < all.height(); ++y)
      for (int x = 0; x < all.width(); ++x) n += all.pixelColor(x, y) == wanted ? 1 : 0;
    return n;
  }
  MainWindow window;
  Hand hand{window};
};

TEST_F(AddressTable, AnAddressTypedTwiceIsMarkedInBothCells) {
  const QColor error = colour(palette(Theme::light), Ink::error);
  const QModelIndex at = cell("hold", "Steering", "Address"), other = cell("beacon", "Steering", "Address");
  ASSERT_TRUE(at.data(Qt::DecorationRole).isNull());
  ASSERT_EQ(pixels(at, error), 0);
  type(at, "172.22.10.10");
  ASSERT_EQ(at.data().toString(), QStringLiteral("172.22.10.10"));
  for (const QModelIndex& cell : {at, other}) {
    EXPECT_FALSE(cell.data(Qt::DecorationRole).isNull());
    EXPECT_TRUE(cell.data(Qt::ToolTipRole)
                    .toString()
                    .startsWith(QStringLiteral("172.22.10.10 belongs to both beacon and hold")))
        << cell.data(Qt::ToolTipRole).toString().toStdString();
    EXPECT_GT(pixels(cell, error), 60);
  }
  EXPECT_TRUE(cell("hold", "Cargo", "Address").data(Qt::DecorationRole).isNull()) << "its other card is fine";
  view().horizontalHeader()->resizeSection(at.column(), 40); // the mark stays
  EXPECT_GT(pixels(at, error), 60);
  hand.session().undo();
  EXPECT_TRUE(at.data(Qt::DecorationRole).isNull());
}

// What cannot be an address stays in the cell to be mended, with the reason; Esc leaves the cell as it was.
TEST_F(AddressTable, WhatIsRefusedIsMendedWhereItStands) {
  const auto address = [&] { return cell("hold", "Steering", "Address").data().toString(); };
  const QString before = address();
  type(cell("hold", "Steering", "Address"), "172.22.10.999");
  auto* line = view().viewport()->findChild<QLineEdit*>();
  ASSERT_TRUE(line && line->isVisible());
  EXPECT_EQ(line->text(), QStringLiteral("172.22.10.999"));
  EXPECT_TRUE(line->toolTip().contains(QStringLiteral("999"))) << line->toolTip().toStdString();
  EXPECT_EQ(address(), before);
  QTest::keyClick(line, Qt::Key_Backspace);
  EXPECT_TRUE(line->toolTip().isEmpty()) << "judged again at Enter";
  QTest::keyClick(line, Qt::Key_Return);
  QTest::qWait(5);
  EXPECT_EQ(address(), QStringLiteral("172.22.10.99"));
  hand.session().undo();
  type(cell("hold", "Steering", "Address"), "nonsense");
  line = view().viewport()->findChild<QLineEdit*>();
  ASSERT_TRUE(line && line->isVisible());
  QTest::keyClick(line, Qt::Key_Escape);
  QTest::qWait(5);
  EXPECT_EQ(address(), before);
  EXPECT_TRUE(window.notice().text().isEmpty()) << window.notice().text().toStdString();
}

TEST_F(AddressTable, NothingIsCutOff) {
  const QFontMetrics letters(view().font());
  for (const char* title : {"Address", "MAC", "Segment", "Host name"}) {
    const int c = column(title);
    for (int r = 0; r < view().model()->rowCount(); ++r)
      EXPECT_GE(view().columnWidth(c), letters.horizontalAdvance(text(r, c))) << text(r, c).toStdString();
  }
  EXPECT_TRUE(view().isColumnHidden(column("VLAN"))) << "nobody has one";
  type(cell("hold", "Steering", "Address"), "172.22.10.10");
  EXPECT_GE(view().columnWidth(column("Address")),
            letters.horizontalAdvance(QStringLiteral("172.22.10.100")) + 20)
      << "with the mark";
}

// Whom a machine asks about names, also behind a translator, or why nobody.
TEST_F(AddressTable, TheNameServerIsSaidForEveryAddress) {
  for (int r = 0; r < view().model()->rowCount(); ++r) {
    const bool of_a_card = !text(r, column("Host name")).isEmpty() && !text(r, column("Address")).isEmpty();
    EXPECT_TRUE(!of_a_card || !text(r, column("Name server")).isEmpty())
        << text(r, column("Machine")).toStdString();
  }
  EXPECT_EQ(cell("gangway", "Crew", "Name server").data().toString(), QStringLiteral("172.22.50.1"));
  EXPECT_EQ(cell("hold", "Steering", "Name server").data().toString(), QStringLiteral("172.22.10.10"));
  EXPECT_EQ(cell("hold", "Cargo", "Name server").data().toString(),
            QStringLiteral("172.22.10.10 by Steering"));
  EXPECT_EQ(cell("manifest", "Crew", "Name server").data().toString(), QStringLiteral("by DHCP"));
  EXPECT_EQ(cell("beacon", "Steering", "Name server").data().toString(), QStringLiteral("itself"));
}

// Lines of the clipboard go into the chosen row and those below, as one step; the keyboard numbers them on.
TEST_F(AddressTable, LinesArePastedAndNumberedOn) {
  const Lab before = hand.lab();
  view().sortByColumn(column("Machine"), Qt::AscendingOrder);
  const QModelIndex from = cell("gangway", "Passengers", "Address");
  std::vector<QString> was;
  for (int r = 0; r < 3; ++r) was.push_back(text(from.row() + r, column("Address")));
  QGuiApplication::clipboard()->setText(QStringLiteral("x\t172.22.40.77\ny\t172.22.50.78\n"));
  view().setFocus();
  view().selectRow(from.row());
  QTest::keyClick(&view(), Qt::Key_V, Qt::ControlModifier);
  EXPECT_EQ(text(from.row(), column("Address")), QStringLiteral("172.22.40.77"));
  EXPECT_EQ(text(from.row() + 1, column("Address")), QStringLiteral("172.22.50.78"));
  EXPECT_EQ(text(from.row() + 2, column("Address")), was[2]);
  EXPECT_EQ(hand.session().undo_words(), QStringLiteral("Set 2 addresses"));
  hand.session().undo();
  EXPECT_EQ(hand.lab(), before);
  view().clearSelection();
  for (const char* machine : {"deck-a", "deck-b"})
    view().selectionModel()->select(cell(machine, "Steering", "Address"),
                                    QItemSelectionModel::Select | QItemSelectionModel::Rows);
  QTest::keyClick(&view(), Qt::Key_D, Qt::ControlModifier);
  EXPECT_EQ(text(cell("deck-b", "Steering", "Address").row(), column("Address")),
            QStringLiteral("172.22.10.32"));
  QGuiApplication::clipboard()->setText(QStringLiteral("172.22.10.999"));
  view().selectRow(from.row());
  const Lab now = hand.lab();
  QTest::keyClick(&view(), Qt::Key_V, Qt::ControlModifier);
  EXPECT_EQ(hand.lab(), now);
  EXPECT_TRUE(window.notice().text().contains(QStringLiteral("999"))) << window.notice().text().toStdString();
}

// Beside the table stands what is free on the segment of the chosen row.
TEST_F(AddressTable, WhatIsFreeIsSaid) {
  const QModelIndex at = cell("beacon", "Steering", "Address");
  view().scrollTo(at);
  QTest::mouseClick(view().viewport(), Qt::LeftButton, {}, view().visualRect(at).center());
  const auto* free = window.addresses().findChild<QLabel*>(QStringLiteral("free_addresses"));
  ASSERT_NE(free, nullptr);
  EXPECT_TRUE(free->isVisible());
  EXPECT_TRUE(free->text().startsWith(QStringLiteral("Free on Steering: 172.22.10.")))
      << free->text().toStdString();
  EXPECT_TRUE(free->text().contains(QStringLiteral("172.22.10.32"))) << free->text().toStdString();
}

} // namespace
} // namespace snug::test
