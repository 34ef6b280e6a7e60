#include "ui/window/find_box.h"

#include "core/text/find_text.h"
#include "core/text/tip_text.h"
#include "ui/session/words.h"

#include <QFocusEvent>
#include <QListView>
#include <QPainter>
#include <QStandardItemModel>
#include <QStyledItemDelegate>

#include <algorithm>

namespace snug {

namespace {

constexpr std::size_t kMost = 50;
constexpr int kShown = 9, kRow = 30, kLeastWidth = 460;
constexpr int kPlaceRole = Qt::UserRole, kTitleRole = Qt::UserRole + 1, kDetailRole = Qt::UserRole + 2;

std::string folded(std::string_view s) { return as_qt(s).toCaseFolded().toStdString(); }

// The title, and in grey what it is.
class Rows : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override { return {0, kRow}; }
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const QPalette& p = option.palette;
    if ((option.state & QStyle::State_Selected) != 0)
      painter->fillRect(option.rect, p.color(QPalette::Highlight));
    const bool chosen = (option.state & QStyle::State_Selected) != 0;
    const QRect room = option.rect.adjusted(12, 0, -12, 0);
    const QString title = index.data(kTitleRole).toString(), detail = index.data(kDetailRole).toString();
    const QFontMetrics metrics(option.font);
    const int for_title = std::min(metrics.horizontalAdvance(title), room.width());
    painter->save();
    painter->setFont(option.font);
    painter->setPen(p.color(chosen ? QPalette::HighlightedText : QPalette::Text));
    painter->drawText(room, Qt::AlignVCenter | Qt::AlignLeading,
                      metrics.elidedText(title, Qt::ElideRight, room.width()));
    const QRect rest = QStyle::visualRect(option.direction, room, room.adjusted(for_title + 12, 0, 0, 0));
    painter->setPen(p.color(chosen ? QPalette::HighlightedText : QPalette::PlaceholderText));
    if (rest.width() > kRow)
      painter->drawText(rest, Qt::AlignVCenter | Qt::AlignTrailing,
                        metrics.elidedText(detail, Qt::ElideRight, rest.width()));
    painter->restore();
  }
};

} // namespace

FindBox::FindBox(Session& session, std::function<std::vector<Action>()> actions, QWidget* parent)
    : QLineEdit(parent), session_(session), actions_now_(std::move(actions)), list_(new QListView(window())),
      found_(new QStandardItemModel(this)) {
  setObjectName(QStringLiteral("find"));
  setPlaceholderText(words(text::find_prompt));
  setAccessibleName(words(text::find_box));
  setToolTip(words(text::tip_find));
  setClearButtonEnabled(true);
  constexpr int kAround = 44; // frame and the button that clears
  setMinimumWidth(fontMetrics().horizontalAdvance(placeholderText()) + kAround);
  list_->setObjectName(QStringLiteral("find_list"));
  list_->setAccessibleName(words(text::find_list));
  list_->setModel(found_);
  list_->setItemDelegate(new Rows(list_));
  list_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  list_->setFocusPolicy(Qt::NoFocus);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setUniformItemSizes(true);
  list_->hide();
  connect(list_, &QListView::clicked, this, &FindBox::choose);
  connect(this, &QLineEdit::textEdited, this, &FindBox::look);
  connect(this, &QLineEdit::textChanged, this, [this](const QString& text) {
    if (text.isEmpty()) close_list();
  });
  const auto forget = [this] { finder_.reset(); };
  connect(&session_, &Session::lab_changed, this, forget);
  connect(&session_, &Session::started, this, forget);
}

// What can be done changes with what is selected.
void FindBox::focusInEvent(QFocusEvent* event) {
  finder_.reset();
  QLineEdit::focusInEvent(event);
  if (!text().isEmpty()) look();
}

void FindBox::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  close_list();
}

void FindBox::collect() {
  if (finder_) return;
  actions_ = actions_now_();
  std::vector<FindAction> named;
  for (const Action& a : actions_) named.push_back({a.title.toStdString(), a.detail.toStdString()});
  finder_.emplace(find_items(session_.analysis(), named), folded);
}

void FindBox::look() {
  if (text().trimmed().isEmpty()) return close_list();
  collect();
  found_->clear();
  for (const std::size_t place : finder_->find(text().toStdString(), kMost)) {
    const FindItem& item = finder_->items()[place];
    auto* row = new QStandardItem(as_qt(item.title) + QStringLiteral(", ") + as_qt(item.detail));
    row->setData(static_cast<qulonglong>(place), kPlaceRole);
    row->setData(as_qt(item.title), kTitleRole);
    row->setData(as_qt(item.detail), kDetailRole);
    found_->appendRow(row);
  }
  if (found_->rowCount() == 0) {
    const QString nothing = words(text::find_nothing, text().trimmed().toStdString());
    auto* row = new QStandardItem(nothing);
    row->setData(nothing, kTitleRole);
    row->setFlags(Qt::NoItemFlags);
    found_->appendRow(row);
  }
  place_list();
  list_->setCurrentIndex(found_->index(0, 0));
}

// Under the field, as wide as it takes to read what is found.
void FindBox::place_list() {
  QWidget* home = window();
  if (list_->parentWidget() != home) list_->setParent(home);
  const int width = std::clamp(std::max(this->width(), kLeastWidth), 0, home->width() - 16);
  const QPoint under = mapTo(home, QPoint(0, height() + 2));
  const int rows = std::min(kShown, found_->rowCount());
  const int x = std::clamp(isRightToLeft() ? under.x() + this->width() - width : under.x(), 8,
                           std::max(8, home->width() - width - 8));
  list_->setGeometry(x, under.y(), width, rows * kRow + 2 * list_->frameWidth() + 2);
  list_->show();
  list_->raise();
}

void FindBox::close_list() {
  if (list_->isVisible()) list_->hide();
}

void FindBox::choose(const QModelIndex& index) {
  const QVariant place = index.data(kPlaceRole);
  if (!place.isValid() || !finder_) return;
  const FindItem item = finder_->items()[place.toULongLong()];
  const QPointer<QAction> action = item.kind == Findable::action ? actions_[item.place].action : nullptr;
  clear();
  close_list();
  emit left(); // an action is about what was chosen before
  if (action)
    action->trigger();
  else
    emit chosen(item);
}

void FindBox::move(int by) {
  const int row = std::clamp(list_->currentIndex().row() + by, 0, found_->rowCount() - 1);
  list_->setCurrentIndex(found_->index(row, 0));
}

void FindBox::keyPressEvent(QKeyEvent* event) {
  const bool open = list_->isVisible();
  switch (event->key()) {
  case Qt::Key_Down:
    return open ? move(1) : look();
  case Qt::Key_Up:
    return move(-1);
  case Qt::Key_PageDown:
    return move(kShown);
  case Qt::Key_PageUp:
    return move(-kShown);
  case Qt::Key_Return:
  case Qt::Key_Enter:
    return choose(list_->currentIndex());
  case Qt::Key_Escape:
    clear();
    close_list();
    emit left();
    return;
  default:
    QLineEdit::keyPressEvent(event);
  }
}

} // namespace snug
