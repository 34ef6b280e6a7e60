#include "ui/outline/outline_model.h"

#include "core/gesture/plug.h"
#include "core/gesture/set.h"
#include "core/model/field_text.h"
#include "core/text/outline_text.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QApplication>
#include <QFont>

namespace snug {

namespace {

constexpr int kNames = 0;

// The field of the second column; null: it is not edited there.
const FieldInfo* detail_field(Kind kind) {
  switch (kind) {
  case Kind::pc:
    return info_of(kind).field("installed");
  case Kind::machine:
    return info_of(kind).field("memory");
  case Kind::disk:
  case Kind::volume:
    return info_of(kind).field("size");
  case Kind::segment:
  case Kind::lan:
    return info_of(kind).field("prefix4");
  case Kind::exercise:
    return info_of(kind).field("date");
  default:
    return nullptr;
  }
}

} // namespace

OutlineModel::OutlineModel(Session& session, QObject* parent)
    : QAbstractItemModel(parent), session_(session) {}

void OutlineModel::fill() {
  std::vector<OutlineNode> next = outline_of(session_.analysis(), session_.exercise());
  if (!nodes_.empty() && same_places(next, nodes_)) {
    nodes_ = std::move(next);
    for (const OutlineNode& node : nodes_)
      if (!node.children.empty()) emit dataChanged(at(node.children.front()), at(node.children.back(), 1));
    emit dataChanged(at(tops_.front()), at(tops_.back(), 1));
    return;
  }
  beginResetModel();
  nodes_ = std::move(next);
  tops_.clear();
  for (std::size_t i = 0; i < nodes_.size(); ++i)
    if (nodes_[i].parent < 0) tops_.push_back(static_cast<int>(i));
  endResetModel();
}

QModelIndex OutlineModel::at(int place, int column) const {
  return createIndex(nodes_[static_cast<std::size_t>(place)].row, column, static_cast<quintptr>(place));
}

QModelIndex OutlineModel::index(int row, int column, const QModelIndex& parent) const {
  const std::vector<int>& places = parent.isValid() ? node(parent).children : tops_;
  if (row < 0 || column < 0 || column >= columnCount() || static_cast<std::size_t>(row) >= places.size())
    return {};
  return at(places[static_cast<std::size_t>(row)], column);
}

QModelIndex OutlineModel::parent(const QModelIndex& child) const {
  if (!child.isValid() || node(child).parent < 0) return {};
  return at(node(child).parent);
}

int OutlineModel::rowCount(const QModelIndex& parent) const {
  if (parent.isValid() && parent.column() != kNames) return 0;
  return static_cast<int>(parent.isValid() ? node(parent).children.size() : tops_.size());
}

AnyId OutlineModel::id(const QModelIndex& index) const { return index.isValid() ? node(index).id : AnyId{}; }

QVariant OutlineModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  return words(section == 0 ? text::outline_column_name : text::outline_column_detail);
}

bool OutlineModel::is_open_at_first(const QModelIndex& index) const {
  const OutlineNode& n = node(index);
  if (!n.id || n.id.kind == Kind::pc) return true;
  return !n.children.empty() && nodes_[static_cast<std::size_t>(n.children.front())].id.kind == Kind::machine;
}

QModelIndexList OutlineModel::rows_of(AnyId id) const {
  QModelIndexList out;
  for (std::size_t i = 0; id && i < nodes_.size(); ++i)
    if (nodes_[i].id == id) out << at(static_cast<int>(i));
  return out;
}

std::uint64_t OutlineModel::key(const QModelIndex& index) const {
  const OutlineNode& n = node(index);
  const AnyId above = n.parent < 0 ? AnyId{} : nodes_[static_cast<std::size_t>(n.parent)].id;
  if (!n.id) return static_cast<std::uint64_t>(qHash(n.name));
  return std::hash<AnyId>()(n.id) * 0x9e3779b97f4a7c15ULL ^ std::hash<AnyId>()(above);
}

QString OutlineModel::text_to_edit(AnyId id, int column) const {
  const Lab& lab = session_.lab();
  const FieldInfo* field = column == kNames ? info_of(id.kind).field("name") : detail_field(id.kind);
  if (field) return as_qt(line_of(*field, field->get(object_at(lab, id))));
  const Card* card = snug::find<Card>(lab, CardId{id.number});
  const bool typed = !card->addresses.empty() && card->addresses.front().address;
  return typed ? as_qt(to_text(*card->addresses.front().address)) : QString();
}

QVariant OutlineModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const OutlineNode& n = node(index);
  const QString& shown = index.column() == kNames ? n.name : n.detail;
  switch (role) {
  case Qt::DisplayRole:
    return shown;
  case Qt::EditRole:
    return n.id ? text_to_edit(n.id, index.column()) : QString();
  case Qt::ToolTipRole:
  case Qt::AccessibleTextRole:
    return index.column() == kNames && !n.detail.isEmpty() ? n.name + QStringLiteral(", ") + n.detail : shown;
  case Qt::ForegroundRole:
    if (index.column() != kNames || n.is_off) return QApplication::palette().brush(QPalette::PlaceholderText);
    return {};
  case Qt::FontRole: {
    QFont font = QApplication::font();
    if (!n.id) font.setWeight(QFont::DemiBold);
    return font;
  }
  default:
    return {};
  }
}

Qt::ItemFlags OutlineModel::flags(const QModelIndex& index) const {
  if (!index.isValid()) return Qt::NoItemFlags;
  const AnyId id = node(index).id;
  if (!id) return Qt::ItemIsEnabled;
  Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
  if (index.column() == kNames || id.kind == Kind::card || detail_field(id.kind)) flags |= Qt::ItemIsEditable;
  return flags;
}

Result<Edit> OutlineModel::edit_for(AnyId id, int column, const std::string& typed) const {
  const Lab& lab = session_.lab();
  if (column == kNames) return rename(lab, id, typed);
  if (id.kind == Kind::card) return set_address(lab, CardId{id.number}, 0, typed);
  const FieldInfo& field = *detail_field(id.kind);
  const auto value = value_of_line(field, typed);
  if (!value) return fail(value.error());
  const std::vector<AnyId> one{id};
  return set_fields(lab, one, field, *value);
}

bool OutlineModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || !index.isValid() || value == data(index, Qt::EditRole)) return false;
  const AnyId id = node(index).id;
  if (!id) return false;
  session_.seal();
  return session_.perform(edit_for(id, index.column(), value.toString().toStdString()));
}

} // namespace snug
