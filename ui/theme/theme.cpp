#include "ui/theme/theme.h"

#include "ui/diagram/paint.h"

#include <QApplication>
#include <QIconEngine>
#include <QPainter>
#include <QProxyStyle>
#include <QStyleFactory>
#include <QWidget>

#include <algorithm>
#include <utility>

namespace snug {

namespace {

constexpr int kTextSize = 13;

// {ink} stands for its colour.
constexpr const char* kSheet = R"(
QMainWindow, QDialog, #shell { background: {sheet}; }
QLabel { color: {text}; background: transparent; }
QLabel[tone="muted"] { color: {muted}; }
QLabel[tone="bad"] { color: {error}; }
QLabel[tone="title"] { font-size: 15px; font-weight: 600; }
QLabel[tone="heading"] { font-weight: 600; }
#topbar { background: {inside}; border-bottom: 1px solid {track}; }
#side { background: {inside}; }
#side[edge="left"] { border-right: 1px solid {track}; }
#side[edge="right"] { border-left: 1px solid {track}; }
#sheet { background: {inside}; border: 1px solid {track}; border-radius: 9px; }
QToolButton, QPushButton { color: {text}; background: {inside}; border: 1px solid {edge}; border-radius: 6px; padding: 4px 10px; min-height: 20px; }
QToolButton:hover, QPushButton:hover { background: {sheet}; border-color: {muted}; }
QToolButton:pressed, QPushButton:pressed, QToolButton:checked, QPushButton:checked { background: {track}; }
QToolButton:focus, QPushButton:focus { border: 2px solid {info}; padding: 3px 9px; }
QToolButton:disabled, QPushButton:disabled { color: {muted}; border-color: {track}; }
QToolButton::menu-indicator { image: none; }
QPushButton[role="exercise"] { padding: 4px 5px; }
QPushButton[role="exercise"]:focus { padding: 3px 4px; }
#add_to_exercises { padding: 4px 3px; min-width: 14px; }
#add_to_exercises:focus { padding: 3px 2px; }
QPushButton[role="fix"] { color: {info}; font-weight: 600; }
QPushButton[role="part"] { text-align: left; padding: 5px 9px; }
QPushButton[role="sample"] { min-width: 278px; max-width: 278px; min-height: 226px; max-height: 226px; }
QPushButton[role="document"] { border: none; background: transparent; font-size: 15px; font-weight: 600; text-align: left; padding: 4px 6px; }
QPushButton[role="document"]:hover { background: {sheet}; border-radius: 6px; }
QPushButton[role="document"]:focus { border: 2px solid {info}; padding: 2px 4px; }
QPushButton[role="link"] { border: none; background: transparent; color: {info}; text-align: left; padding: 2px 0; }
QLineEdit, QComboBox, QPlainTextEdit, QAbstractSpinBox { color: {text}; background: {inside}; border: 1px solid {edge}; border-radius: 5px; padding: 3px 7px; min-height: 20px; selection-background-color: {info}; selection-color: {inside}; }
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus { border: 2px solid {info}; padding: 2px 6px; }
QLineEdit[bad="true"] { border: 2px solid {error}; padding: 2px 6px; }
QComboBox[bad="true"] { border: 2px solid {error}; padding: 2px 6px; }
QComboBox QLineEdit, QComboBox QLineEdit:focus { border: none; padding: 0; background: transparent; }
QComboBox:disabled { color: {muted}; border-color: {track}; }
QComboBox::drop-down { border: none; width: 20px; }
QComboBox::down-arrow { image: url(:/snug/{chevron}.svg); width: 12px; height: 12px; }
QComboBox { combobox-popup: 0; }
QComboBox QAbstractItemView::item { min-height: 24px; padding: 0 6px; }
QComboBox QAbstractItemView { background: {inside}; color: {text}; border: 1px solid {edge}; selection-background-color: {track}; selection-color: {text}; }
QTabBar::tab { color: {muted}; background: transparent; padding: 7px 12px; border: none; border-bottom: 2px solid transparent; }
QTabBar::tab:selected { color: {text}; font-weight: 600; border-bottom: 2px solid {info}; }
QTabBar::tab:focus { color: {info}; }
QTabWidget::pane { border: none; border-top: 1px solid {track}; }
QTableView, QTreeView, QListView { background: {inside}; alternate-background-color: {sheet}; color: {text}; border: none; gridline-color: {track}; selection-background-color: {track}; selection-color: {text}; outline: none; }
QTableView::item, QTreeView::item { padding: 3px 6px; }
QTableView::item:focus, QTreeView::item:focus { border: 1px solid {info}; }
QHeaderView::section { background: {inside}; color: {muted}; border: none; border-bottom: 1px solid {track}; padding: 4px 6px; }
QTableCornerButton::section { background: {inside}; border: none; }
QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; border: none; }
QScrollBar:vertical { background: transparent; width: 11px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 11px; margin: 0; }
QScrollBar::handle { background: {edge}; border-radius: 4px; margin: 2px; min-height: 28px; min-width: 28px; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QAbstractScrollArea::corner { background: transparent; border: none; }
QSplitter::handle { background: {sheet}; }
QMenuBar { background: {inside}; color: {text}; }
QMenuBar::item { padding: 10px 9px; background: transparent; }
QMenuBar::item:selected, QMenuBar::item:pressed { background: {track}; border-radius: 4px; }
QMenu { background: {inside}; color: {text}; border: 1px solid {edge}; padding: 4px; }
QMenu::item { padding: 5px 26px 5px 20px; border-radius: 4px; }
QMenu::item:selected { background: {track}; }
QMenu::item:disabled { color: {muted}; }
QMenu::separator { height: 1px; background: {track}; margin: 4px 8px; }
QToolTip { background: {inside}; color: {text}; border: 1px solid {edge}; padding: 5px; }
QStatusBar, #footer { background: {track}; color: {text}; }
QStatusBar::item { border: none; }
QCheckBox, QRadioButton { color: {text}; background: transparent; spacing: 7px; }
QCheckBox::indicator { width: 15px; height: 15px; border: 1px solid {muted}; border-radius: 4px; background: {inside}; }
QCheckBox::indicator:checked { background: {info}; border-color: {info}; image: url(:/snug/{tick}.svg); }
QCheckBox::indicator:indeterminate { background: {track}; }
QCheckBox::indicator:hover { border-color: {text}; }
QCheckBox:focus { color: {info}; text-decoration: underline; }
#notice { border-radius: 7px; border: 1px solid {edge}; background: {inside}; }
#notice[kind="error"] { border: 2px solid {error}; }
#notice[kind="caution"] { border: 2px solid {caution}; }
QToolButton[role="group"] { border: none; background: transparent; text-align: left; padding: 3px 0; font-weight: 600; }
QToolButton[role="group"]:focus { border: none; color: {info}; padding: 3px 0; text-decoration: underline; }
QToolButton[role="group"]:checked { background: transparent; }
#row { background: {sheet}; border: 1px solid {track}; border-radius: 6px; }
QPushButton[role="small"] { padding: 1px 8px; min-height: 22px; }
#finding { background: {sheet}; border: 2px solid {sheet}; border-radius: 5px; }
#finding:focus { border-color: {info}; }
#hop, *[part="promise"] { background: {sheet}; border: 2px solid {sheet}; border-radius: 5px; }
#hop[ends="true"] { border-left: 4px solid {error}; border-radius: 0; }
*[part="promise"][chosen="true"] { border-color: {track}; }
#hop:focus, *[part="promise"]:focus { border-color: {info}; }
#find_list { border: 1px solid {edge}; border-radius: 6px; padding: 3px; }
#canvas { border: 2px solid {sheet}; border-radius: 4px; }
#canvas:focus { border-color: {info}; }
)";

constexpr std::pair<const char*, Ink> kInks[]{
    {"{sheet}", Ink::sheet}, {"{inside}", Ink::inside},   {"{text}", Ink::text}, {"{muted}", Ink::muted},
    {"{edge}", Ink::edge},   {"{track}", Ink::track},     {"{info}", Ink::info}, {"{error}", Ink::error},
    {"{ok}", Ink::ok},       {"{caution}", Ink::caution},
};

QPalette widget_palette(const Palette& p) {
  QPalette q;
  const auto set = [&](QPalette::ColorRole role, Ink ink) { q.setColor(role, colour(p, ink)); };
  set(QPalette::Window, Ink::sheet);
  set(QPalette::WindowText, Ink::text);
  set(QPalette::Base, Ink::inside);
  set(QPalette::AlternateBase, Ink::sheet);
  set(QPalette::Text, Ink::text);
  set(QPalette::Button, Ink::inside);
  set(QPalette::ButtonText, Ink::text);
  set(QPalette::BrightText, Ink::error);
  set(QPalette::Highlight, Ink::info);
  set(QPalette::HighlightedText, Ink::inside);
  set(QPalette::ToolTipBase, Ink::inside);
  set(QPalette::ToolTipText, Ink::text);
  set(QPalette::PlaceholderText, Ink::muted);
  set(QPalette::Link, Ink::info);
  for (const QPalette::ColorRole role : {QPalette::Text, QPalette::WindowText, QPalette::ButtonText})
    q.setColor(QPalette::Disabled, role, colour(p, Ink::muted));
  return q;
}

} // namespace

