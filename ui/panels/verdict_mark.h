#pragma once
// The mark of an answer: colour, shape and a word for those who do not see it.

#include "core/layout/palette.h"

#include <QWidget>

namespace snug {

enum class Mark : std::uint8_t { yes, no, one_way, chance, none };

class VerdictMark : public QWidget {
 public:
  VerdictMark(Mark mark, const QString& word, const Palette& palette, QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent*) override;

 private:
  Mark mark_;
  const Palette& palette_;
};

} // namespace snug
