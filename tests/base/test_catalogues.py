"""In: the message catalogues. Out: every message of the sources is there, translated, its parts the same."""

import re
from collections.abc import Sequence
from itertools import product

import pytest
from babel.messages.catalog import Message

import catalogues

LANGUAGES = sorted(folder.name for folder in catalogues.FOLDER.iterdir() if folder.is_dir())
PLACE = re.compile(r"%\(\w+\)[sd]|\{\w*[^{}]*\}|</?\w+[^>]*>")


def texts(message: Message) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The English and the translated forms."""
    return _forms(message.id), _forms(message.string)


def _forms(words: str | Sequence[str | None] | None) -> tuple[str, ...]:
    return (words or "",) if isinstance(words, str) or words is None else tuple(form or "" for form in words)


def test_german_is_there() -> None:
    """The demo's second language."""
    assert "de" in LANGUAGES


@pytest.mark.parametrize(
    ("part", "code"), list(product(catalogues.PARTS, LANGUAGES)), ids=lambda one: getattr(one, "name", one)
)
def test_a_catalogue_is_complete(part: catalogues.Part, code: str) -> None:
    """After a change of the sources: python generator/catalogues.py, then translate what it leaves empty."""
    wanted = {(message.context, message.id) for message in catalogues.wanted(part) if message.id}
    kept = {(message.context, message.id): message for message in catalogues.kept(part, code) if message.id}
    assert set(kept) == wanted
    for key, message in kept.items():
        english, other = texts(message)
        assert not message.fuzzy, key
        assert all(other), key
        assert all(places(words) == places(english[-1]) for words in other[-1:]), (key, other)


@pytest.mark.parametrize("code", LANGUAGES)
def test_what_templates_write_is_markup(code: str) -> None:
    """A message of a template may stand in an attribute: a straight quotation mark would end it there."""
    pages = next(part for part in catalogues.PARTS if part.name == "pages")
    written = [words for message in catalogues.kept(pages, code) if message.id for words in texts(message)[1]]
    assert len(written) > 200
    assert [words for words in written if re.search(r'[<>"]|&(?!\w+;)', re.sub(r"</?\w+[^>]*>", "", words))] == []


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_message_of_several_parts_is_told_alike_in_all(code: str) -> None:
    """The catalogues are read as one: what means two things in English has to have a context."""
    told: dict[object, set[tuple[str, ...]]] = {}
    for part in catalogues.PARTS:
        for message in catalogues.kept(part, code):
            if message.id:
                told.setdefault((message.context, texts(message)[0]), set()).add(texts(message)[1])
    assert len(told) > 500
    assert {key: forms for key, forms in told.items() if len(forms) > 1} == {}


def places(words: str) -> list[str]:
    """What is filled in, and the markup, in no order."""
    return sorted(PLACE.findall(words))
