#pragma once
// The picture of the lab that a person works on: shows what core drew, and turns gestures into edits that
// core makes.

#include "core/layout/draw.h"
#include "core/layout/palette.h"
#include "core/layout/way.h"
#include "ui/canvas/gesture.h"
#include "ui/canvas/ghost_words.h"
#include "ui/canvas/glide.h"
#include "ui/canvas/kept_picture.h"
#include "ui/session/session.h"

#include <QAbstractScrollArea>
#include <QRegion>

#include <memory>

class QMimeData;
class QNativeGestureEvent;

namespace snug {

class Repaint;

class Canvas : public QAbstractScrollArea {
  Q_OBJECT

 public:
  explicit Canvas(Session& session, QWidget* parent = nullptr);
  ~Canvas() override;

  Session& session() { return session_; }
  // What is painted now; during a drag the state after the drop.
  const Drawing& drawing() const { return drawing_; }
  void set_theme(Theme);
  const Palette& colours() const { return snug::palette(theme_); }

  // Pixels of the window for one of the drawing.
  qreal zoom() const { return zoom_; }
  // Keeps the point of the drawing under `anchor` (of the viewport) where it is, to less than a pixel however
  // many steps follow one another there.
  void set_zoom(qreal zoom, QPointF anchor);
  void zoom_by(qreal factor);
  void show_all();
  // All of it where its letters can be read then, else the upper left part at a size that can be read.
  void show_readable();
  void show_place(AnyId);
  // Goes from a picture to the one that is shown; the next change or press ends it.
  void glide_from(Drawing before);
  // Marks what a packet passes, and where it ends (none: it arrives).
  void show_way(const std::vector<AnyId>& passed, AnyId end);
  QPointF on_drawing(QPointF view) const;
  QPointF on_view(QPointF drawing) const;
  QRectF on_view(const snug::Box&) const;
  AnyId focus_id() const { return focus_; }
  // Where on the viewport something new is pulled from the PC or a machine; nothing: it is not drawn.
  std::optional<QPointF> handle_of(AnyId) const;

  // Turns a machine on or off in the exercise that is shown, as a click on its power mark does.
  void toggle_power(MachineId);

  // A gesture that a part begins: it follows the pointer, the next click ends it, Esc cancels.
  void begin(std::unique_ptr<Gesture> gesture);
  // The same, aimed by arrow keys and put down by Enter.
  void begin_by_key(std::unique_ptr<Gesture> gesture);
  // How many are placed: digits, + and -. False: the key says nothing about that.
  bool take_count(const QKeyEvent&);
  // The same under a button that is held down elsewhere: the pointer is at a point of the screen, is let go.
  void carry(QPoint global);
  void put_down(QPoint global);
  void cancel();
  bool is_busy() const { return gesture_ != nullptr; }
  // What stands at the pointer during a gesture.
  QString gesture_words() const;
  QRectF ghost_box() const; // where, on the viewport; null: nothing is said
  // Since the last call: shapes and frames painted, frames that painted the whole view.
  struct Painted {
    std::int64_t shapes = 0, frames = 0, whole = 0;
  };
  Painted take_painted();
  // How many machines' content was made anew for previews.
  std::int64_t made() const { return redrawing_.made(); }

 signals:
  void menu_wanted(snug::AnyId id, const QPoint& global);
  void edit_wanted(snug::AnyId id); // double click, Enter, F2
  void zoom_changed();

 protected:
  void paintEvent(QPaintEvent*) override;
  void resizeEvent(QResizeEvent*) override;
  void scrollContentsBy(int dx, int dy) override;
  void mousePressEvent(QMouseEvent*) override;
  void mouseMoveEvent(QMouseEvent*) override;
  void mouseReleaseEvent(QMouseEvent*) override;
  void mouseDoubleClickEvent(QMouseEvent*) override;
  void wheelEvent(QWheelEvent*) override;
  void keyPressEvent(QKeyEvent*) override;
  void contextMenuEvent(QContextMenuEvent*) override;
  void keyReleaseEvent(QKeyEvent*) override;
  void focusInEvent(QFocusEvent*) override;
  void focusOutEvent(QFocusEvent*) override;
  bool viewportEvent(QEvent*) override;
  void dragEnterEvent(QDragEnterEvent*) override;
  void dragMoveEvent(QDragMoveEvent*) override;
  void dragLeaveEvent(QDragLeaveEvent*) override;
  void dropEvent(QDropEvent*) override;

