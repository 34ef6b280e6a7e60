// Machines dragged from one window into another.

#include "core/gesture/clip.h"
#include "tests/window/ferry_window.h"
#include "ui/session/words.h"

#include <QApplication>
#include <QDragEnterEvent>
#include <QMimeData>
#include <QStackedWidget>
#include <QTest>

#include <memory>

namespace snug::test {
namespace {

// What comes over a window as drag and drop of another program, with the machines of a lab.
class Visitor {
 public:
  Visitor(QWidget& over, const std::string& bytes) : over_(over), formats_(machine_formats(bytes)) {}
  bool enter(QPoint at) {
    QDragEnterEvent event(at, Qt::CopyAction | Qt::MoveAction, formats_.get(), Qt::LeftButton, {});
    QCoreApplication::sendEvent(&over_, &event);
    if (event.isAccepted()) action = event.dropAction();
    return event.isAccepted();
  }
  void leave() {
    QDragLeaveEvent event;
    QCoreApplication::sendEvent(&over_, &event);
  }
  void drop(QPoint at) {
    QDropEvent event(at, Qt::CopyAction | Qt::MoveAction, formats_.get(), Qt::LeftButton, {});
    QCoreApplication::sendEvent(&over_, &event);
    action = event.dropAction();
  }
  Qt::DropAction action = Qt::IgnoreAction;

 private:
  QWidget& over_;
  std::unique_ptr<QMimeData> formats_;
};

class Between : public FerryWindow {
 protected:
  std::string copied(const char* name) {
    const std::vector<AnyId> ids{hand.machine(name)};
    return *copy_machines(hand.lab(), ids);
  }
  QPoint inside(const char* room) { // below the last guest
    const QRectF box = window.canvas().on_view(box_of(window.canvas().drawing(), hand.machine(room)));
    return (box.bottomRight() - QPointF(6, 6)).toPoint();
  }
};

TEST_F(Between, ConsequencesAreSaidAndTheCopyHasNamesOfItsOwn) {
  Visitor visitor(*window.canvas().viewport(), copied("tickets-1"));
  const QPoint at = inside("deck-b"); // as it is before anything is shown
  ASSERT_TRUE(visitor.enter(at));
  EXPECT_EQ(visitor.action, Qt::CopyAction);
  EXPECT_TRUE(window.canvas().is_busy());
  EXPECT_TRUE(window.canvas().gesture_words().contains(QStringLiteral("deck-b")))
      << window.canvas().gesture_words().toStdString();
  EXPECT_EQ(window.session().shown().lab().machines.size(), hand.lab().machines.size() + 1);
  EXPECT_TRUE(write_lab(hand.lab()) == first_bytes) << "nothing is done yet";
  visitor.drop(at);
  ASSERT_EQ(window.session().selection().size(), 1U);
  EXPECT_EQ(visitor.action, Qt::CopyAction);
  const MachineId made{window.session().selection().at(0).number};
  const Machine& copy = *find<Machine>(hand.lab(), made);
  EXPECT_EQ(copy.carrier, hand.machine("deck-b"));
  EXPECT_NE(copy.name, "tickets-1");
  EXPECT_EQ(machine("tickets-1").carrier, hand.machine("deck-a"));
  back_to_the_first_bytes();
}

TEST_F(Between, WhatLeavesAgainLeavesNothing) {
  Visitor visitor(*window.canvas().viewport(), copied("tickets-1"));
  ASSERT_TRUE(visitor.enter(inside("deck-b")));
  visitor.leave();
  EXPECT_FALSE(window.canvas().is_busy());
  EXPECT_TRUE(write_lab(window.session().shown().lab()) == first_bytes);
  ASSERT_TRUE(visitor.enter(QPoint(2, 2)));
  visitor.drop(QPoint(2, 2));
  EXPECT_TRUE(write_lab(hand.lab()) == first_bytes) << "outside the PC's frame";
}

TEST_F(Between, OntoARailItGetsACardThere) {
  Visitor visitor(*window.canvas().viewport(), copied("beacon"));
  const SegmentId rail = hand.segment("Passengers");
  ASSERT_TRUE(visitor.enter(hand.rail(rail)));
  visitor.drop(hand.rail(rail));
  const MachineId made{window.session().selection().at(0).number};
  EXPECT_TRUE(std::any_of(hand.lab().cards.begin(), hand.lab().cards.end(),
                          [&](const Card& c) { return c.machine == made && c.segment == rail; }));
  back_to_the_first_bytes();
}

TEST_F(Between, ForeignAndDamagedOnesAreRefused) {
  const QByteArray type = QByteArray(kClipType.data(), static_cast<qsizetype>(kClipType.size()));
  Visitor visitor(*window.canvas().viewport(),
                  "{\"format\": \"snuglab-machines\", \"lab\":\n{\"nodes\": 3}}");
  EXPECT_FALSE(visitor.enter(inside("deck-b")));
  EXPECT_FALSE(window.canvas().is_busy());
  QMimeData words;
  words.setText(QStringLiteral("a note"));
  QDragEnterEvent event(QPoint(300, 300), Qt::CopyAction, &words, Qt::LeftButton, {});
  QCoreApplication::sendEvent(window.canvas().viewport(), &event);
  EXPECT_FALSE(event.isAccepted());
}

TEST_F(Between, WhereNoLabIsOpenABlankOneTakesIt) {
  MainWindow empty;
  auto* pages = empty.findChild<QStackedWidget*>(QStringLiteral("pages"));
  ASSERT_TRUE(pages && pages->currentIndex() == 0);
  Visitor visitor(empty, copied("beacon"));
  ASSERT_TRUE(visitor.enter(QPoint(400, 300)));
  visitor.drop(QPoint(400, 300));
  ASSERT_EQ(empty.session().lab().machines.size(), 1U);
  EXPECT_EQ(empty.session().lab().machines[0].name, "beacon");
  EXPECT_EQ(pages->currentIndex(), 1);
}

} // namespace
} // namespace snug::test
