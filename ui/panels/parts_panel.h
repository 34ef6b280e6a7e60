#pragma once
// What can be put on the picture: drag a part there, or click it and then the place.

#include "ui/canvas/canvas.h"

#include <QWidget>

#include <functional>
#include <optional>

class QPushButton;
class QVBoxLayout;

namespace snug {

class OwnPartsView;

class PartsPanel : public QWidget {
  Q_OBJECT

 public:
  PartsPanel(Session& session, Canvas& canvas, QWidget* parent = nullptr);

  void set_theme(Theme theme);
  // Why a person's own roles are not among them.
  const std::optional<Problem>& problem() const { return problem_; }
  OwnPartsView& own() const { return *own_; }
  // The keyboard goes to the first part.
  void take_keyboard();

 protected:
  void showEvent(QShowEvent*) override;

 private:
  using Make = std::function<std::unique_ptr<Gesture>()>;
  void add_part(QVBoxLayout&, const QString& title, const QString& detail, const QString& help, Make make);
  void add_roles(QVBoxLayout&);
  void add_role(QVBoxLayout&, const Role&);
  void add_more(QVBoxLayout&);
  void fill_more();
  void add_segments(QVBoxLayout&);
  void show_sizes();

  Session& session_;
  Canvas& canvas_;
  std::vector<Role> known_;
  std::optional<Problem> problem_;
  QWidget* more_ = nullptr;
  OwnPartsView* own_ = nullptr;
  std::vector<std::pair<QPushButton*, const Role*>> roles_;
  std::vector<std::pair<QPushButton*, SegmentKind>> segments_;
};

} // namespace snug