QColor colour(const Palette& p, Ink ink) { return QColor::fromRgb(0xff000000U | p.of(ink)); }

Theme theme_of(const QPalette& p) {
  return p.color(QPalette::Window).lightness() < p.color(QPalette::WindowText).lightness() ? Theme::dark
                                                                                           : Theme::light;
}

QString style_sheet(const Palette& p) {
  QString sheet = QString::fromUtf8(kSheet);
  for (const auto& [name, ink] : kInks) sheet.replace(QLatin1String(name), colour(p, ink).name());
  const bool dark = colour(p, Ink::info).lightness() > colour(p, Ink::inside).lightness();
  sheet.replace(QLatin1String("{tick}"), dark ? QStringLiteral("tick-dark") : QStringLiteral("tick-light"));
  sheet.replace(QLatin1String("{chevron}"),
                dark ? QStringLiteral("chevron-dark") : QStringLiteral("chevron-light"));
  return sheet;
}

namespace {
bool is_held_back = false;
Theme worn = Theme::light;
} // namespace

namespace {

// The cross that empties a line, and what menus without room hide behind, in the colours of the day. (Looking
// for them among the desktop's pictures takes a tenth of the start.)
class Sign : public QIconEngine {
 public:
  explicit Sign(bool more) : more_(more) {}
  void paint(QPainter* painter, const QRect& rect, QIcon::Mode, QIcon::State) override {
    const qreal r = std::min(rect.width(), rect.height()) * 0.25;
    const QPointF c = QRectF(rect).center();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen(QApplication::palette().color(QPalette::PlaceholderText), r * 0.4, Qt::SolidLine,
                         Qt::RoundCap, Qt::RoundJoin));
    if (more_)
      for (const qreal x : {-r, r / 4})
        painter->drawPolyline(
            QPolygonF({c + QPointF(x, -r), c + QPointF(x + r * 0.8, 0), c + QPointF(x, r)}));
    else
      painter->drawLines(QList<QLineF>{QLineF(c - QPointF(r, r), c + QPointF(r, r)),
                                       QLineF(c - QPointF(r, -r), c + QPointF(r, -r))});
    painter->restore();
  }
  QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
    QPixmap out(size);
    out.fill(Qt::transparent);
    QPainter painter(&out);
    paint(&painter, QRect(QPoint(0, 0), size), mode, state);
    return out;
  }
  QIconEngine* clone() const override { return new Sign(more_); }

 private:
  bool more_;
};

