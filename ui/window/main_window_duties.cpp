// What a chosen card does for its segment and for the guests inside: the ways of the menu to what hands do on
// the picture.

#include "core/gesture/bands.h"
#include "core/gesture/carry.h"
#include "core/gesture/duty.h"
#include "core/text/hand_text.h"
#include "core/text/window_text.h"
#include "ui/session/words.h"
#include "ui/window/main_window.h"

#include <QAction>
#include <QMenu>

#include <algorithm>

namespace snug {

void MainWindow::own_row() {
  session_.seal();
  session_.perform(own_band(session_.lab(), machines_chosen()));
}

const Card* MainWindow::card_chosen() const {
  const std::vector<AnyId>& ids = session_.selection();
  if (ids.size() != 1 || ids.front().kind != Kind::card) return nullptr;
  return snug::find<Card>(session_.lab(), CardId{ids.front().number});
}

void MainWindow::make_duty_actions(QMenu& menu) {
  add(menu, "socket", text::act_socket, {}, [this] { toggle_socket(); });
  add(menu, "hold", text::act_hold, {}, [this] { hold_chosen(); })->setCheckable(true);
  add(menu, "own_row", text::act_own_row, {}, [this] { own_row(); });
  add(menu, "gateway", text::act_gateway, {}, [this] { toggle_duty(Duty::gateway); })->setCheckable(true);
  add(menu, "dhcp_server", text::act_dhcp, {}, [this] { toggle_duty(Duty::dhcp); })->setCheckable(true);
  QMenu* carry = menu.addMenu(words(text::menu_carry));
  carry->menuAction()->setObjectName(QStringLiteral("carry"));
  connect(carry, &QMenu::aboutToShow, this, [this, carry] { fill_carry_menu(*carry); });
}

void MainWindow::toggle_duty(Duty duty) {
  const Card* card = card_chosen();
  if (!card || !card->segment) return;
  session_.seal();
  const Analysis& a = session_.analysis();
  if (holder_of(a.index(), a.addresses(), duty, card->segment) == card->id)
    session_.perform(take_duty(session_.lab(), duty, card->segment));
  else
    session_.perform(give_duty(session_.lab(), duty, card->segment, card->id));
  refresh_duties(); // the click has turned it
}

void MainWindow::refresh_duties() {
  const Card* card = card_chosen();
  const Analysis& a = session_.analysis();
  for (const auto& [name, duty] : {std::pair{"gateway", Duty::gateway}, {"dhcp_server", Duty::dhcp}}) {
    action(name)->setEnabled(card && card->segment);
    action(name)->setChecked(card && card->segment &&
                             holder_of(a.index(), a.addresses(), duty, card->segment) == card->id);
  }
  action("carry")->setEnabled(card && a.index().is_hypervisor(a.index().place(card->machine)));
}

void MainWindow::fill_carry_menu(QMenu& menu) {
  menu.clear();
  const Card* card = card_chosen();
  if (!card) return;
  for (const Segment& s : session_.lab().segments) {
    const bool carried = std::any_of(card->carries.begin(), card->carries.end(),
                                     [&](const SegmentTag& t) { return t.segment == s.id; });
    QAction* a = menu.addAction(as_qt(name_of(session_.lab(), s.id)));
    a->setCheckable(true);
    a->setChecked(carried);
    connect(a, &QAction::triggered, this, [this, id = card->id, segment = s.id, carried] {
      session_.seal();
      session_.perform(carried ? carry_no_more(session_.lab(), id, segment)
                               : carry(session_.lab(), id, segment));
    });
  }
}

} // namespace snug
