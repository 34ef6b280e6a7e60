#include "ui/panels/address_panel.h"

#include "core/gesture/plug.h"
#include "core/layout/draw_parts.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/panels/panel_row.h"
#include "ui/panels/severity_mark.h"
#include "ui/panels/when_seen.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QFont>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QSortFilterProxyModel>
#include <QStyledItemDelegate>
#include <QTableView>
#include <QToolTip>
#include <QVBoxLayout>

#include <algorithm>

#include <functional>

namespace snug {

namespace {

// Sorts addresses as numbers.
constexpr int kSortRole = Qt::UserRole + 1;
constexpr int kBesideText = 10; // in a column

QVariant sort_key(const Cell& cell) {
  if (const auto* n = std::get_if<std::int64_t>(&cell)) return QVariant::fromValue<qlonglong>(*n);
  const std::string text = cell_text(cell);
  const auto address = parse_address(text);
  if (!address) return as_qt(text).toCaseFolded();
  return QStringLiteral("%1%2%3")
      .arg(address->is_v4() ? QLatin1Char('4') : QLatin1Char('6'))
      .arg(address->is_v4() ? address->as_u32() : address->high(), 20, 10, QLatin1Char('0'))
      .arg(address->is_v4() ? 0 : address->low(), 20, 10, QLatin1Char('0'));
}

} // namespace

AddressModel::AddressModel(Session& session, QObject* parent)
    : QAbstractTableModel(parent), session_(session) {
  fill();
}

// The same rows keep selection, scroll place and an open editor.
void AddressModel::fill() {
  Table next = address_table(session_.analysis());
  const bool same_rows =
      std::equal(next.rows.begin(), next.rows.end(), table_.rows.begin(), table_.rows.end(),
                 [](const TableRow& a, const TableRow& b) { return a.place == b.place; });
  if (same_rows && !table_.rows.empty()) {
    take(std::move(next));
    emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    return;
  }
  beginResetModel();
  take(std::move(next));
  endResetModel();
}

void AddressModel::take(Table next) {
  table_ = std::move(next);
  faults_.clear();
  const auto address = static_cast<std::size_t>(column_of("address"));
  for (const TableRow& row : table_.rows)
    faults_.push_back(address_fault(session_.analysis(), row.place, cell_text(row.cells[address])));
}

void AddressModel::set_theme(Theme theme) {
  theme_ = theme;
  if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

int AddressModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(table_.rows.size());
}
int AddressModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(table_.columns.size());
}

QVariant AddressModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const TableRow& row = table_.rows[static_cast<std::size_t>(index.row())];
  const Cell& cell = row.cells[static_cast<std::size_t>(index.column())];
  if (role == Qt::DisplayRole || role == Qt::EditRole) return as_qt(cell_text(cell));
  if (role == kSortRole) return sort_key(cell);
  if (const auto& wrong = fault(index.row()); wrong && is_address(index))
    if (QVariant said = fault_data(*wrong, role); said.isValid()) return said;
  if (role == Qt::ToolTipRole) {
    const std::string finding = cell_text(row.cells.back());
    return as_qt(finding.empty() ? cell_text(cell) : finding);
  }
  return {};
}

// Of a cell whose address is wrong: colour, a mark that stays when the column is narrow, and the sentence.
QVariant AddressModel::fault_data(const AddressFault& fault, int role) const {
  const Palette& p = snug::palette(theme_);
  const Ink ink = layout::ink_of(fault.severity);
  switch (role) {
  case Qt::ForegroundRole:
    return QBrush(colour(p, ink));
  case Qt::BackgroundRole: {
    QColor tint = colour(p, ink);
    tint.setAlpha(28);
    return QBrush(tint);
  }
  case Qt::DecorationRole:
    return severity_icon(fault.severity, p);
  case Qt::FontRole: {
    QFont font = QApplication::font();
    font.setWeight(QFont::DemiBold);
    return font;
  }
  case Qt::ToolTipRole:
  case Qt::AccessibleDescriptionRole:
    return words(fault.sentence);
  default:
    return {};
  }
}

QVariant AddressModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  return words(Term{table_.columns[static_cast<std::size_t>(section)].title});
}

bool AddressModel::is_address(const QModelIndex& index) const {
  return table_.columns[static_cast<std::size_t>(index.column())].key == "address";
}

