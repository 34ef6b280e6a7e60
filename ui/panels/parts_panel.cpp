#include "ui/panels/parts_panel.h"

#include "core/roles/catalogue.h"
#include "core/roles/known_roles.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/panels/own_parts_view.h"
#include "ui/panels/part_button.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace snug {

namespace {

// How a rail of this kind ends on the picture.
QIcon glyph(SegmentKind kind, const Palette& p) {
  constexpr int kWide = 76, kHigh = 32; // of a picture for screens of twice the density
  QPixmap picture(kWide, kHigh);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  const QColor ink = colour(p, Ink::text);
  painter.setPen(QPen(ink, 5, Qt::SolidLine, Qt::FlatCap));
  const int y = kHigh / 2;
  painter.drawLine(kind == SegmentKind::bridged ? 0 : 12, y, kWide - 8, y);
  painter.drawLine(kWide - 8, 5, kWide - 8, kHigh - 5);
  if (kind == SegmentKind::isolated) painter.drawLine(10, 5, 10, kHigh - 5);
  if (kind == SegmentKind::nat) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawPolygon(QPolygonF({{0.0, double(y)}, {22.0, 4.0}, {22.0, kHigh - 4.0}}));
  }
  return picture;
}

QLabel* heading(const Template& words_of, QWidget* parent) {
  auto* label = new QLabel(words(words_of), parent);
  label->setProperty("tone", QStringLiteral("heading"));
  return label;
}

} // namespace

PartsPanel::PartsPanel(Session& session, Canvas& canvas, QWidget* parent)
    : QWidget(parent), session_(session), canvas_(canvas) {
  setObjectName(QStringLiteral("parts"));
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  outer->addWidget(scroll);
  auto* inside = new QWidget(scroll);
  auto* box = new QVBoxLayout(inside);
  box->setContentsMargins(12, 10, 12, 12);
  box->setSpacing(6);
  box->addWidget(heading(text::parts_segments, inside));
  add_segments(*box);
  box->addSpacing(8);
  box->addWidget(heading(text::parts_machines, inside));
  add_roles(*box);
  own_ = new OwnPartsView(session_, canvas_, inside);
  box->addWidget(own_);
  box->addStretch();
  scroll->setWidget(inside);
  connect(&session_, &Session::lab_changed, this, &PartsPanel::show_sizes);
  show_sizes();
}

// Styled, its parts are wider.
void PartsPanel::showEvent(QShowEvent* event) {
  constexpr int kScrollBar = 14;
  QWidget::showEvent(event);
  auto* scroll = findChild<QScrollArea*>();
  scroll->setMinimumWidth(scroll->widget()->minimumSizeHint().width() + kScrollBar);
}

void PartsPanel::add_part(QVBoxLayout& box, const QString& title, const QString& detail, const QString& help,
                          Make make) {
  auto* button = new PartButton(canvas_, std::move(make), this);
  button->setText(detail.isEmpty() ? title : title + QLatin1Char('\n') + detail);
  button->setToolTip(help);
  button->setAccessibleName(title);
  box.addWidget(button);
}

void PartsPanel::add_segments(QVBoxLayout& box) {
  constexpr struct {
    SegmentKind kind;
    const Template& title;
    const Template& help;
  } kParts[]{{SegmentKind::isolated, text::part_isolated, text::part_isolated_help},
             {SegmentKind::bridged, text::part_bridged, text::part_bridged_help},
             {SegmentKind::nat, text::part_nat, text::part_nat_help}};
  for (const auto& p : kParts) {
    add_part(box, words(p.title), {}, words(p.help),
             [this, kind = p.kind] { return place_segment(session_, kind); });
    segments_.emplace_back(qobject_cast<QPushButton*>(box.itemAt(box.count() - 1)->widget()), p.kind);
  }
}

void PartsPanel::set_theme(Theme theme) {
  for (const auto& [button, kind] : segments_) {
    button->setIcon(glyph(kind, snug::palette(theme)));
    button->setIconSize({38, 16});
  }
}

void PartsPanel::add_roles(QVBoxLayout& box) {
  auto known = known_roles(own_roles_file());
  if (known) {
    known_ = std::move(*known);
  } else {
    problem_ = known.error();
    known_ = catalogue();
  }
  const std::size_t large = std::min<std::size_t>(kLargeRoles, known_.size());
  for (std::size_t i = 0; i < large; ++i) add_role(box, known_[i]);
  if (large < known_.size()) add_more(box);
}

void PartsPanel::add_role(QVBoxLayout& box, const Role& role) {
  add_part(box, words(Term{role.title}), QStringLiteral(" "), words(text::parts_role_help, Term{role.title}),
           [this, &role] { return place_role(session_, role); });
  roles_.emplace_back(qobject_cast<QPushButton*>(box.itemAt(box.count() - 1)->widget()), &role);
}

// The rest is made when it is first wanted.
void PartsPanel::add_more(QVBoxLayout& box) {
  auto* more = new QPushButton(words(text::parts_more), this);
  more->setProperty("role", QStringLiteral("link"));
  more->setCheckable(true);
  more->setToolTip(words(text::tip_roles));
  box.addWidget(more);
  more_ = new QWidget(this);
  more_->hide();
  box.addWidget(more_);
  connect(more, &QPushButton::toggled, this, [this, more](bool on) {
    if (!more_->layout()) fill_more();
    more_->setVisible(on);
    more->setText(words(on ? text::parts_fewer : text::parts_more));
  });
}

void PartsPanel::fill_more() {
  auto* box = new QVBoxLayout(more_);
  box->setContentsMargins(0, 0, 0, 0);
  box->setSpacing(6);
  for (std::size_t i = kLargeRoles; i < known_.size(); ++i) add_role(*box, known_[i]);
  show_sizes();
}

void PartsPanel::take_keyboard() { segments_.front().first->setFocus(Qt::ShortcutFocusReason); }

void PartsPanel::show_sizes() {
  for (const auto& [button, role] : roles_) {
    const Machine m = machine_from(*role, session_.lab().facts.sizes);
    button->setText(words(Term{role->title}) + QLatin1Char('\n') + words(Mib{m.memory}));
  }
}

} // namespace snug
