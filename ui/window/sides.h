#pragma once
// The panels left and right of the picture. In a narrow window they are folded, so that the picture has the
// width; one click opens them. What a person chose stays.

#include "ui/session/session.h"
#include "ui/window/folding_side.h"
#include "ui/window/settings.h"

class QSplitter;

namespace snug {

class Sides : public QObject {
 public:
  // From these widths of the window on the side is open by itself, pixels.
  static constexpr int kLeftOpens = 1440, kRightOpens = 1660;

  // Takes the panels; `across` has left side, centre, right side.
  Sides(Session& session, QWidget* parts, QWidget* outline, QWidget* properties);
  QSplitter& across() const { return *across_; }
  void set_centre(QWidget* centre);
  FoldingSide& left() const { return *left_; }
  FoldingSide& right() const { return *right_; }

  void show_parts() { show(*left_, 0); }
  void show_outline() { show(*left_, 1); }
  void show_properties() { show(*right_, 0); }

  void take(const Remembered&);
  void put(Remembered&) const;

 protected:
  bool eventFilter(QObject* of, QEvent* event) override;

 private:
  void show(FoldingSide& side, int panel);
  void follow_window();
  void share_width();
  void turned(FoldingSide& side);
  bool has_room_for_both() const;

  Session& session_;
  QSplitter* across_;
  FoldingSide *left_, *right_;
  FoldingSide* latest_ = nullptr; // of the two that was opened last
  bool following_ = false;        // the window: nobody opens anything
  Folded left_by_person_ = Folded::by_width, right_by_person_ = Folded::by_width;
};

} // namespace snug
