#include "ui/panels/memory_slider.h"

#include "core/base/size.h"
#include "core/gesture/move.h"
#include "core/text/window_text.h"
#include "ui/diagram/paint.h"
#include "ui/session/words.h"

#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace snug {

namespace {

constexpr int kEnd = 9, kTrack = 11, kHeight = 42; // pixels

} // namespace

MemorySlider::MemorySlider(Session& session, QWidget* parent)
    : QSlider(Qt::Horizontal, parent), session_(session) {
  setObjectName(QStringLiteral("memory_slider"));
  setSingleStep(1);
  setPageStep(4);
  connect(this, &QSlider::valueChanged, this, &MemorySlider::take);
}

QSize MemorySlider::sizeHint() const { return {160, kHeight}; }

void MemorySlider::show_machine(MachineId id) {
  machine_ = id;
  const Machine* m = snug::find<Machine>(session_.lab(), id);
  if (!m) return;
  const Role* role = snug::find<Role>(session_.lab(), m->role);
  const bool lean = session_.lab().facts.sizes == SizeSet::lean;
  least_ = !role ? 0 : lean ? role->lean_least : role->current_least;
  usual_ = !role ? 0 : lean ? role->lean_usual : role->current_usual;
  filling_ = true;
  const std::int64_t most =
      std::max({2 * usual_, std::int64_t{4096}, isSliderDown() ? 0 : m->memory * 5 / 4});
  setRange(1, static_cast<int>(std::max<std::int64_t>(most / kMemoryStep, isSliderDown() ? maximum() : 1)));
  setValue(static_cast<int>(m->memory / kMemoryStep));
  setAccessibleName(
      words(text::memory_slider, size_words(least_).toStdString(), size_words(usual_).toStdString()));
  setToolTip(accessibleName());
  filling_ = false;
  update();
}

void MemorySlider::take(int steps) {
  if (filling_ || !machine_) return;
  if (!isSliderDown()) session_.seal();
  session_.perform(set_memory(session_.lab(), machine_, steps * kMemoryStep), true);
}

int MemorySlider::x_of(std::int64_t mib) const {
  const qreal most = static_cast<qreal>(maximum()) * kMemoryStep;
  return kEnd + qRound((width() - 2 * kEnd) * std::clamp(static_cast<qreal>(mib) / most, 0.0, 1.0));
}

void MemorySlider::go_to(qreal x) {
  const qreal part = (x - kEnd) / std::max(1, width() - 2 * kEnd);
  setValue(std::clamp(qRound(part * maximum()), minimum(), maximum()));
}

void MemorySlider::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  session_.seal();
  setSliderDown(true);
  const qreal off = event->position().x() - x_of(value() * kMemoryStep);
  grip_ = std::abs(off) <= kEnd ? off : 0; // the handle does not jump under the hand
  go_to(event->position().x() - grip_);
}

void MemorySlider::mouseMoveEvent(QMouseEvent* event) {
  if (isSliderDown()) go_to(event->position().x() - grip_);
}

void MemorySlider::mouseReleaseEvent(QMouseEvent*) {
  setSliderDown(false);
  session_.seal();
}

void MemorySlider::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QPalette& p = palette();
  const int x = x_of(value() * kMemoryStep);
  painter.setPen(Qt::NoPen);
  painter.setBrush(p.color(QPalette::Disabled, QPalette::Text));
  painter.setOpacity(0.35);
  painter.drawRoundedRect(QRectF(kEnd, kTrack - 2.5, width() - 2 * kEnd, 5), 2.5, 2.5);
  painter.setOpacity(1);
  painter.drawRoundedRect(QRectF(kEnd, kTrack - 2.5, x - kEnd, 5), 2.5, 2.5);
  painter.setFont(diagram_font(11, Weight::regular));
  const QFontMetrics metrics(painter.font());
  int free_from = 0; // marks that stand close do not write over each other
  for (const auto& [mib, name] : {std::pair{least_, &text::memory_least}, {usual_, &text::memory_usual}}) {
    if (mib == 0) continue;
    const int at = x_of(mib);
    painter.setPen(p.color(QPalette::Text));
    painter.drawLine(at, kTrack - 6, at, kTrack + 8);
    const QString label = words(*name, size_words(mib).toStdString());
    const int w = metrics.horizontalAdvance(label);
    const int left = std::max(free_from, std::clamp(at - w / 2, 0, std::max(0, width() - w)));
    painter.setPen(p.color(QPalette::Disabled, QPalette::Text));
    if (left + w <= width()) painter.drawText(left, kHeight - 6, label);
    free_from = left + w + 8;
  }
  painter.setPen(QPen(p.color(hasFocus() ? QPalette::Highlight : QPalette::Link), hasFocus() ? 3 : 2));
  painter.setBrush(p.color(QPalette::Base));
  painter.drawEllipse(QPointF(x, kTrack), 7, 7);
}

} // namespace snug
