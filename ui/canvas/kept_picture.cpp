#include "ui/canvas/kept_picture.h"

#include <QPainter>
#include <QTransform>

#include <cmath>

namespace snug {

bool KeptPicture::suits(const QPainter& view) {
  const QTransform t = view.deviceTransform();
  return t.type() <= QTransform::TxTranslate && t.dx() == std::floor(t.dx()) && t.dy() == std::floor(t.dy());
}

void KeptPicture::show(QPainter& view, QSize size, const QRegion& part, const Paint& paint) {
  if (image_.size() != size) {
    image_ = QImage(size, QImage::Format_RGB32);
    image_.fill(Qt::white);
    good_ = {};
  }
  if (const QRegion missing = part - good_; !missing.isEmpty()) {
    QPainter painter(&image_);
    painter.setClipRegion(missing);
    paint(painter, missing);
    good_ += missing;
  }
  view.drawImage(0, 0, image_);
}

void KeptPicture::forget() {
  image_ = {};
  good_ = {};
}

} // namespace snug
