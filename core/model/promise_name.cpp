#include "core/model/promise_name.h"

#include "core/model/store.h"
#include "core/text/promise_text.h"
#include "core/text/reach_text.h"

namespace snug {

namespace {

Argument subject(const Lab& lab, AnyId id) {
  if (id.kind == Kind::everyone) return detail::argument(say(text::node_everyone));
  if (id.kind == Kind::outside) return detail::argument(say(text::node_outside));
  return id ? Argument(name_of(lab, id)) : detail::argument(say(text::node_nobody));
}

// " on tcp 3260"; nothing for any packet at all.
Argument service(const Promise& p) {
  if (p.transport == Transport::icmp || (p.transport == Transport::tcp && p.port == 0)) return std::string();
  return detail::argument(p.port != 0 ? say(text::by_service, word(p.transport), std::to_string(p.port))
                                      : say(text::by_transport, word(p.transport)));
}

} // namespace

Message promise_name(const Lab& lab, const Promise& p) {
  return say(p.must == PromiseKind::never ? text::promise_never : text::promise_reach, subject(lab, p.from),
             subject(lab, p.to), service(p));
}

} // namespace snug
