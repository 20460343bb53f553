"""In: a source and the translation beside it, if there is one. Out: the file as a translator goes on with it.

The pairs come in the order of the source, empty ones where a translation is missing; those whose words the source does
not hold any more follow below a remark. Nothing that was translated is changed or lost.
"""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

from sizewright.read.translating.pairs import Pair, PairFile, commented, remark
from sizewright.read.translating.texts import Text

_STALE = "The source does not hold the words below any more. Move what is still of use up, and take the rest out."


@dataclass(frozen=True, slots=True)
class Refreshed:
    """The text of a file of translations; how many of its texts are still to be translated, and how many are stale."""

    text: str
    texts: int
    missing: int
    stale: int


def refreshed(texts: Iterable[Text], known: Collection[str], file: PairFile) -> Refreshed:
    """The file with a pair for each of `texts` that is asked for or told; `known` are the keys of all words."""
    told = [pair for pair in file.pairs if pair.translation or pair.remarks]
    by_key = {key: tuple(found) for key, found in groupby(sorted(told, key=_key), _key)}
    asked = tuple(text for text in texts if text.asked or text.key in by_key)
    wanted = {text.key for text in asked}
    others = [pair for pair in told if pair.key not in wanted]
    stale = [pair for pair in others if pair.key not in known]
    parts = [part for text in asked for part in _written(text.words, by_key.get(text.key, ()))]
    parts.extend(part for pair in others if pair.key in known for part in _written(pair.words, (pair,)))
    if stale:
        parts.append(f"{remark(_STALE)}\n")
        parts.extend(part for pair in stale for part in _written(pair.words, (pair,)))
    parts.extend(f"{remark(words)}\n" for words in file.remarks)
    missing = sum(not any(pair.translation for pair in by_key.get(text.key, ())) for text in asked)
    return Refreshed("\n".join(parts), len(asked), missing, len(stale))


def _key(pair: Pair) -> str:
    return pair.key


def _written(words: str, pairs: tuple[Pair, ...]) -> Iterator[str]:
    """The pair of some words; where they were translated twice, both as they are, for a person to choose."""
    for note in dict.fromkeys(note for pair in pairs for note in pair.remarks if note != _STALE):
        yield f"{remark(note)}\n"
    for translation in tuple(dict.fromkeys(pair.translation for pair in pairs if pair.translation)) or ("",):
        yield f"{commented(words)}\n{translation}\n"
