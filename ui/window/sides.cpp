#include "ui/window/sides.h"

#include "core/text/outline_text.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"

#include <QEvent>
#include <QSplitter>

namespace snug {

namespace {

constexpr int kParts = 178, kOutline = 330, kProperties = 268;

bool is_open(Folded wish, bool roomy) { return wish == Folded::open || (wish == Folded::by_width && roomy); }

} // namespace

Sides::Sides(Session& session, QWidget* parts, QWidget* outline, QWidget* properties)
    : session_(session), across_(new QSplitter(Qt::Horizontal)) {
  setParent(across_);
  left_ = new FoldingSide(FoldingSide::Edge::left, across_);
  right_ = new FoldingSide(FoldingSide::Edge::right, across_);
  left_->add(parts, words(text::tab_parts), words(text::side_parts_help), kParts);
  left_->add(outline, words(text::tab_outline), words(text::side_outline_help), kOutline);
  right_->add(properties, words(text::side_properties), words(text::side_properties_help), kProperties);
  across_->addWidget(left_);
  across_->addWidget(right_);
  across_->setChildrenCollapsible(false);
  across_->setHandleWidth(1);
  across_->installEventFilter(this);
  for (FoldingSide* side : {left_, right_}) {
    connect(side, &FoldingSide::turned, this, [this, side] { turned(*side); });
    connect(side, &FoldingSide::chosen_by_person, this, [this, side](bool on) {
      (side == left_ ? left_by_person_ : right_by_person_) = on ? Folded::open : Folded::folded;
    });
  }
  connect(across_, &QSplitter::splitterMoved, this, [this] {
    left_->pulled(left_->width());
    right_->pulled(right_->width());
  });
  connect(&session_, &Session::started, this, &Sides::follow_window);
}

void Sides::set_centre(QWidget* centre) {
  across_->insertWidget(1, centre);
  across_->setStretchFactor(1, 1);
}

void Sides::show(FoldingSide& side, int panel) {
  side.open(panel);
  (&side == left_ ? left_by_person_ : right_by_person_) = Folded::open;
}

// Where both leave too little for the picture, the one that was opened last stays; the other is there again
// once there is room.
void Sides::turned(FoldingSide& side) {
  if (following_) return;
  if (side.open() >= 0) {
    latest_ = &side;
    FoldingSide& other = &side == left_ ? *right_ : *left_;
    if (other.open() >= 0 && !has_room_for_both()) other.fold();
  }
  share_width();
}

bool Sides::has_room_for_both() const {
  const int picture = across_->widget(1)->minimumSizeHint().width();
  return left_->wanted_width() + right_->wanted_width() + picture + 2 * across_->handleWidth() <=
         across_->width();
}

// Who begins with nothing needs the parts.
void Sides::follow_window() {
  following_ = true;
  const bool nothing_yet = session_.lab().machines.empty();
  if (is_open(left_by_person_, nothing_yet || across_->width() >= kLeftOpens))
    left_->unfold();
  else
    left_->fold();
  if (is_open(right_by_person_, across_->width() >= kRightOpens))
    right_->unfold();
  else
    right_->fold();
  if (left_->open() >= 0 && right_->open() >= 0 && !has_room_for_both())
    (latest_ == left_ ? right_ : left_)->fold();
  following_ = false;
  share_width();
}

void Sides::share_width() {
  const int left = left_->wanted_width(), right = right_->wanted_width();
  across_->setSizes({left, std::max(1, across_->width() - left - right - 2 * across_->handleWidth()), right});
}

bool Sides::eventFilter(QObject* of, QEvent* event) {
  if (event->type() == QEvent::Resize) {
    follow_window();
    // Once the splitter knows its new size.
    QMetaObject::invokeMethod(this, &Sides::share_width, Qt::QueuedConnection);
  }
  return QObject::eventFilter(of, event);
}

void Sides::take(const Remembered& r) {
  left_by_person_ = r.left;
  right_by_person_ = r.right;
  if (r.across.size() == across_->count()) {
    left_->set_width(0, r.across.front());
    right_->set_width(0, r.across.back());
  }
  follow_window();
  share_width();
}

void Sides::put(Remembered& r) const {
  r.left = left_by_person_;
  r.right = right_by_person_;
  r.across = {left_->width_of(0), across_->sizes().value(1), right_->width_of(0)};
}

} // namespace snug
