"""In: the tokens of a sentence. Out: the yarn it says to take, and the sentence without those words."""

from sizewright.read.notation.direction_tree import TakeYarn
from sizewright.read.notation.words import Sentence, spanned, told_sentence
from sizewright.read.yarn_names import YarnNames

_TAKES = (("with",), ("using",), ("in",), ("change", "to"), ("switch", "to"), ("join",), ("rejoin",), ("attach",))
_LEAVES = (("cut",), ("break",))
_WITHIN = (("with",), ("using",), ("in",))
_JOINTS = (",", ";", ":", "and", "then")


class YarnWords:
    """Finds the yarns of a header in sentences."""

    def __init__(self, names: YarnNames) -> None:
        self._names = names

    def first(self, sentence: Sentence) -> tuple[tuple[TakeYarn, ...], Sentence]:
        """The yarns a sentence begins with taking, "Cut MC, join CC and ...", and the rest of it."""
        taken: list[TakeYarn] = []
        at, found = 0, self._at(sentence, 0, (*_TAKES, *_LEAVES))
        while found is not None:
            verb, name, end = found
            if verb not in _LEAVES:
                taken.append(_taken(sentence[at:end], name))
            at = end
            while at < len(sentence) and sentence[at].text in _JOINTS:
                at += 1
            found = self._at(sentence, at, (*_TAKES, *_LEAVES))
        return tuple(taken), sentence[at:]

    def within(self, sentence: Sentence) -> tuple[TakeYarn, Sentence] | None:
        """The yarn that is told inside of a sentence, "Bind off all sts with CC"; None where none is."""
        verbs = (*_WITHIN, ("and",)) if sentence[0].text in ("change", "switch") else _WITHIN
        for at in range(1, len(sentence)):
            found = self._at(sentence, at, verbs)
            if found is not None:
                _, name, end = found
                before = sentence[: at - 1] if sentence[at - 1].text == "," and end == len(sentence) else sentence[:at]
                return _taken(sentence[at:end], name), (*before, *sentence[end:])
        return None

    def remarked(self, remark: str) -> str | None:
        """The yarn in the remark of a row's label; None where it tells something else."""
        return self._names.in_remark(remark)

    def _at(
        self, sentence: Sentence, at: int, verbs: tuple[tuple[str, ...], ...]
    ) -> tuple[tuple[str, ...], str, int] | None:
        """A verb with the name of a yarn behind it, and where they end."""
        for verb in verbs:
            end = at + len(verb)
            if tuple(token.text for token in sentence[at:end]) == verb:
                named = self._names.ahead(sentence, end)
                if named is not None:
                    return verb, *named
        return None


def _taken(said: Sentence, name: str) -> TakeYarn:
    """The yarn that is taken, with the words that say it where they are not the plain ones."""
    plain = " ".join(token.typed for token in said).casefold() == f"with {name}".casefold()
    return TakeYarn(spanned(said), name, () if plain else told_sentence(said))
