#pragma once
// Words of the panel about reach and promises.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template tab_reach{"tab-reach", "Reach"};
inline constexpr Template act_reach{"act-reach", "Rea&ch"};
inline constexpr Template act_can_they_talk{"act-can-they-talk", "Can these &two talk?"};

inline constexpr Template ask_from{"ask-from", "From"};
inline constexpr Template ask_to{"ask-to", "to"};
inline constexpr Template ask_at_any{"ask-at-any", "at any address"};
inline constexpr Template ask_at_name{"ask-at-name", "At which of its addresses"};
inline constexpr Template ask_at_help{
    "ask-at-help", "The other end has several addresses; any: the best of them, as names would "
                   "say"};
inline constexpr Template ask_by{"ask-by", "by"};
inline constexpr Template ask_from_name{"ask-from-name", "Who asks"};
inline constexpr Template ask_to_name{"ask-to-name", "Who is asked"};
inline constexpr Template ask_service_name{"ask-service-name", "Service"};
inline constexpr Template ask_service_help{
    "ask-service-help", "ping, tcp, udp, or a port like tcp/443; the list has what the other end offers"};
inline constexpr Template ask_offer{"ask-offer", "{0} ({1})"};
inline constexpr Template ask_full_size{"ask-full-size", "Full-size packets"};
inline constexpr Template ask_full_size_help{"ask-full-size-help",
                                             "With packets as long as the sender's card takes"};
inline constexpr Template ask_swap{"ask-swap", "Swap"};
inline constexpr Template ask_swap_help{"ask-swap-help", "Ask the other way round"};
inline constexpr Template ask_nobody{
    "ask-nobody", "There is no machine yet that could talk to another. Drag one from the parts onto the PC."};

inline constexpr Template answer_reaches{"answer-reaches", "Yes"};
inline constexpr Template answer_one_way{"answer-one-way", "One way only"};
inline constexpr Template answer_unreliable{"answer-unreliable", "By chance"};
inline constexpr Template answer_no{"answer-no", "No"};
inline constexpr Template answer_of_drop{"answer-of-drop", "After the drop: {0}"};
inline constexpr Template answer_of{"answer-of", "{0}. {1}"};
inline constexpr Template answer_self{"answer-self",
                                      "Both ends are the same. Choose another one to ask about."};
inline constexpr Template answer_there{"answer-there", "The way there"};
inline constexpr Template answer_back{"answer-back", "And the answer back"};
inline constexpr Template answer_ends{"answer-ends", "It ends here"};
inline constexpr Template answer_promise{"answer-promise", "Promise that this stays so"};
inline constexpr Template answer_promise_must{"answer-promise-must", "Promise that it must reach"};
inline constexpr Template answer_show{"answer-show", "Show the way on the picture"};

inline constexpr Template promises_title{"promises-title", "Promises"};
inline constexpr Template promises_add{"promises-add", "Add a promise"};
inline constexpr Template promises_none{
    "promises-none",
    "None yet. A promise is watched while you change the lab: “Cargo never reaches the outside”."};
inline constexpr Template promises_more{"promises-more", "{0} more promises", "{0} more promise"};
inline constexpr Template promise_is_kept{"promise-is-kept", "kept"};
inline constexpr Template promise_is_broken{"promise-is-broken", "broken"};
inline constexpr Template promise_not_judged{"promise-not-judged", "nothing to check"};
inline constexpr Template promise_state{"promise-state", "{0}: {1}"};
inline constexpr Template promise_any_address{
    "promise-any-address", "A promise speaks of {0} as a whole, whichever of its addresses is asked."};
inline constexpr Template promise_ask{"promise-ask", "Ask"};
inline constexpr Template promise_ask_help{"promise-ask-help", "Show the pair that decides it, hop by hop"};
inline constexpr Template promise_change{"promise-change", "Change"};
inline constexpr Template promise_change_help{"promise-change-help",
                                              "Its fields stand on the right: who, what, in which exercises"};
inline constexpr Template promise_remove{"promise-remove", "Take back"};
inline constexpr Template promise_finding{"promise-finding", "Its finding"};
inline constexpr Template finding_promise{"finding-promise", "Its promise"};

} // namespace snug::text
