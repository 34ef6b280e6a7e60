#pragma once
// The address table, live: sorted, filtered, its addresses edited in place.

#include "core/gesture/addresses.h"
#include "core/layout/palette.h"
#include "core/report/tables.h"
#include "ui/session/session.h"

#include <QAbstractTableModel>
#include <QWidget>

class QLabel;
class QLineEdit;
class QMenu;
class QSortFilterProxyModel;
class QTableView;

namespace snug {

class AddressModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  explicit AddressModel(Session& session, QObject* parent = nullptr);

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;

  AnyId place(int row) const { return table_.rows[static_cast<std::size_t>(row)].place; }
  int row_of(AnyId place) const; // -1: none
  // The cell of a row that is a card's; nothing for others (a socket, a router).
  std::optional<AddressCell> cell(int row) const;
  int column_of(std::string_view key) const;
  bool is_empty(int column) const;

  // Takes what the session's analysis says now.
  void fill();
  void set_theme(Theme theme);
  // Why a cell cannot be given this text; empty: it can.
  QString refusal(const QModelIndex& index, const QString& text) const;
  // What is wrong with the address of a row; nothing.
  const std::optional<AddressFault>& fault(int row) const { return faults_[static_cast<std::size_t>(row)]; }

 private:
  bool is_address(const QModelIndex& index) const;
  QVariant fault_data(const AddressFault& fault, int role) const;
  std::size_t row_of_card(int row) const; // which of the card's addresses

  void take(Table next);

  Session& session_;
  Table table_;
  std::vector<std::optional<AddressFault>> faults_; // by row
  Theme theme_ = Theme::light;
};

class AddressPanel : public QWidget {
  Q_OBJECT

 public:
  explicit AddressPanel(Session& session, QWidget* parent = nullptr);
  // Stands over the table unless somebody takes it to another place.
  QLineEdit& filter() const { return *filter_; }
  QTableView& view() { return *view_; }
  // Opens the editor of a card's first address.
  void edit_address(AnyId card);
  void set_theme(Theme theme) { model_->set_theme(theme); }
  // Several cells at once: lines of the clipboard from the chosen row on (or into the chosen rows), numbers
  // behind the first of the chosen rows, suggestions for them.
  void paste();
  void number_chosen();
  void suggest_chosen();
  void fill(QMenu& menu); // with these three

 signals:
  void place_wanted(snug::AnyId id);

 protected:
  bool eventFilter(QObject*, QEvent*) override; // of the table: keys

 private:
  void show_columns();
  void follow_selection();
  void show_free();
  void show_menu(QPoint at);
  // Of the chosen rows from top to bottom; where one row is chosen and `onward`, of it and all below.
  std::vector<AddressCell> chosen(bool onward) const;
  void perform(Result<Edit>, std::span<const AddressCell>);

  Session& session_;
  AddressModel* model_;
  QSortFilterProxyModel* proxy_;
  QTableView* view_;
  QLineEdit* filter_;
  QLabel* free_;        // what is free on the segment of the chosen row
  bool fitted_ = false; // columns to what is in them
  bool following_ = false;
  bool other_ = true; // the lab is another than was filled in
};

} // namespace snug
