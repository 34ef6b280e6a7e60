#include "tests/kernel/kernel_net.h"

#include <arpa/inet.h>
#include <chrono>
#include <cstring>
#include <net/if.h>
#include <netinet/icmp6.h>
#include <netinet/in.h>
#include <netinet/ip_icmp.h>
#include <poll.h>
#include <sys/ioctl.h>
#include <sys/socket.h>
#include <unistd.h>

namespace snug::test {

namespace {

std::uint16_t checksum(const std::vector<unsigned char>& bytes) {
  std::uint32_t sum = 0;
  for (std::size_t i = 0; i + 1 < bytes.size(); i += 2)
    sum += static_cast<std::uint32_t>(bytes[i] << 8U | bytes[i + 1]);
  if (bytes.size() % 2 != 0) sum += static_cast<std::uint32_t>(bytes.back() << 8U);
  while (sum >> 16U != 0) sum = (sum & 0xffffU) + (sum >> 16U);
  return htons(static_cast<std::uint16_t>(~sum));
}

// Tells echoes of this round from late ones.
struct Mark {
  std::uint16_t tag, round, number, spare;
};

constexpr std::size_t kHeader = 8;

} // namespace

// Switching address resolution off and on empties a card's neighbour tables (IPv4 and IPv6).
void KernelNet::forget() {
  for (const auto& [m, s] : spaces_) {
    for (const std::string& device : s.devices) {
      ifreq r{};
      std::strncpy(r.ifr_name, device.c_str(), IFNAMSIZ - 1);
      if (ioctl(s.control, SIOCGIFFLAGS, &r) != 0) continue;
      const short flags = r.ifr_flags;
      r.ifr_flags = static_cast<short>(flags | IFF_NOARP);
      ioctl(s.control, SIOCSIFFLAGS, &r);
      r.ifr_flags = flags;
      ioctl(s.control, SIOCSIFFLAGS, &r);
    }
    if (s.flush >= 0 && write(s.flush, "1", 1) < 0) continue;
  }
}

void KernelNet::send_one(const Echo& e, std::uint16_t number) {
  const Space& s = spaces_.at(e.from);
  const bool v4 = e.target.is_v4();
  std::vector<unsigned char> packet(static_cast<std::size_t>(e.size - (v4 ? 20 : 40)));
  packet[0] = v4 ? ICMP_ECHO : ICMP6_ECHO_REQUEST;
  const std::uint16_t id = htons(tag_), sequence = htons(number);
  std::memcpy(&packet[4], &id, 2);
  std::memcpy(&packet[6], &sequence, 2);
  const Mark mark{tag_, round_, number, 0};
  std::memcpy(&packet[kHeader], &mark, sizeof mark);
  if (v4) {
    const std::uint16_t sum = checksum(packet);
    std::memcpy(&packet[2], &sum, 2);
    const int discover = e.keep_whole ? IP_PMTUDISC_DO : IP_PMTUDISC_DONT;
    setsockopt(s.icmp4, IPPROTO_IP, IP_MTU_DISCOVER, &discover, sizeof discover);
    sockaddr_in to{};
    to.sin_family = AF_INET;
    to.sin_addr.s_addr = htonl(e.target.as_u32());
    sendto(s.icmp4, packet.data(), packet.size(), 0, reinterpret_cast<const sockaddr*>(&to), sizeof to);
  } else {
    sockaddr_in6 to{};
    to.sin6_family = AF_INET6;
    inet_pton(AF_INET6, to_text(e.target).c_str(), &to.sin6_addr);
    sendto(s.icmp6, packet.data(), packet.size(), 0, reinterpret_cast<const sockaddr*>(&to), sizeof to);
  }
}

void KernelNet::read_all(const Space& s, MachineId m, std::vector<EchoSeen>& seen,
                         const std::vector<Echo>& sent) const {
  for (const int socket : {s.icmp4, s.icmp6}) {
    unsigned char buffer[10000];
    for (ssize_t n = 0; (n = recv(socket, buffer, sizeof buffer, MSG_DONTWAIT)) > 0;) {
      const std::size_t skip = socket == s.icmp4 ? (buffer[0] & 0xfU) * 4U : 0U;
      Mark mark{};
      if (static_cast<std::size_t>(n) < skip + kHeader + sizeof mark) continue;
      std::memcpy(&mark, buffer + skip + kHeader, sizeof mark);
      if (mark.tag != tag_ || mark.round != round_ || mark.number >= sent.size()) continue;
      const int type = buffer[skip];
      const Echo& e = sent[mark.number];
      if (e.target.is_v4() != (socket == s.icmp4)) continue;
      const bool v4 = e.target.is_v4();
      if (type == (v4 ? ICMP_ECHO : ICMP6_ECHO_REQUEST) && m == e.to) seen[mark.number].arrived = true;
      if (type == (v4 ? ICMP_ECHOREPLY : ICMP6_ECHO_REPLY) && m == e.from) seen[mark.number].answered = true;
    }
  }
}

void KernelNet::receive(std::vector<EchoSeen>& seen, const std::vector<Echo>& sent, int milliseconds) {
  const auto end = std::chrono::steady_clock::now() + std::chrono::milliseconds(milliseconds);
  std::vector<pollfd> waits;
  std::vector<MachineId> whose;
  for (const auto& [m, s] : spaces_)
    for (const int socket : {s.icmp4, s.icmp6}) {
      waits.push_back({socket, POLLIN, 0});
      whose.push_back(m);
    }
  for (;;) {
    const auto left =
        std::chrono::duration_cast<std::chrono::milliseconds>(end - std::chrono::steady_clock::now()).count();
    if (left <= 0) return;
    std::size_t done = 0;
    for (const EchoSeen& e : seen) done += e.answered && e.arrived ? 1 : 0;
    if (done == seen.size()) return;
    if (poll(waits.data(), waits.size(), static_cast<int>(left)) <= 0) return;
    for (std::size_t i = 0; i < waits.size(); ++i)
      if (waits[i].revents != 0) read_all(spaces_.at(whose[i]), whose[i], seen, sent);
  }
}

std::vector<EchoSeen> KernelNet::send(const std::vector<Echo>& echoes, int milliseconds) {
  std::vector<EchoSeen> seen(echoes.size());
  forget();
  ++round_;
  for (std::size_t i = 0; i < echoes.size(); ++i) send_one(echoes[i], static_cast<std::uint16_t>(i));
  receive(seen, echoes, milliseconds);
  return seen;
}

} // namespace snug::test
