"""In: what departures call rows and quantities, in the words of the source. Out: it in the spoken language, or "".

In English all of it is as it is typed. In another language a row is told by its number, and a quantity by the finished
measurement that it is; a quantity that is none keeps the name it has in formulas, in quotation marks.
"""

import re
from collections.abc import Sequence

from sizewright.base.language import in_english, named, tr
from sizewright.publish.usual_names import name_within
from sizewright.read.notation.direction_tree import Numbers
from sizewright.read.notation.printed_rows import rows_numbered
from sizewright.read.pattern import Finished

_NUMBERED = re.compile(r"(Rnd|Row) (\d+)")


def spoken_label(label: str) -> str:
    """The label of a direction: "Rnd 4"; "" for one that has words of its own and no translation."""
    told = named(label)
    numbered = _NUMBERED.fullmatch(label)
    if in_english() or told != label:
        return told
    if numbered is None:
        return ""
    return "".join(map(str, rows_numbered(Numbers((int(numbered[2]),)), in_the_round=numbered[1] == "Rnd")))


def spoken_words(words: str) -> str:
    """Words of a row or a paragraph by which a departure is called; "" without a translation."""
    told = named(words)
    return told if in_english() or told != words else ""


def spoken_quantity(name: str, finished: Sequence[Finished]) -> str:
    """A quantity at the head of a line: "Finished height"."""
    words = name_within(name)
    if in_english() or words != name.replace("_", " "):
        return words[:1].upper() + words[1:]
    label = next((one.label for one in finished if one.formula.text == name), "")
    return named(label) if label else tr("“{words}”", words=words)
