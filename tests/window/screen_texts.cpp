#include "tests/window/screen_texts.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QLayout>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QTabBar>

namespace snug::test {

namespace {

QString name_of(const QObject& o) {
  QString name = QLatin1String(o.metaObject()->className());
  if (!o.objectName().isEmpty()) name += u'#' + o.objectName();
  if (const QObject* p = o.parent(); o.objectName().isEmpty() && p)
    name = QLatin1String(p->metaObject()->className()) +
           (p->objectName().isEmpty() ? QString() : u'#' + p->objectName()) + u'/' + name;
  return name;
}

class Reader {
 public:
  std::vector<ScreenText> texts;

  void read(QWidget& w) {
    add(w, "tooltip", w.toolTip());
    add(w, "spoken name", w.accessibleName());
    add(w, "spoken description", w.accessibleDescription());
    if (const auto* label = qobject_cast<QLabel*>(&w)) add(w, "text", label->text());
    if (const auto* button = qobject_cast<QAbstractButton*>(&w)) add(w, "text", button->text());
    if (const auto* line = qobject_cast<QLineEdit*>(&w)) add(w, "hint", line->placeholderText());
    if (const auto* menu = qobject_cast<QMenu*>(&w)) add(w, "title", menu->title());
    if (const auto* box = qobject_cast<QComboBox*>(&w))
      for (int i = 0; i < box->count(); ++i) add(w, "entry", box->itemText(i));
    if (const auto* bar = qobject_cast<QTabBar*>(&w))
      for (int i = 0; i < bar->count(); ++i) {
        add(w, "tab", bar->tabText(i));
        add(w, "tab's tooltip", bar->tabToolTip(i));
      }
    if (const auto* view = qobject_cast<QAbstractItemView*>(&w);
        view && view->model() && !qobject_cast<const QHeaderView*>(view))
      read_model(w, *view->model(), view->rootIndex());
    for (const QAction* a : w.actions()) {
      add(*a, "text", a->text());
      add(*a, "tooltip", a->toolTip());
    }
  }

 private:
  void add(const QObject& o, const char* what, const QString& text) {
    if (!text.isEmpty()) texts.push_back({name_of(o) + u' ' + QLatin1String(what), text});
  }
  void read_model(const QWidget& w, const QAbstractItemModel& model, const QModelIndex& parent) {
    for (int c = 0; c < model.columnCount(parent) && !parent.isValid(); ++c)
      add(w, "header", model.headerData(c, Qt::Horizontal).toString());
    for (int r = 0; r < model.rowCount(parent); ++r)
      for (int c = 0; c < model.columnCount(parent); ++c) {
        const QModelIndex at = model.index(r, c, parent);
        for (const int role : {int(Qt::DisplayRole), int(Qt::ToolTipRole), int(Qt::AccessibleTextRole)})
          add(w, "item", at.data(role).toString());
        if (c == 0) read_model(w, model, at);
      }
  }
};

// What a text needs, or nothing to say about it.
QSize needed(const QWidget& w) {
  if (const auto* label = qobject_cast<const QLabel*>(&w)) {
    if (label->text().isEmpty()) return {};
    return label->wordWrap() ? QSize(0, label->heightForWidth(label->width())) : label->sizeHint();
  }
  if (qobject_cast<const QPushButton*>(&w) || qobject_cast<const QCheckBox*>(&w)) return w.sizeHint();
  return {};
}

QString described(const QWidget& w) {
  QString text;
  if (const auto* label = qobject_cast<const QLabel*>(&w)) text = label->text();
  if (const auto* button = qobject_cast<const QAbstractButton*>(&w)) text = button->text();
  return name_of(w) + QStringLiteral(" “%1”").arg(text);
}

QString pixels(QSize s) { return QStringLiteral("%1×%2").arg(s.width()).arg(s.height()); }

// Widgets that a layout put into one another's way.
void find_overlaps(const QWidget& parent, std::vector<QString>& out) {
  if (!parent.layout()) return;
  std::vector<const QWidget*> placed;
  for (int i = 0; i < parent.layout()->count(); ++i)
    if (const QWidget* w = parent.layout()->itemAt(i)->widget(); w && w->isVisible()) placed.push_back(w);
  for (std::size_t i = 0; i < placed.size(); ++i)
    for (std::size_t k = i + 1; k < placed.size(); ++k)
      if (placed[i]->geometry().intersects(placed[k]->geometry()))
        out.push_back(described(*placed[i]) + QStringLiteral(" lies over ") + described(*placed[k]));
}

} // namespace

std::vector<ScreenText> texts_of(QWidget& window) {
  Reader reader;
  reader.read(window);
  for (QWidget* w : window.findChildren<QWidget*>()) reader.read(*w);
  return reader.texts;
}

std::vector<QString> squeezed(QWidget& window) {
  std::vector<QString> out;
  find_overlaps(window, out);
  for (const QWidget* w : window.findChildren<QWidget*>()) {
    if (!w->isVisible() || w->window() != &window) continue;
    find_overlaps(*w, out);
    const QSize wanted = needed(*w);
    if (wanted.width() > w->width() || wanted.height() > w->height())
      out.push_back(described(*w) + QStringLiteral(" wants ") + pixels(wanted) + QStringLiteral(", has ") +
                    pixels(w->size()));
    const auto* bar = qobject_cast<const QTabBar*>(w);
    for (int i = 0; bar && i < bar->count(); ++i)
      if (bar->fontMetrics().horizontalAdvance(bar->tabText(i)) > bar->tabRect(i).width())
        out.push_back(QStringLiteral("tab “%1” has too little room").arg(bar->tabText(i)));
  }
  return out;
}

} // namespace snug::test
