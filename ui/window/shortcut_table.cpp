#include "ui/window/shortcut_table.h"

#include "core/text/keys_text.h"
#include "ui/session/words.h"

#include <QAction>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>

#include <algorithm>

namespace snug {

namespace {

QString bare(QString text) { return text.remove(QLatin1Char('&')).remove(QStringLiteral("…")); }

std::string shown(const QKeySequence& keys) { return keys.toString(QKeySequence::NativeText).toStdString(); }

// Without Ctrl, Alt or Meta only these are no use to somebody who types or moves about.
bool stands_alone(Qt::Key key) {
  return (key >= Qt::Key_F1 && key <= Qt::Key_F35) || key == Qt::Key_Delete || key == Qt::Key_Insert ||
         key == Qt::Key_Help || key == Qt::Key_Print || key == Qt::Key_Pause;
}

QString tip(const QAction& a, const QKeySequence& keys) {
  const QString title = QString(a.text()).remove(QLatin1Char('&'));
  return keys.isEmpty() ? title : title + QStringLiteral(" (") + as_qt(shown(keys)) + QLatin1Char(')');
}

QStringList written(const QList<QKeySequence>& keys) {
  QStringList out;
  for (const QKeySequence& k : keys) out << k.toString(QKeySequence::PortableText);
  return out;
}

// As they stand in the row's places, without the empty ones at the end.
QList<QKeySequence> trimmed(QList<QKeySequence> keys) {
  while (!keys.isEmpty() && keys.back().isEmpty()) keys.removeLast();
  return keys;
}

bool has(const QList<QKeySequence>& keys, const QKeySequence& wanted) {
  return std::any_of(keys.begin(), keys.end(),
                     [&](const QKeySequence& k) { return !k.isEmpty() && k == wanted; });
}

bool share(const QList<QKeySequence>& a, const QList<QKeySequence>& b) {
  return std::any_of(a.begin(), a.end(), [&b](const QKeySequence& k) { return has(b, k); });
}

} // namespace

ShortcutTable::ShortcutTable(QMainWindow& window, Settings& settings,
                             std::function<void(const Result<void>&)> kept)
    : QObject(&window), window_(window), settings_(settings), kept_(std::move(kept)) {
  for (const QAction* a : window.menuBar()->actions())
    if (a->menu()) collect(*a->menu(), bare(a->text()));
}

void ShortcutTable::collect(const QMenu& menu, const QString& in) {
  for (QAction* a : menu.actions()) {
    if (a->menu())
      collect(*a->menu(), bare(a->text()));
    else if (!a->isSeparator() && !a->objectName().isEmpty())
      rows_.push_back({a, in, bare(a->text()), a->shortcuts()});
  }
}

QKeySequence ShortcutTable::keys(const Row& row, int place) const {
  return row.action->shortcuts().value(place);
}

bool ShortcutTable::is_changed(const Row& row) const { return row.action->shortcuts() != row.built; }

std::optional<Message> ShortcutTable::refusal(const QKeySequence& keys) const {
  const QKeyCombination pressed = keys.count() == 1 ? keys[0] : QKeyCombination(Qt::Key_unknown);
  const Qt::Key key = pressed.key();
  const Qt::KeyboardModifiers with = pressed.keyboardModifiers();
  const bool held = (with & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) != 0;
  if (key == Qt::Key_Tab || key == Qt::Key_Backtab) return say(text::keys_round, shown(keys));
  if (key == Qt::Key_Menu || (key == Qt::Key_F10 && with == Qt::ShiftModifier))
    return say(text::keys_own_menu, shown(keys));
  if (key == Qt::Key_unknown || (!held && !stands_alone(key))) return say(text::keys_bare, shown(keys));
  for (const QAction* a : window_.menuBar()->actions())
    if (QKeySequence::mnemonic(a->text()) == keys)
      return say(text::keys_menu, shown(keys), bare(a->text()).toStdString());
  return std::nullopt;
}

const ShortcutTable::Row* ShortcutTable::holder(const QKeySequence& keys, const Row& but) const {
  const auto at = std::find_if(rows_.begin(), rows_.end(), [&](const Row& r) {
    return r.action != but.action && has(r.action->shortcuts(), keys);
  });
  return at == rows_.end() ? nullptr : &*at;
}

// A tool tip of an action's own words is left alone.
void ShortcutTable::give(const Row& row, QList<QKeySequence> keys) {
  QAction& a = *row.action;
  const bool names_keys = a.toolTip() == tip(a, a.shortcut()) || a.toolTip() == tip(a, {});
  a.setShortcuts(trimmed(std::move(keys)));
  if (names_keys) a.setToolTip(tip(a, a.shortcut()));
}

void ShortcutTable::withdraw(const QKeySequence& keys, const Row& from) {
  QList<QKeySequence> left = from.action->shortcuts();
  for (QKeySequence& k : left)
    if (k == keys) k = {};
  give(from, left);
}

void ShortcutTable::change(const Row& row, int place, const QKeySequence& keys) {
  if (const Row* other = keys.isEmpty() ? nullptr : holder(keys, row)) withdraw(keys, *other);
  QList<QKeySequence> now = row.action->shortcuts();
  for (QKeySequence& k : now)
    if (k == keys) k = {};
  now.resize(std::max(static_cast<int>(now.size()), place + 1));
  now[place] = keys;
  give(row, now);
  keep();
}

void ShortcutTable::restore(const Row& row) {
  for (const QKeySequence& k : row.built)
    if (const Row* other = holder(k, row)) withdraw(k, *other);
  give(row, row.built);
  keep();
}

void ShortcutTable::restore_all() {
  for (const Row& row : rows_) give(row, row.built);
  keep();
}

void ShortcutTable::keep() {
  kept_(settings_.change([this](Remembered& r) {
    for (const Row& row : rows_) {
      const QString name = row.action->objectName();
      if (is_changed(row))
        r.keys[name] = written(row.action->shortcuts());
      else
        r.keys.remove(name);
    }
  }));
  emit changed();
}

QStringList ShortcutTable::take() {
  std::vector<QList<QKeySequence>> wanted;
  QStringList dropped;
  const auto drop = [&](std::size_t at) {
    wanted[at] = rows_[at].built;
    dropped << rows_[at].title;
  };
  for (const Row& row : rows_) {
    wanted.push_back(row.built);
    const auto said = settings_.get().keys.find(row.action->objectName());
    if (said == settings_.get().keys.end()) continue;
    QList<QKeySequence> keys;
    for (const QString& k : *said) keys << QKeySequence::fromString(k, QKeySequence::PortableText);
    const bool usable = keys.size() <= row.places() &&
                        std::none_of(keys.begin(), keys.end(),
                                     [this](const QKeySequence& k) { return !k.isEmpty() && refusal(k); });
    wanted.back() = trimmed(keys);
    if (!usable || written(keys) != *said) drop(wanted.size() - 1);
  }
  // As built no two have the same keys, so this ends.
  for (std::size_t i = 0; i < rows_.size(); ++i)
    for (std::size_t j = 0; j < rows_.size(); ++j)
      if (i != j && wanted[i] != rows_[i].built && share(wanted[i], wanted[j])) {
        drop(i);
        i = static_cast<std::size_t>(-1);
        break;
      }
  for (std::size_t i = 0; i < rows_.size(); ++i)
    if (wanted[i] != rows_[i].action->shortcuts()) give(rows_[i], wanted[i]);
  emit changed();
  return dropped;
}

} // namespace snug
