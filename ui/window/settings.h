#pragma once
// What the window remembers from one time to the next. Losing it loses no work (RELIABILITY 35).

#include "core/base/result.h"

#include <QByteArray>
#include <QList>
#include <QMap>
#include <QRect>
#include <QStringList>

#include <functional>
#include <optional>

namespace snug {

// Of a panel: as the window's width lets it be, or as a person wanted it.
enum class Folded : std::uint8_t { by_width, open, folded };
enum class Colours : std::uint8_t { desktop, light, dark };

struct Remembered {
  static constexpr int kMostRecent = 10;
  QStringList recent; // files opened last, absolute, newest first; existing or not
  QRect window;       // when it was closed last and not maximised; null: never
  bool maximised = false;
  Colours colours = Colours::desktop;
  Folded left = Folded::by_width, right = Folded::by_width, below = Folded::by_width; // of the picture
  QList<int> across, down;         // what the splitters divide, pixels; panels as they are when they are
                                   // open; empty: as built
  QMap<QString, QStringList> keys; // of actions whose keys a person changed, by their object name: one for
                                   // each place, as portable text; empty: none
  friend bool operator==(const Remembered&, const Remembered&) = default;
};
QByteArray write_settings(const Remembered&);
// Nothing: not what write_settings made.
std::optional<Remembered> read_settings(const QByteArray&);

// Moves and shrinks a window so that all of it is on one of the screens (at least one).
QRect on_screens(QRect window, const QList<QRect>& screens);

class Settings {
 public:
  // Reads the file and keeps what is changed in it from now on; without one (as at first) nothing outlives
  // the program. A damaged file is set aside as NAME.damaged; what is returned says so, defaults hold.
  std::optional<Problem> keep_in(const QString& file);
  const Remembered& get() const { return now_; }
  // Written at once, by the save routine. Another window may have written in between: what it remembers is
  // read before.
  Result<void> change(const std::function<void(Remembered&)>& act);

  Result<void> add_recent(const QString& path);
  Result<void> forget_recent();

 private:
  std::optional<Problem> read();
  Problem set_aside() const;

  QString file_;
  Remembered now_;
};

} // namespace snug
