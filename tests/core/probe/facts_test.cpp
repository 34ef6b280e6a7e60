#include "core/probe/facts.h"
#include "core/probe/pc_element.h"

#include "tests/support/file_tree.h"
#include "tests/support/hostile.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

#include <fstream>
#include <map>

namespace snug {
namespace {

using test::FileTree;

AddressWithLength net(std::string_view text) { return parse_address_with_length(text).value(); }
Prefix prefix(std::string_view text) { return parse_prefix(text).value(); }
Address address(std::string_view text) { return parse_address(text).value(); }

PcFacts probed(const FileTree& tree) { return probe({tree.root(), {}, {}}); }
PcFacts probed(const std::string& file) { return probed(FileTree::from_data("probe/" + file)); }

TEST(Probe, LaptopMemoryAndProcessor) {
  const PcFacts facts = probed("laptop.tree");
  EXPECT_EQ(facts.memory.installed_mib, 16384);
  EXPECT_EQ(facts.memory.usable_mib, 15729);
  EXPECT_EQ(facts.processor.threads, 6);
  EXPECT_EQ(facts.processor.cores, 4);
  EXPECT_EQ(facts.processor.efficiency_cores, 2);
  EXPECT_EQ(facts.processor.is_64_bit, true);
  EXPECT_EQ(facts.processor.virtualization, true);
  EXPECT_EQ(facts.processor.firmware_switch, true);
  EXPECT_EQ(facts.processor.under_hypervisor, false);
  EXPECT_EQ(facts.processor.second_level_translation, true);
  EXPECT_EQ(facts.processor.nested_virtualization, true);
}

// Binds and the boot volume are left out, an encrypted volume has the kind of the drive below it, and a
// volume that is mounted in parts counts once.
TEST(Probe, LaptopVolumes) {
  const FileTree tree = FileTree::from_data("probe/laptop.tree");
  std::vector<std::string> asked;
  const auto space = [&](const std::string& point) -> std::optional<VolumeSpace> {
    asked.push_back(point);
    if (point != "/") return std::nullopt;
    return VolumeSpace{std::uint64_t{500} << 30U, std::uint64_t{123} << 30U};
  };
  const PcFacts facts = probe({tree.root(), space, {}});
  const std::vector<VolumeFacts> expected{{"/", "dm-0", "ext4", 512000, 125952, DriveKind::nvme},
                                          {"/home", "nvme0n1p3", "btrfs", {}, {}, DriveKind::nvme}};
  EXPECT_EQ(facts.volumes, expected);
  EXPECT_EQ(asked, (std::vector<std::string>{"/", "/home"}));
}

TEST(Probe, LaptopCards) {
  const FileTree tree = FileTree::from_data("probe/laptop.tree");
  const auto addresses = [] {
    return std::vector<InterfaceAddress>{{"lo", net("127.0.0.1/8")},
                                         {"wlan0", net("192.168.2.31/24")},
                                         {"wlan0", net("192.168.2.32/24")},
                                         {"wlan0", net("fe80::1:2/64")},
                                         {"bridge0", net("10.9.0.1/16")}};
  };
  const PcFacts facts = probe({tree.root(), {}, addresses});
  const CardFacts bridge{"bridge0", false, false, {}, 1500, {net("10.9.0.1/16")}, {prefix("10.9.0.0/16")},
                         {}};
  const CardFacts dock{"eth1", true, {}, LinkMedium::wired, 9000, {}, {}, {}};
  const CardFacts wireless{"wlan0",
                           true,
                           true,
                           LinkMedium::wireless,
                           1500,
                           {net("192.168.2.31/24"), net("192.168.2.32/24"), net("fe80::1:2/64")},
                           {prefix("192.168.2.0/24")},
                           {address("192.168.2.254"), address("fe80::1")}};
  EXPECT_EQ(facts.cards, (std::vector<CardFacts>{bridge, dock, wireless}));
}

TEST(Probe, DesktopWithoutVirtualization) {
  const PcFacts facts = probed("desktop.tree");
  EXPECT_EQ(facts.memory.installed_mib, std::nullopt);
  EXPECT_EQ(facts.processor.cores, 4);
  EXPECT_EQ(facts.processor.efficiency_cores, std::nullopt);
  EXPECT_EQ(facts.processor.virtualization, false);
  EXPECT_EQ(facts.processor.firmware_switch, std::nullopt);
  EXPECT_EQ(facts.processor.under_hypervisor, false);
  EXPECT_EQ(facts.processor.second_level_translation, std::nullopt);
  EXPECT_EQ(facts.processor.nested_virtualization, std::nullopt);
  std::map<std::string, std::optional<DriveKind>> kinds;
  for (const VolumeFacts& volume : facts.volumes.value()) kinds[volume.mount_point] = volume.kind;
  const std::map<std::string, std::optional<DriveKind>> expected{{"/", DriveKind::spinning},
                                                                 {"/both", std::nullopt},
                                                                 {"/fast disk", DriveKind::flash},
                                                                 {"/media/stick", DriveKind::usb}};
  EXPECT_EQ(kinds, expected);
  EXPECT_EQ(facts.cards.value().at(0).medium, LinkMedium::wired);
}

TEST(Probe, BoardWithoutFlags) {
  const PcFacts facts = probed("board.tree");
  EXPECT_EQ(facts.memory.usable_mib, 3793);
  EXPECT_EQ(facts.processor.threads, 4);
  EXPECT_EQ(facts.processor.cores, std::nullopt); // three threads have no topology
  EXPECT_EQ(facts.processor.is_64_bit, true);
  EXPECT_EQ(facts.processor.virtualization, std::nullopt);
  EXPECT_EQ(facts.processor.under_hypervisor, std::nullopt);
  EXPECT_EQ(facts.volumes.value().at(0).kind, DriveKind::flash);
  EXPECT_EQ(facts.cards, std::nullopt);
}

TEST(Probe, GuestIsNotBelieved) {
  const PcFacts facts = probed("guest.tree");
  EXPECT_EQ(facts.processor.under_hypervisor, true);
  EXPECT_EQ(facts.processor.firmware_switch, true);
  EXPECT_EQ(facts.processor.second_level_translation, false);
  EXPECT_EQ(facts.processor.nested_virtualization, false);
  EXPECT_EQ(facts.volumes.value().at(0).kind, std::nullopt);
  EXPECT_EQ(facts.cards.value().at(0).medium, std::nullopt);
  EXPECT_EQ(facts.cards.value().at(0).mtu, std::nullopt); // RFC 791: no link may carry less than 68
}

// The firmware of a PC that is a guest itself is not known, whatever its processor shows; on a real one a
// processor without virtualization has it lacking or switched off.
TEST(Probe, FirmwareIsNotGuessedInAGuest) {
  for (const auto& [under, told] : {std::pair{std::optional<bool>(true), Known::unknown},
                                    {std::optional<bool>(), Known::unknown},
                                    {std::optional<bool>(false), Known::no}}) {
    PcFacts facts;
    facts.processor.virtualization = false;
    facts.processor.under_hypervisor = under;
    Lab lab;
    put_facts(lab, facts);
    EXPECT_EQ(lab.pc.firmware_virtualization, told);
  }
}

void expect_all_unknown(const PcFacts& facts) {
  EXPECT_EQ(facts.memory.installed_mib, std::nullopt);
  EXPECT_EQ(facts.memory.usable_mib, std::nullopt);
  const ProcessorFacts& p = facts.processor;
  EXPECT_FALSE(p.threads || p.cores || p.efficiency_cores);
  EXPECT_FALSE(p.is_64_bit.has_value() || p.virtualization.has_value() || p.firmware_switch.has_value());
  EXPECT_FALSE(p.under_hypervisor.has_value() || p.second_level_translation.has_value());
  EXPECT_FALSE(p.nested_virtualization.has_value());
  EXPECT_EQ(facts.volumes, std::nullopt);
  EXPECT_EQ(facts.cards, std::nullopt);
}

TEST(Probe, NothingThereNothingKnown) {
  expect_all_unknown(probed(FileTree()));
  expect_all_unknown(probe({}));
  expect_all_unknown(probe({"/no/such/folder", {}, {}}));
}

// DMTF DSP0134 (SMBIOS) 7.18: size in MiB; 0x7FFF: see the extended size; 0: empty socket; 0xFFFF: unknown.
std::string module_structure(std::uint16_t size, std::uint32_t extended) {
  std::string out(0x22, '\0');
  out[0] = 17;
  out[1] = 0x22;
  out[0x0c] = static_cast<char>(size & 0xffU);
  out[0x0d] = static_cast<char>(size >> 8U);
  for (unsigned i = 0; i < 4; ++i) out[0x1c + i] = static_cast<char>((extended >> (8 * i)) & 0xffU);
  return out + "DIMM" + std::string(2, '\0');
}

TEST(Probe, InstalledMemoryFromTheFirmwaresTable) {
  const FileTree tree("proc/meminfo = MemTotal: 40000000 kB");
  const std::string table =
      module_structure(8192, 0) + module_structure(0, 0) + module_structure(0x7fff, 32768);
  tree.write("sys/firmware/dmi/tables/DMI", table);
  EXPECT_EQ(probed(tree).memory.installed_mib, 40960);
  tree.write("sys/firmware/dmi/tables/DMI", table + module_structure(0xffff, 0));
  EXPECT_EQ(probed(tree).memory.installed_mib, std::nullopt);
  tree.write("sys/firmware/dmi/tables/DMI", module_structure(8192, 0)); // less than usable
  EXPECT_EQ(probed(tree).memory.installed_mib, std::nullopt);
  tree.write("sys/firmware/dmi/tables/DMI", table.substr(0, table.size() - 1));
  EXPECT_EQ(probed(tree).memory.installed_mib, std::nullopt);
}

TEST(Probe, FirmwareSwitchOnlyWhereTheSystemTells) {
  const std::string flags = "proc/cpuinfo = flags : lm vmx\n";
  const auto known = [](const std::string& tree) { return probed(FileTree(tree)).processor.firmware_switch; };
  EXPECT_EQ(known(flags), std::nullopt);
  EXPECT_EQ(known(flags + "proc/sys/kernel/osrelease = 5.5.19"), std::nullopt);
  EXPECT_EQ(known(flags + "proc/sys/kernel/osrelease = 5.6.0-rc1"), true);
  EXPECT_EQ(known(flags + "sys/class/misc/kvm/\nsys/module/kvm_intel/"), true);
  EXPECT_EQ(known(flags + "sys/class/misc/kvm/"), std::nullopt);
  EXPECT_EQ(known("proc/cpuinfo = flags : lm svm\nproc/sys/kernel/osrelease = 6.1.0"), std::nullopt);
}

// Links that lead out of the root, in circles or nowhere, a folder in place of a file, a huge file.
TEST(Probe, SurvivesAHostileTree) {
  const FileTree tree(
      "proc/meminfo/\nsys/class/block/dm-0 -> ../../devices/dm-0\nsys/devices/dm-0/slaves/again -> "
      "../../dm-0\n"
      "sys/dev/block/8:1 -> ../../devices/dm-0\nsys/dev/block/8:2 -> /etc\nsys/class/net/a -> a\n"
      "sys/class/net/b -> /etc\nproc/self/mountinfo = 1 0 8:1 / /\\400\\ rw - ext4 x rw\\n1 0 8:2 / /x rw - "
      "ext4 /dev/.. rw");
  tree.write("proc/cpuinfo", "flags : lm\n" + std::string(std::size_t{17} << 20U, 'x'));
  const PcFacts facts = probed(tree);
  EXPECT_EQ(facts.memory.usable_mib, std::nullopt);
  EXPECT_EQ(facts.processor.is_64_bit, std::nullopt);
  ASSERT_EQ(facts.volumes.value().size(), 1U);
  EXPECT_EQ(facts.volumes->at(0).kind, std::nullopt);
  EXPECT_EQ(facts.cards, std::vector<CardFacts>{});
}

TEST(Probe, WrongNumbersAreUnknown) {
  const auto usable = [](const std::string& total) {
    return probed(FileTree("proc/meminfo = MemTotal: " + total)).memory.usable_mib;
  };
  EXPECT_EQ(usable("2048 kB"), 2);
  for (const char* bad :
       {"2048", "2048 MB", "-1 kB", "99999999999999999999 kB", "9223372036854775807 kB", "x kB", "0 kB"})
    EXPECT_EQ(usable(bad), std::nullopt) << bad;
  const auto threads = [](const std::string& list) {
    return probed(FileTree("sys/devices/system/cpu/online = " + list)).processor.threads;
  };
  EXPECT_EQ(threads("0-3,8,2"), 5);
  for (const char* bad : {"3-0", "a", "0-", "-1", "0-2147483647", "0,,1", "0-40000,40001-80000"})
    EXPECT_EQ(threads(bad), std::nullopt) << bad;
}

// Overwrites the inside of a third of the files with random bytes.
void damage(const FileTree& tree, std::mt19937& random) {
  for (const auto& entry : std::filesystem::recursive_directory_iterator(tree.root())) {
    if (!entry.is_regular_file() || entry.is_symlink() || random() % 3 != 0) continue;
    std::fstream file(entry.path(), std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(static_cast<std::streamoff>(random() % (entry.file_size() + 1)));
    file << test::random_bytes(random, 12) << std::string(random() % 2, '\0');
  }
}

// More and more damage: no crash, and what is known stays in its range.
TEST(Probe, SurvivesDamage) {
  std::mt19937 random(32);
  for (int i = 0; i < test::scaled(60); ++i) {
    const FileTree tree = FileTree::from_data(i % 2 == 0 ? "probe/laptop.tree" : "probe/desktop.tree");
    for (int round = 0; round < 8; ++round) {
      damage(tree, random);
      const PcFacts facts = probed(tree);
      ASSERT_GE(facts.memory.usable_mib.value_or(1), 1);
      ASSERT_GE(facts.processor.threads.value_or(1), 1);
      ASSERT_LE(facts.processor.cores.value_or(1), facts.processor.threads.value_or(1));
    }
  }
}

} // namespace
} // namespace snug
