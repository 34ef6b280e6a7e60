#include "core/report/tables.h"
#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace snug::test {
namespace {

std::string name_server(const Lab& lab, CardId card) {
  const Analysis a(lab);
  const Table t = address_table(a);
  const auto column =
      std::find_if(t.columns.begin(), t.columns.end(), [](const TableColumn& c) { return c.key == "names"; });
  for (const TableRow& row : t.rows)
    if (row.place == AnyId(card))
      return cell_text(row.cells[static_cast<std::size_t>(column - t.columns.begin())]);
  ADD_FAILURE() << "no row";
  return {};
}

// A name server behind a router counts where question and answer both get through.
TEST(AddressTable, ANameServerIsFoundOverRouters) {
  World w;
  const SegmentId pier = w.add_segment("Pier", "172.22.60.0/24");
  w.card(w.add_card(w.router, pier, "172.22.60.1")).forwards4 = true;
  const MachineId far = w.add_machine("far");
  const CardId card = w.add_card(far, pier, "172.22.60.40");
  const auto lead = [&](MachineId m, const char* via) {
    Route r;
    r.via = address(via);
    w.machine(m).routes = {r};
  };
  lead(far, "172.22.60.1");
  lead(w.pilot, "172.22.10.1");
  EXPECT_EQ(name_server(w.lab, card), "172.22.10.10, over routers");
  w.machine(w.pilot).routes.clear();
  EXPECT_EQ(name_server(w.lab, card), "none: nobody it reaches offers names") << "no answer comes back";
}

} // namespace
} // namespace snug::test
