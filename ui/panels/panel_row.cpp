#include "ui/panels/panel_row.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QMouseEvent>
#include <QScrollArea>
#include <QStyle>
#include <QVBoxLayout>

#include <array>

namespace snug {

PanelRow::PanelRow(QWidget* parent, const QString& name, std::function<void()> go)
    : QFrame(parent), go_(std::move(go)) {
  setObjectName(name);
  setFocusPolicy(Qt::TabFocus);
  setCursor(Qt::PointingHandCursor);
}

void PanelRow::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  setFocus(Qt::MouseFocusReason);
  go_();
}

void PanelRow::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_Space)
    return go_();
  QFrame::keyPressEvent(event);
}

void wear_again(QWidget& w) {
  w.style()->unpolish(&w);
  w.style()->polish(&w);
}

void set_bad(QLineEdit& line, bool bad, const QString& tip) {
  line.setProperty("bad", bad);
  line.setToolTip(tip);
  wear_again(line);
}

namespace {

// Layouts ask several times for the height at the same few widths (with and without scroll bar), and each
// answer of a label shapes its text anew.
class Wrapped : public QLabel {
 public:
  using QLabel::QLabel;
  int heightForWidth(int width) const override {
    if (text() != text_ || font() != font_) {
      known_.fill({-1, 0});
      text_ = text();
      font_ = font();
    }
    for (const auto& [known, height] : known_)
      if (known == width) return height;
    return (known_[next_++ % known_.size()] = {width, QLabel::heightForWidth(width)}).second;
  }

 private:
  mutable std::array<std::pair<int, int>, 3> known_{{{-1, 0}, {-1, 0}, {-1, 0}}}; // width, height
  mutable std::size_t next_ = 0;
  mutable QString text_;
  mutable QFont font_;
};

} // namespace

QLabel* wrapped_text(const QString& text, const char* tone, QWidget* parent) {
  auto* label = new Wrapped(text, parent);
  label->setTextFormat(Qt::PlainText);
  label->setWordWrap(true);
  label->setProperty("tone", QLatin1String(tone));
  return label;
}

QLabel* heading(const QString& text, QWidget* parent) {
  return wrapped_text(text.left(1).toUpper() + text.mid(1), "heading", parent);
}

QVBoxLayout& renew_rows(QWidget& view, QWidget*& body) {
  auto* box = static_cast<QVBoxLayout*>(view.layout());
  if (!box) {
    box = new QVBoxLayout(&view);
    box->setContentsMargins(0, 0, 6, 0);
    box->addStretch();
  }
  if (body) {
    body->hide();
    body->deleteLater();
  }
  body = new QWidget(&view);
  auto* column = new QVBoxLayout(body);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  box->insertWidget(0, body);
  return *column;
}

QScrollArea* scrolled(QWidget* inside, QWidget* parent, Qt::FocusPolicy focus) {
  auto* scroll = new QScrollArea(parent);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(focus);
  scroll->setWidget(inside);
  return scroll;
}

} // namespace snug
