#include "ui/canvas/glide.h"

#include "core/layout/between.h"

#include <QStyle>
#include <QWidget>

namespace snug {

namespace {

constexpr int kMilliseconds = 260;

} // namespace

Glide::Glide(QWidget& view) : QObject(&view), view_(view) {
  run_.setStartValue(0);
  run_.setEndValue(kArrived);
  run_.setDuration(kMilliseconds);
  run_.setEasingCurve(QEasingCurve::InOutCubic);
  connect(&run_, &QVariantAnimation::valueChanged, this,
          [this](const QVariant& value) { step(value.toInt()); });
  connect(&run_, &QVariantAnimation::finished, this, [this] { view_.update(); });
}

void Glide::start(Drawing from, Drawing to) {
  run_.stop();
  if (view_.style()->styleHint(QStyle::SH_Widget_Animation_Duration, nullptr, &view_) == 0) return;
  from_ = std::move(from);
  to_ = std::move(to);
  now_ = from_;
  run_.start();
}

void Glide::stop() {
  if (run_.state() != QAbstractAnimation::Running) return;
  run_.stop();
  view_.update();
}

void Glide::step(int permille) {
  now_ = between(from_, to_, permille);
  view_.update();
}

} // namespace snug
