#pragma once
// A row that goes on in the next line where it has no room.

#include <QLayout>

#include <memory>
#include <vector>

namespace snug {

class FlowLayout : public QLayout {
 public:
  explicit FlowLayout(QWidget* parent, int gap = 6);
  ~FlowLayout() override;

  void addItem(QLayoutItem* item) override;
  int count() const override { return static_cast<int>(items_.size()); }
  QLayoutItem* itemAt(int at) const override;
  QLayoutItem* takeAt(int at) override;
  bool hasHeightForWidth() const override { return true; }
  int heightForWidth(int width) const override;
  QSize minimumSize() const override;
  QSize sizeHint() const override;
  void setGeometry(const QRect&) override;

 private:
  int lay(const QRect& room, bool place) const; // returns the height
  std::vector<QLayoutItem*> items_;
  int gap_;
};

} // namespace snug
