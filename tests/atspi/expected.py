"""The names that a screen reader must hear, worked out from the text of a document alone."""
from collections import Counter

KINDS = {"m": "machine", "s": "segment", "l": "LAN", "v": "volume", "e": "exercise"}


def name_of(element):
    return element.get("name") or "%s %s" % (KINDS[element["id"][0]], element["id"])


class Document:
    def __init__(self, text):
        self.pc = text.get("pc", {}).get("name") or "this PC"
        self.machines, self.segments = text.get("machines", []), text.get("segments", [])
        self.lans, self.cards = text.get("lans", []), text.get("cards", [])
        self.lists = self.lans + text.get("volumes", []) + text.get("exercises", [])
        self.disks = text.get("disks", [])
        self.names = {e["id"]: name_of(e) for e in self.machines + self.segments + self.lists}
        rooms = {r["id"] for r in text.get("roles", []) if r.get("is_hypervisor")}
        self.rooms = {m["id"] for m in self.machines if m.get("role") in rooms} | {m.get("carrier") for m in self.machines}

    def _part(self, element, parts, word):
        same = [p for p in parts if p["machine"] == element["machine"]]
        return element.get("name") or "%s %d" % (word, same.index(element) + 1)

    def _plugs(self, card):
        out = ["on " + self.names[s] for s in [card.get("segment")] if s]
        out += ["on " + self.names[t["segment"]] for t in card.get("trunk", [])]
        carried = [t["segment"] for t in card.get("carries", [])]
        out += ["carries " + self.names[s] for s in carried if s != card.get("segment")]
        return ", ".join(out) or "not plugged"

    def on_the_picture(self):
        out = Counter({self.pc + ", the PC": 1})
        out.update(self.names[l["id"]] + ", network outside" for l in self.lans)
        out.update(self.names[s["id"]] + ", segment" for s in self.segments)
        for m in self.machines:
            word = "hypervisor" if m["id"] in self.rooms else "machine"
            out["%s, %s" % (self.names[m["id"]], word)] += 1
        for c in self.cards:
            part = self._part(c, self.cards, "card")
            out["%s %s %s" % (self.names[c["machine"]], part, self._plugs(c))] += 1
        return out

    def in_the_outline(self):
        """Once what is below the PC is open; cards stand below segments as well, closed."""
        out = Counter({self.pc: 1})
        out.update(self.names[e["id"]] for e in self.machines + self.segments + self.lists)
        out.update(self._part(d, self.disks, "disk") for d in self.disks)
        for c in self.cards:
            part = self._part(c, self.cards, "card")
            out[part + (" · " + self.names[c["segment"]] if c.get("segment") else "")] += 1
        return out
