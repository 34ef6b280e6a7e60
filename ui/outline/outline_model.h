#pragma once
// The outline for a view: two columns, the name and what belongs to it, both edited in place.

#include "ui/outline/outline_tree.h"
#include "ui/session/session.h"

#include <QAbstractItemModel>

namespace snug {

class OutlineModel : public QAbstractItemModel {
  Q_OBJECT

 public:
  explicit OutlineModel(Session& session, QObject* parent = nullptr);

  // Follows the lab; the places of rows are kept where the tree has the same elements.
  void fill();

  QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
  QModelIndex parent(const QModelIndex& child) const override;
  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& = {}) const override { return 2; }
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override; // is only spoken
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

  AnyId id(const QModelIndex& index) const; // none: a heading
  // The PC, headings and hypervisors; cards and disks are shown when asked for.
  bool is_open_at_first(const QModelIndex& index) const;
  // All rows of an element: a card stands below its machine and below its segments.
  QModelIndexList rows_of(AnyId id) const;
  // The same as long as the element stands below the same one.
  std::uint64_t key(const QModelIndex& index) const;

 private:
  const OutlineNode& node(const QModelIndex& index) const {
    return nodes_[static_cast<std::size_t>(index.internalId())];
  }
  QModelIndex at(int place, int column = 0) const;
  QString text_to_edit(AnyId id, int column) const;
  Result<Edit> edit_for(AnyId id, int column, const std::string& typed) const;

  Session& session_;
  std::vector<OutlineNode> nodes_;
  std::vector<int> tops_;
};

} // namespace snug
