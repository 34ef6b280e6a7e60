#include "core/probe/pc_element.h"

namespace snug {

namespace {

void put(Known& field, const std::optional<bool>& fact) {
  if (fact) field = *fact ? Known::yes : Known::no;
}

void put_processor(Pc& pc, const ProcessorFacts& p) {
  if (p.cores) pc.cores = *p.cores;
  if (p.threads) pc.threads = *p.threads;
  if (p.efficiency_cores) pc.efficiency_cores = *p.efficiency_cores;
  put(pc.is_64_bit, p.is_64_bit);
  put(pc.firmware_virtualization, p.firmware_switch);
  // Lacking or hidden by it; in a guest by what is below, which says nothing of the firmware.
  if (p.virtualization && !*p.virtualization && p.under_hypervisor && !*p.under_hypervisor)
    pc.firmware_virtualization = Known::no;
  // A hypervisor below: this PC is a guest itself, or its own system occupies the virtualization; nobody
  // tells which.
  if (p.under_hypervisor && !*p.under_hypervisor) pc.virtualization_occupied = Known::no;
  put(pc.second_level_translation, p.second_level_translation);
  put(pc.nested_virtualization, p.nested_virtualization);
}

VolumeKind kind_of(const std::optional<DriveKind>& kind) {
  if (!kind) return VolumeKind::unknown;
  switch (*kind) {
  case DriveKind::spinning:
    return VolumeKind::spinning;
  case DriveKind::usb:
    return VolumeKind::usb;
  case DriveKind::flash:
    return VolumeKind::flash;
  case DriveKind::nvme:
    return VolumeKind::nvme;
  }
  return VolumeKind::unknown;
}

void put_volumes(Lab& lab, const std::vector<VolumeFacts>& volumes) {
  for (const VolumeFacts& v : volumes) {
    Volume volume;
    volume.id.number = lab.facts.next_id++;
    volume.name = v.mount_point;
    volume.type = kind_of(v.kind);
    volume.size = v.size_mib.value_or(0);
    volume.free = v.free_mib.value_or(0);
    lab.volumes.push_back(std::move(volume));
  }
}

void put_lans(Lab& lab, const std::vector<CardFacts>& cards) {
  for (const CardFacts& c : cards) {
    if (!c.physical.value_or(false) || c.subnets.empty()) continue;
    Lan lan;
    lan.id.number = lab.facts.next_id++;
    lan.name = "LAN of " + c.name;
    if (c.medium) lan.medium = *c.medium == LinkMedium::wired ? Medium::wired : Medium::wireless;
    for (const Prefix& p : c.subnets) {
      auto& field = p.is_v4() ? lan.prefix4 : lan.prefix6;
      if (!field) field = p;
    }
    for (const Address& gateway : c.gateways) {
      auto& field = gateway.is_v4() ? lan.gateway4 : lan.gateway6;
      if (!field) field = gateway;
    }
    lab.lans.push_back(std::move(lan));
  }
}

} // namespace

void put_facts(Lab& lab, const PcFacts& facts) {
  if (facts.memory.installed_mib) {
    lab.pc.installed = *facts.memory.installed_mib;
    lab.pc.usable = facts.memory.usable_mib;
  } else if (facts.memory.usable_mib) {
    lab.pc.installed = *facts.memory.usable_mib;
  }
  put_processor(lab.pc, facts.processor);
  if (facts.volumes && lab.volumes.empty()) put_volumes(lab, *facts.volumes);
  if (facts.cards && lab.lans.empty()) put_lans(lab, *facts.cards);
}

} // namespace snug
