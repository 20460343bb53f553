"""In: the tokens of a cable spelled out, "sl 3 to cn, hold in front, k3, k3 from cn". Out: the cable as one stitch."""

from sizewright.read.notation.cables import Spelled, spelled_cable
from sizewright.read.notation.promise_parser import PromiseParser
from sizewright.read.notation.tree import Action, Work

_ONTO = ("to", "onto", "on")
_SIDES = {"front": "front", "back": "back", "behind": "back"}
_NEEDLE = ("cn", "cable", "needle", "a", "the")
_SILENT = (*_NEEDLE, "and", "then", "hold", "held", "holding", "in", "at", "to", "of", "work", "leave", "st", "sts")
_SIGNS = (",", ";", "(", ")", "[", "]")
_LONGEST = 24  # tokens of a cable spelled out
_KINDS = {"k": "k", "knit": "k", "p": "p", "purl": "p"}


class CableParser(PromiseParser):
    """Reads cables that are spelled out; None where something else stands."""

    def _cn(self) -> Action | None:
        start = self.position
        if self.at("sl", "slip", "place"):
            self.step()
            self.skip("next")
        held = self.glued_ahead("sl")
        if held is not None:
            self.step()
        elif self.number_ahead():
            held = self.fixed()
        self.stitch_words()
        if held is None or not (self.at(*_ONTO) and {"cn", "cable"} & set(self.texts(3))):
            return None
        return self._crossed(start, held)

    def _crossed(self, start: int, held: int) -> Action:
        """What follows "sl 3 to cn": where it is held, what is worked before it and from it."""
        self.step()
        behind = next((place for place, token in enumerate(self.coming(_LONGEST)) if token.text == "from"), None)
        if behind is None:
            raise self.fault("Say when the stitches on the cable needle are worked: “k3 from cn”.")
        where, groups = self._cable_words(self.position + behind)
        self.skip("from", *_NEEDLE)
        worked = "".join(groups)
        before, from_cn = worked[: len(worked) - held], worked[len(worked) - held :]
        apart = any(sum(map(len, groups[place:])) == held for place in range(1, len(groups)))
        if not apart:
            raise self.fault(f"{held} stitches go onto the cable needle, so {held} must be worked from it.")
        times, _, place = self.extent(more=False)
        return Work(self.since(start), spelled_cable(Spelled(where, before, from_cn)), times, place)

    def _cable_words(self, end: int) -> tuple[str, list[str]]:
        """On which side the stitches are held, and the stitches worked up to "from cn", a letter each."""
        where = ""
        groups: list[str] = []
        while self.position < end:
            text = self.token.text
            glued = self.words.glued(text)
            if text in _SIDES and where in ("", _SIDES[text]):
                where = _SIDES[text]
            elif glued is not None and glued[0].term in _KINDS:
                groups.append(glued[0].term * glued[1])
            elif text in _KINDS and self.peek(1) == "#":
                self.step()
                groups.append(_KINDS[text] * (self.fixed() or 0))
                continue
            elif text not in (*_SILENT, *_SIGNS):
                raise self.fault("Between “to cn” and “from cn” stand the side it is held on, knits and purls.")
            self.step()
        return where, groups