Qt::ItemFlags AddressModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = QAbstractTableModel::flags(index);
  if (index.isValid() && is_address(index) && place(index.row()).kind == Kind::card)
    flags |= Qt::ItemIsEditable;
  return flags;
}

std::size_t AddressModel::row_of_card(int row) const {
  std::size_t before = 0;
  for (int r = row - 1; r >= 0 && place(r) == place(row); --r) ++before;
  return before;
}

bool AddressModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || !is_address(index) || value == data(index, Qt::EditRole)) return false;
  session_.seal();
  return session_.perform(set_address(session_.lab(), CardId{place(index.row()).number},
                                      row_of_card(index.row()), value.toString().toStdString()));
}

QString AddressModel::refusal(const QModelIndex& index, const QString& text) const {
  if (!is_address(index) || text == data(index, Qt::EditRole).toString()) return {};
  const auto edit = set_address(session_.lab(), CardId{place(index.row()).number}, row_of_card(index.row()),
                                text.toStdString());
  return edit ? QString() : whole_words(edit.error().message);
}

int AddressModel::row_of(AnyId id) const {
  for (int r = 0; r < rowCount(); ++r)
    if (place(r) == id) return r;
  return -1;
}

std::optional<AddressCell> AddressModel::cell(int row) const {
  if (place(row).kind != Kind::card) return std::nullopt;
  return AddressCell{CardId{place(row).number}, row_of_card(row)};
}

bool AddressModel::is_empty(int column) const {
  return std::all_of(table_.rows.begin(), table_.rows.end(), [column](const TableRow& row) {
    return std::holds_alternative<std::monostate>(row.cells[static_cast<std::size_t>(column)]);
  });
}

int AddressModel::column_of(std::string_view key) const {
  for (std::size_t c = 0; c < table_.columns.size(); ++c)
    if (table_.columns[c].key == key) return static_cast<int>(c);
  return -1;
}

namespace {

// An editor covers all of its cell. What is refused stays in it to be mended; who goes elsewhere leaves it.
class WholeCell : public QStyledItemDelegate {
 public:
  using Judge = std::function<QString(const QModelIndex&, const QString&)>; // why not; empty: it can be set
  WholeCell(Judge judge, QObject* parent) : QStyledItemDelegate(parent), judge_(std::move(judge)) {}
  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const override {
    QWidget* editor = QStyledItemDelegate::createEditor(parent, option, index);
    editing_ = index;
    if (auto* line = qobject_cast<QLineEdit*>(editor))
      connect(line, &QLineEdit::textEdited, this, [line] { mark(*line, {}); });
    return editor;
  }
  bool eventFilter(QObject* of, QEvent* event) override {
    auto* line = qobject_cast<QLineEdit*>(of);
    if (!line || event->type() != QEvent::KeyPress) return QStyledItemDelegate::eventFilter(of, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    const bool ends =
        key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Tab || key == Qt::Key_Backtab;
    const QString why = ends && editing_.isValid() ? judge_(editing_, line->text()) : QString();
    if (why.isEmpty()) return QStyledItemDelegate::eventFilter(of, event);
    mark(*line, why);
    QToolTip::showText(line->mapToGlobal(QPoint(0, line->height())), why, line);
    return true;
  }
  void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                            const QModelIndex&) const override {
    editor->setGeometry(option.rect);
  }

 private:
  static void mark(QLineEdit& line, const QString& why) {
    if (line.property("bad").toBool() == !why.isEmpty()) return;
    set_bad(line, !why.isEmpty(), why);
    line.setAccessibleDescription(why);
  }
  Judge judge_;
  mutable QPersistentModelIndex editing_;
};

} // namespace

