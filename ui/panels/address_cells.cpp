// Several cells of the address table at once, and what is free beside them.

#include "core/addressing/free_spans.h"
#include "core/text/base_text.h"
#include "core/text/clip_text.h"
#include "ui/panels/address_panel.h"
#include "ui/session/words.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QSortFilterProxyModel>
#include <QTableView>

#include <algorithm>

namespace snug {

namespace {

const QKeySequence kNumberOn(Qt::CTRL | Qt::Key_D);

bool is(const QKeyEvent& event, const QKeySequence& keys) {
  return QKeySequence(event.keyCombination()) == keys;
}

} // namespace

std::vector<AddressCell> AddressPanel::chosen(bool onward) const {
  std::vector<int> rows; // of the view
  for (const QModelIndex& at : view_->selectionModel()->selectedRows()) rows.push_back(at.row());
  std::sort(rows.begin(), rows.end());
  if (onward && rows.size() == 1)
    for (int next = rows.front() + 1; next < proxy_->rowCount(); ++next) rows.push_back(next);
  std::vector<AddressCell> out;
  for (const int row : rows)
    if (const auto cell = model_->cell(proxy_->mapToSource(proxy_->index(row, 0)).row()))
      out.push_back(*cell);
  return out;
}

void AddressPanel::perform(Result<Edit> edit, std::span<const AddressCell> cells) {
  if (!edit) return session_.tell(edit.error());
  session_.seal();
  if (!session_.perform(std::move(*edit))) return;
  std::vector<AnyId> cards;
  for (const AddressCell& cell : cells) cards.emplace_back(cell.card);
  session_.select(std::move(cards));
}

void AddressPanel::paste() {
  std::vector<std::string> lines = pasted_addresses(QGuiApplication::clipboard()->text().toStdString());
  if (lines.empty()) return session_.tell(Notice::Kind::caution, whole_words(say(text::paste_none)));
  std::vector<AddressCell> cells = chosen(true);
  const std::size_t count = std::min(lines.size(), cells.size()), copied = lines.size();
  lines.resize(count);
  cells.resize(count);
  perform(set_addresses(session_.lab(), cells, lines), cells);
  if (count < copied)
    session_.tell(Notice::Kind::caution,
                  words(text::paste_more, std::to_string(copied), std::to_string(count)));
}

void AddressPanel::number_chosen() {
  const std::vector<AddressCell> cells = chosen(false);
  perform(number_on(session_.lab(), cells), cells);
}

void AddressPanel::suggest_chosen() {
  const std::vector<AddressCell> cells = chosen(false);
  perform(suggest_again(session_.lab(), cells), cells);
}

void AddressPanel::fill(QMenu& menu) {
  menu.clear();
  const std::size_t count = chosen(false).size();
  menu.addAction(words(text::act_paste_addresses), this, &AddressPanel::paste)->setEnabled(count > 0);
  menu.addAction(words(text::act_number_on), this, &AddressPanel::number_chosen)->setEnabled(count > 1);
  menu.addAction(words(text::act_suggest_again), this, &AddressPanel::suggest_chosen)->setEnabled(count > 0);
}

void AddressPanel::show_menu(QPoint at) {
  QMenu menu(this);
  fill(menu);
  menu.actions()[0]->setShortcut(QKeySequence(QKeySequence::Paste)); // of the table, see below
  menu.actions()[1]->setShortcut(kNumberOn);
  menu.exec(view_->viewport()->mapToGlobal(at));
}

// The keys of the table come before those of the window.
bool AddressPanel::eventFilter(QObject* of, QEvent* event) {
  const bool asks = event->type() == QEvent::ShortcutOverride;
  if (of != view_ || (!asks && event->type() != QEvent::KeyPress)) return QWidget::eventFilter(of, event);
  const auto& key = static_cast<const QKeyEvent&>(*event);
  const bool pastes = is(key, QKeySequence(QKeySequence::Paste)), numbers = is(key, kNumberOn);
  if (!pastes && !numbers) return QWidget::eventFilter(of, event);
  event->accept();
  if (asks) return true;
  pastes ? paste() : number_chosen();
  return true;
}

void AddressPanel::show_free() {
  constexpr std::size_t kMost = 6;
  const std::vector<AddressCell> cells = chosen(false);
  const Lab& lab = session_.lab();
  const Card* card = cells.empty() ? nullptr : snug::find<Card>(lab, cells.front().card);
  const Analysis& a = session_.analysis();
  const std::uint32_t segment = card ? a.index().place(card->segment) : kNowhere;
  free_->setVisible(segment != kNowhere && a.addresses().prefix4(segment));
  if (free_->isHidden()) return;
  const std::vector<AddressRange> spans = free_spans(a.index(), a.addresses(), segment, kMost + 1);
  std::vector<Message> said;
  for (std::size_t i = 0; i < std::min(spans.size(), kMost); ++i)
    said.push_back(spans[i].first == spans[i].last
                       ? say(text::plain, to_text(spans[i].first))
                       : say(text::addresses_span, to_text(spans[i].first), to_text(spans[i].last)));
  const std::string name = name_of(lab, card->segment);
  free_->setText(spans.empty()
                     ? words(text::addresses_none_free, name)
                     : words(spans.size() > kMost ? text::addresses_free_more : text::addresses_free, name,
                             std::move(said)));
  free_->setToolTip(free_->text());
}

} // namespace snug