 private:
  void redraw();
  void draw_again();
  Drawing draw_preview(const DrawOptions&);
  snug::Box seen() const; // of the drawing
  QRegion damage(const std::vector<QRectF>& changed) const;
  std::vector<AnyId> outlined() const; // as chosen: in a gesture what it moves
  std::vector<QRectF> ringed() const;
  void take_size();
  void update_bars();
  void fit_again();
  void update_around(AnyId);
  QRegion around(AnyId) const;
  QRegion band_of(AnyId segment) const; // along its rails, on the view
  QRegion ring_of(AnyId) const;
  void take_ring(AnyId);
  void update_over();
  void paint_picture(QPainter&, const QRegion& part, const Drawing&);
  void take_units(QPainter&) const;
  std::vector<QRectF> parts_of(const QRegion& view) const;
  void paint_over(QPainter&, const Repaint&);
  std::vector<QRectF> rings_of(AnyId) const;
  QRectF ringed_box(AnyId) const; // of an element and its rings
  void paint_ring(QPainter&, AnyId, Ink, int width, bool dashed);
  void paint_marks(QPainter&, AnyId);
  void paint_way(QPainter&);
  void take_way_lines();
  void paint_ghost(QPainter&);
  std::vector<AnyId> handles() const;
  AnyId handle_at(QPointF view) const;
  QString handle_help(AnyId) const;
  qreal power_reach() const;
  MachineId power_at(QPointF view) const;
  QString power_help(MachineId) const;
  std::unique_ptr<Gesture> pull_from(AnyId);
  std::unique_ptr<Gesture> pull_pin(QPointF on);
  QString pin_help(const Hit&) const;
  QPointF at_joint(const Hit& mark) const;
  qreal slot_scale() const;
  void update_duties();
  void paint_duties(QPainter&);
  void paint_handles(QPainter&);
  void press_on(const Hit&, QMouseEvent*);
  void press_mark(MachineId);
  void choose_band(MachineId first);
  void start_drag(QPointF at);
  void take_before();
  void finish_gesture(QPointF at);
  bool takes_out(const QMouseEvent&) const;
  void take_out();
  void go_off_view();
  bool is_out() const;
  void move_gesture(QPointF view);
  void pinch(const QNativeGestureEvent&);
  void set_hover(AnyId);
  void step_focus(int key);
  AnyId next_focus(int key) const;
  bool take_key(const QKeyEvent&);
  void aim_at(AnyId);
  std::vector<AnyId> places_in_order() const;

  QRegion covered_by_ghost() const;
  QRectF off_target(QRectF) const;

  Session& session_;
  struct Held { // while the zoom changes: bars scroll by whole pixels
    QPointF view, drawing;
  };
  Held held_;
  Drawing drawing_, before_; // before_: as it was when the gesture began
  Redrawing redrawing_;      // of previews
  Glide glide_;
  std::vector<AnyId> previewed_; // what the one drawn last changes
  QSize sheet_;                  // of the drawing, see take_size()
  Theme theme_ = Theme::light;
  qreal zoom_ = 1;
  enum class Fit : std::uint8_t { none, all, readable };
  Fit fit_ = Fit::readable; // follows the window's size
  std::vector<AnyId> way_;
  AnyId way_end_;
  std::vector<WayLine> way_lines_;
  AnyId hover_, focus_, ringed_, pulled_; // pulled_: the handle that is pressed
  QRegion ring_;                          // what the ring around `ringed_` took
  std::unique_ptr<Gesture> gesture_;
  QPointF pressed_at_, pointer_; // of the viewport
  Hit pressed_;
  bool is_pressed_ = false, panning_ = false, placing_ = false, keep_ = false, space_ = false;
  bool away_ = false;   // what is dragged has left the window
  bool culled_ = false; // the drawing lacks what is not seen
  int typed_ = 0;       // digits of a count so far
  QRectF over_;         // what the gesture painted last
  mutable GhostWords ghost_;
  KeptPicture kept_;
  Painted painted_;
};

// What copy_machines() wrote, for the clipboard or another window.
QMimeData* machine_formats(const std::string& copied);

} // namespace snug
