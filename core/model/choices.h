#pragma once
// The choices of the model and their words in the document. The order of a list is the order of its enum.

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

namespace snug {

enum class Known : std::uint8_t { unknown, no, yes };
enum class VolumeKind : std::uint8_t { unknown, spinning, usb, flash, nvme };
enum class Medium : std::uint8_t { unknown, wired, wireless };
enum class SegmentKind : std::uint8_t { isolated, bridged, nat };
enum class SizeSet : std::uint8_t { current, lean };
enum class AddressKind : std::uint8_t { typed, suggested, dhcp, slaac, none };
enum class MacSource : std::uint8_t { program, typed, derived };
enum class DhcpDuty : std::uint8_t { none, server, relay };
enum class ReverseFilter : std::uint8_t { off, loose, strict };
enum class Provisioning : std::uint8_t { thin, full, copy_on_write };
enum class ShareProtocol : std::uint8_t { iscsi, nfs, smb };
enum class Strength : std::uint8_t { must, wants };
enum class PromiseKind : std::uint8_t { reach, never };
enum class Transport : std::uint8_t { tcp, udp, icmp };

template <typename E>
struct Choices; // static constexpr std::array<std::string_view, N> words

template <>
struct Choices<Known> {
  static constexpr std::array<std::string_view, 3> words{"unknown", "no", "yes"};
};
template <>
struct Choices<VolumeKind> {
  static constexpr std::array<std::string_view, 5> words{"unknown", "spinning", "usb", "flash", "nvme"};
};
template <>
struct Choices<Medium> {
  static constexpr std::array<std::string_view, 3> words{"unknown", "wired", "wireless"};
};
template <>
struct Choices<SegmentKind> {
  static constexpr std::array<std::string_view, 3> words{"isolated", "bridged", "nat"};
};
template <>
struct Choices<SizeSet> {
  static constexpr std::array<std::string_view, 2> words{"current", "lean"};
};
template <>
struct Choices<AddressKind> {
  static constexpr std::array<std::string_view, 5> words{"typed", "suggested", "dhcp", "slaac", "none"};
};
template <>
struct Choices<MacSource> {
  static constexpr std::array<std::string_view, 3> words{"program", "typed", "derived"};
};
template <>
struct Choices<DhcpDuty> {
  static constexpr std::array<std::string_view, 3> words{"none", "server", "relay"};
};
template <>
struct Choices<ReverseFilter> {
  static constexpr std::array<std::string_view, 3> words{"off", "loose", "strict"};
};
template <>
struct Choices<Provisioning> {
  static constexpr std::array<std::string_view, 3> words{"thin", "full", "copy-on-write"};
};
template <>
struct Choices<ShareProtocol> {
  static constexpr std::array<std::string_view, 3> words{"iscsi", "nfs", "smb"};
};
template <>
struct Choices<Strength> {
  static constexpr std::array<std::string_view, 2> words{"must", "wants"};
};
template <>
struct Choices<PromiseKind> {
  static constexpr std::array<std::string_view, 2> words{"reach", "never"};
};
template <>
struct Choices<Transport> {
  static constexpr std::array<std::string_view, 3> words{"tcp", "udp", "icmp"};
};

template <typename E>
constexpr std::string_view word(E e) {
  return Choices<E>::words[static_cast<std::size_t>(e)];
}

} // namespace snug
