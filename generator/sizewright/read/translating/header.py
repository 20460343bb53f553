"""In: a header, and who tells its words in another language. Out: the header in that language.

This is the one list of what a header holds to be translated: telling the words back as they are gives the texts alone.
"""

import re
from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import TypeVar

from sizewright.base.place import Span
from sizewright.read.care_words import care_word
from sizewright.read.departure import BasedOn, Called
from sizewright.read.inserts import Words
from sizewright.read.needles import needle
from sizewright.read.pattern import Change, Film, Finished, Gauge, Header, Needle, Picture, Size, Yarn

Tell = Callable[[Span, str], str]
"""Words at a place in, their translation out."""
Name = Callable[[Span, str], object]
"""Hears the name of what is known by it in formulas, in rows and in addresses, and is only shown otherwise."""


_COMMA = re.compile(r"(?<=\d),(?=\d)")
_Item = TypeVar("_Item")


def told_header(header: Header, tell: Tell, name: Name) -> Header:
    """The header with its words as `tell` has them; what must keep its name inside is only told to `name`."""
    return _Teller(tell, name).header(header)


def told_called(called: Called, tell: Tell) -> Called:
    """A departure with its reason as `tell` has it."""
    because = called.because
    return replace(called, because=replace(because, text=tell(because.span, because.text)))


class _Teller:
    def __init__(self, tell: Tell, name: Name) -> None:
        self.tell = tell
        self.name = name

    def header(self, header: Header) -> Header:
        """All of it, in the order of a page; the arguments below are worked out in that order."""
        return replace(
            header,
            title=self.tell(header.span, header.title) if header.title else "",
            summary=self.words(header.summary),
            picture=self.picture(header.picture),
            sizes=self.all(header.sizes, self.size),
            gauges=self.all(header.gauges, self.gauge),
            needles=self.all(header.needles, self.needle),
            yarns=self.yarns(header.yarns),
            notions=self.all(header.notions, self.text),
            cautions=self.all(header.cautions, self.caution),
            care=self.all(header.care, self.care),
            based_on=self.based_on(header.based_on),
            departures=self.all(header.departures, lambda one: told_called(one, self.tell)),
            finished=self.all(header.finished, self.finished),
            credits=self.all(header.credits, self.text),
            changes=self.all(header.changes, self.change),
            terms=self.all(header.terms, self.text),
            films=self.all(header.films, self.film),
        )

    def all(self, items: Iterable[_Item], told: Callable[[_Item], _Item]) -> tuple[_Item, ...]:
        return tuple(map(told, items))

    def text(self, words: Words) -> Words:
        return replace(words, text=self.tell(words.span, words.text))

    def words(self, words: Words | None) -> Words | None:
        return self.text(words) if words is not None else None

    def known(self, words: Words | None) -> None:
        """Words that rules and drawings know a thing by: they stay, and are shown by their translation."""
        if words is not None:
            self.name(words.span, words.text)

    def picture(self, picture: Picture | None) -> Picture | None:
        return replace(picture, alt=self.tell(picture.span, picture.alt)) if picture and picture.alt else picture

    def size(self, size: Size) -> Size:
        self.name(size.span, size.name)
        for words in size.remarks.values():
            self.known(words)  # by its age a size is known to be a child's, by "like" its row in a table
        return size

    def gauge(self, gauge: Gauge) -> Gauge:
        if gauge.name:
            self.name(gauge.span, gauge.name)
        self.known(gauge.over)  # drawings look for the stitch pattern in it
        return replace(gauge, needle=self.needle(gauge.needle) if gauge.needle else None)

    def needle(self, one: Needle) -> Needle:
        """A needle in other words; the sizes in them are found with a decimal comma too. "4 mm" alone has no words."""
        if any(size.whole and (size.start, size.end) == (0, len(one.text)) for size in one.sizes):
            return one
        told = self.tell(one.span, one.text)
        if told == one.text:
            return one
        return replace(needle(Words(one.span, _COMMA.sub(".", told))), text=told)

    def yarns(self, yarns: tuple[Yarn, ...]) -> tuple[Yarn, ...]:
        """One that is alone is just the yarn, whatever its name."""
        for yarn in yarns if len(yarns) > 1 else ():
            self.name(yarn.span, yarn.name)
        return self.all(yarns, self.yarn)

    def yarn(self, yarn: Yarn) -> Yarn:
        for words in (yarn.fibre, yarn.colour, *yarn.called):
            self.known(words)
        return replace(yarn, note=self.words(yarn.note))

    def caution(self, words: Words) -> Words:
        return self.text(words) if " " in words.text else words

    def care(self, words: Words) -> Words:
        return words if care_word(words) is not None else self.text(words)

    def finished(self, one: Finished) -> Finished:
        return replace(one, label=self.tell(one.span, one.label))

    def change(self, one: Change) -> Change:
        return replace(one, text=self.text(one.text))

    def film(self, one: Film) -> Film:
        return replace(one, title=self.tell(one.span, one.title))

    def based_on(self, told: BasedOn | None) -> BasedOn | None:
        if told is None:
            return None
        return replace(told, permission=self.words(told.permission), credit=self.words(told.credit))
