#pragma once
// The files opened last, newest first. Kept in the settings; losing them loses nothing else.

#include <QStringList>

namespace snug {

class Recent {
 public:
  static constexpr int kMost = 10;
  QStringList files() const; // existing or not
  void add(const QString& path);
  void remove(const QString& path);
  void clear();
};

} // namespace snug
