#include "ui/window/folding_side.h"

#include <QAbstractButton>
#include <QBoxLayout>
#include <QPainter>
#include <QStackedWidget>
#include <QStyleOption>

namespace snug {

namespace {

constexpr int kStrip = 30, kLength = 26; // of the strip; of a tab beside its word
constexpr int kLeast = 120;              // of a panel

// Its word stands upright: read from below on the left, from above on the right.
class UprightTab : public QAbstractButton {
 public:
  UprightTab(const QString& title, FoldingSide::Edge edge, QWidget* parent)
      : QAbstractButton(parent), edge_(edge) {
    setText(title);
    setAccessibleName(title);
    setCheckable(true);
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("upright_tab"));
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  }
  QSize sizeHint() const override {
    QFont font = this->font();
    font.setWeight(QFont::DemiBold);
    return {kStrip, QFontMetrics(font).horizontalAdvance(text()) + kLength};
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPalette& p = palette();
    const bool left = edge_ == FoldingSide::Edge::left;
    if (isChecked() || underMouse()) painter.fillRect(rect(), p.color(QPalette::AlternateBase));
    if (isChecked())
      painter.fillRect(left ? QRect(0, 0, 3, height()) : QRect(width() - 3, 0, 3, height()),
                       p.color(QPalette::Highlight));
    if (hasFocus()) {
      painter.setPen(QPen(p.color(QPalette::Highlight), 2));
      painter.drawRoundedRect(QRectF(rect()).adjusted(2, 2, -2, -2), 4, 4);
    }
    QFont font = this->font();
    font.setWeight(isChecked() ? QFont::DemiBold : QFont::Normal);
    painter.setFont(font);
    painter.setPen(p.color(isChecked() ? QPalette::Text : QPalette::PlaceholderText));
    painter.translate(rect().center() + QPoint(1, 1));
    painter.rotate(left ? -90 : 90);
    painter.drawText(QRect(-height() / 2, -width() / 2, height(), width()), Qt::AlignCenter, text());
  }

 private:
  FoldingSide::Edge edge_;
};

} // namespace

FoldingSide::FoldingSide(Edge edge, QWidget* parent) : QFrame(parent) {
  setObjectName(QStringLiteral("side"));
  setProperty("edge", edge == Edge::left ? QStringLiteral("left") : QStringLiteral("right"));
  auto* across = new QHBoxLayout(this);
  across->setContentsMargins(0, 0, 0, 0);
  across->setSpacing(0);
  auto* strip = new QWidget(this);
  strip->setFixedWidth(kStrip);
  strip_ = new QVBoxLayout(strip);
  strip_->setContentsMargins(0, 8, 0, 0);
  strip_->setSpacing(4);
  strip_->addStretch();
  panels_ = new QStackedWidget(this);
  panels_->hide();
  across->addWidget(edge == Edge::left ? strip : static_cast<QWidget*>(panels_), edge == Edge::left ? 0 : 1);
  across->addWidget(edge == Edge::left ? static_cast<QWidget*>(panels_) : strip, edge == Edge::left ? 1 : 0);
  setMaximumWidth(kStrip);
}

void FoldingSide::add(QWidget* panel, const QString& title, const QString& help, int width) {
  const bool left = property("edge") == QLatin1String("left");
  auto* tab = new UprightTab(title, left ? Edge::left : Edge::right, strip_->parentWidget());
  tab->setToolTip(help);
  const int place = static_cast<int>(tabs_.size());
  strip_->insertWidget(place, tab);
  panels_->addWidget(panel);
  tabs_.push_back(tab);
  widths_.push_back(width);
  // Assistive technology turns a button without clicking it.
  connect(tab, &QAbstractButton::toggled, this, [this, place](bool on) {
    if (on == (open() == place)) return;
    if (on)
      open(place);
    else
      fold();
    emit chosen_by_person(on);
  });
}

int FoldingSide::open() const { return panels_->isHidden() ? -1 : panels_->currentIndex(); }

void FoldingSide::open(int panel) {
  if (open() != panel) {
    panels_->setCurrentIndex(panel);
    panels_->show();
    setMaximumWidth(QWIDGETSIZE_MAX);
    emit turned();
  }
  show_tabs();
}

void FoldingSide::unfold() { open(panels_->currentIndex()); }

void FoldingSide::fold() {
  if (open() >= 0) {
    panels_->hide();
    setMaximumWidth(kStrip);
    emit turned();
  }
  show_tabs();
}

void FoldingSide::show_tabs() {
  for (std::size_t i = 0; i < tabs_.size(); ++i) tabs_[i]->setChecked(static_cast<int>(i) == open());
}

int FoldingSide::wanted_width() const { return open() < 0 ? kStrip : width_of(open()); }

void FoldingSide::pulled(int width) {
  if (open() >= 0) set_width(open(), width);
}

int FoldingSide::width_of(int panel) const { return kStrip + widths_[static_cast<std::size_t>(panel)]; }

void FoldingSide::set_width(int panel, int width) {
  widths_[static_cast<std::size_t>(panel)] = std::max(kLeast, width - kStrip);
}

} // namespace snug