// Words on buttons of dialogs, without pictures that are not ours.
class WordStyle : public QProxyStyle {
 public:
  WordStyle() : QProxyStyle(QStyleFactory::create(QStringLiteral("Fusion"))) {}
  QIcon standardIcon(StandardPixmap which, const QStyleOption* option, const QWidget* widget) const override {
    if (which == SP_LineEditClearButton) return QIcon(new Sign(false));
    if (which == SP_ToolBarHorizontalExtensionButton || which == SP_ToolBarVerticalExtensionButton)
      return QIcon(new Sign(true));
    return QProxyStyle::standardIcon(which, option, widget);
  }
  int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                QStyleHintReturn* data) const override {
    return hint == SH_DialogButtonBox_ButtonsHaveIcons ? 0
                                                       : QProxyStyle::styleHint(hint, option, widget, data);
  }
};

} // namespace

void wear(QApplication& application, Theme theme) {
  application.setStyle(new WordStyle);
  application.setFont(diagram_font(kTextSize, Weight::regular));
  application.setPalette(widget_palette(palette(theme)));
  worn = theme;
  if (!is_held_back) application.setStyleSheet(style_sheet(palette(theme)));
}

bool wears(const QApplication& application, Theme theme) {
  return worn == theme && (is_held_back || !application.styleSheet().isEmpty());
}

void hold_sheet_back(QApplication& application) {
  const QWidgetList windows = QApplication::topLevelWidgets();
  if (std::any_of(windows.begin(), windows.end(), [](const QWidget* w) { return w->isVisible(); })) return;
  if (application.styleSheet().isEmpty()) return;
  is_held_back = true;
  application.setStyleSheet({});
}

void put_sheet_on(QApplication& application) {
  if (!std::exchange(is_held_back, false)) return;
  application.setStyleSheet(style_sheet(palette(worn)));
}

} // namespace snug