AddressPanel::AddressPanel(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("addresses"));
  auto* box = new QVBoxLayout(this);
  box->setContentsMargins(10, 8, 10, 8);
  filter_ = new QLineEdit(this);
  filter_->setPlaceholderText(words(text::addresses_filter));
  filter_->setAccessibleName(words(text::addresses_filter));
  filter_->setToolTip(words(text::tip_filter));
  filter_->setClearButtonEnabled(true);
  filter_->setMaximumWidth(260);
  box->addWidget(filter_);
  model_ = new AddressModel(session_, this);
  proxy_ = new QSortFilterProxyModel(this);
  proxy_->setSourceModel(model_);
  proxy_->setSortRole(kSortRole);
  proxy_->setFilterKeyColumn(-1);
  proxy_->setFilterCaseSensitivity(Qt::CaseInsensitive);
  view_ = new QTableView(this);
  view_->setAccessibleName(words(text::tab_addresses));
  view_->setToolTip(words(text::tip_table));
  view_->setModel(proxy_);
  view_->setSortingEnabled(true);
  view_->sortByColumn(-1, Qt::AscendingOrder);
  view_->setSelectionBehavior(QAbstractItemView::SelectRows);
  view_->setAlternatingRowColors(true);
  view_->setShowGrid(false);
  view_->setItemDelegate(
      new WholeCell([this](const QModelIndex& at,
                           const QString& text) { return model_->refusal(proxy_->mapToSource(at), text); },
                    view_));
  view_->verticalHeader()->hide();
  view_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  view_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed);
  // What is looked for and edited stands beside the machine, whatever the width.
  QHeaderView& header = *view_->horizontalHeader();
  int place = 1;
  for (const std::string_view key : {"address", "segment", "card"})
    header.moveSection(header.visualIndex(model_->column_of(key)), place++);
  box->addWidget(view_);
  free_ = new QLabel(this);
  free_->setObjectName(QStringLiteral("free_addresses"));
  free_->setProperty("tone", QStringLiteral("muted"));
  free_->setTextFormat(Qt::PlainText);
  free_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  free_->setFocusPolicy(Qt::NoFocus);
  free_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed); // never makes the window wider
  free_->hide();
  box->addWidget(free_);
  view_->setContextMenuPolicy(Qt::CustomContextMenu);
  view_->installEventFilter(this);
  connect(view_, &QTableView::customContextMenuRequested, this, &AddressPanel::show_menu);
  connect(view_->selectionModel(), &QItemSelectionModel::selectionChanged, this, &AddressPanel::show_free);
  connect(filter_, &QLineEdit::textChanged, proxy_, &QSortFilterProxyModel::setFilterFixedString);
  connect(model_, &QAbstractItemModel::modelReset, this, &AddressPanel::show_columns);
  connect(model_, &QAbstractItemModel::dataChanged, this, &AddressPanel::show_columns);
  connect(view_, &QTableView::clicked, this, [this](const QModelIndex& at) {
    const AnyId id = model_->place(proxy_->mapToSource(at).row());
    following_ = true;
    session_.select({id});
    following_ = false;
    emit place_wanted(id);
  });
  auto* seen = new WhenSeen(*this, [this] {
    if (std::exchange(other_, false)) model_->fill();
    show_columns();
    follow_selection();
    show_free();
  });
  connect(&session_, &Session::lab_changed, this, [this, seen] {
    other_ = true;
    seen->renew();
  });
  connect(&session_, &Session::selection_changed, seen, &WhenSeen::renew);
}

// What nobody has takes no room; what somebody made wider stays so.
void AddressPanel::show_columns() {
  QHeaderView& header = *view_->horizontalHeader();
  const QAbstractItemView& cells = *view_;
  for (int c = 0; c < model_->columnCount(); ++c) {
    header.setSectionHidden(c, model_->is_empty(c));
    const int wanted = std::max(cells.sizeHintForColumn(c), header.sectionSizeHint(c)) + kBesideText;
    if (!fitted_ || header.sectionSize(c) < wanted) header.resizeSection(c, wanted);
  }
  fitted_ = model_->rowCount() > 0;
}

void AddressPanel::follow_selection() {
  if (following_) return;
  QItemSelectionModel* chosen = view_->selectionModel();
  chosen->clearSelection();
  bool first = true;
  for (int r = 0; r < model_->rowCount(); ++r) {
    const AnyId id = model_->place(r);
    const Card* card = id.kind == Kind::card ? snug::find<Card>(session_.lab(), CardId{id.number}) : nullptr;
    if (!session_.is_selected(id) && !(card && session_.is_selected(card->machine))) continue;
    const QModelIndex at = proxy_->mapFromSource(model_->index(r, 0));
    if (!at.isValid()) continue;
    chosen->select(at, QItemSelectionModel::Select | QItemSelectionModel::Rows);
    if (first) view_->scrollTo(at);
    first = false;
  }
}

void AddressPanel::edit_address(AnyId card) {
  const int row = model_->row_of(card);
  const QModelIndex at =
      row < 0 ? QModelIndex() : proxy_->mapFromSource(model_->index(row, model_->column_of("address")));
  if (!at.isValid()) return;
  view_->setFocus();
  view_->setCurrentIndex(at);
  view_->edit(at);
}

} // namespace snug
