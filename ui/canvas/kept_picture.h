#pragma once
// During a gesture: the view without what stands over it, as far as it has been painted. What the ring and
// the words at the pointer leave behind is copied from it instead of painted again.

#include <QImage>
#include <QRegion>

#include <functional>

class QPainter;

namespace snug {

class KeptPicture {
 public:
  // Paints a part of the view; the painter's units are the view's pixels.
  using Paint = std::function<void(QPainter&, const QRegion&)>;
  // Whether a pixel of the view is one of the screen; else copies would be blurred.
  static bool suits(const QPainter& view);
  void show(QPainter& view, QSize size, const QRegion& part, const Paint&);
  void spoil(const QRegion& part) { good_ -= part; } // there the picture is another one now
  void forget();

 private:
  QImage image_;
  QRegion good_;
};

} // namespace snug
