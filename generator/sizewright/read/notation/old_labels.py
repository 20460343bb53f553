"""In: a sentence. Out: the same with a label as older books print it, "First row--pearl", in today's signs."""

from dataclasses import replace

from sizewright.read.notation.tree import Count
from sizewright.read.notation.words import Kind, Sentence

_ORDINALS = {
    word: number
    for number, word in enumerate(
        ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"), start=1
    )
}
_ROWS = ("row", "rnd", "round")


def with_label(sentence: Sentence) -> Sentence:
    """ "First row--pearl knitting" as "1st row: pearl knitting"; another sentence as it is."""
    if len(sentence) < 4 or sentence[0].text not in _ORDINALS or sentence[1].text not in _ROWS:
        return sentence
    if sentence[2].text != "-":
        return sentence
    first = sentence[0]
    number = replace(first, kind=Kind.NUMBER, text="#", count=Count(first.span, _ORDINALS[first.text]), ordinal=True)
    behind = 4 if sentence[3].text == "-" else 3
    return (number, sentence[1], replace(sentence[2], text=":"), *sentence[behind:])
