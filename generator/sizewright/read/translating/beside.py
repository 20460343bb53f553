"""In: a source and the lines of its translation. Out: the translation, and what is wrong between the two."""

from collections.abc import Callable, Collection, Iterator
from dataclasses import replace
from pathlib import Path

from sizewright.base.finding import Finding
from sizewright.base.language import CATALOGUES, as_known, is_english, is_language
from sizewright.base.nearest import did_you_mean
from sizewright.base.place import Lines
from sizewright.read.pattern import Pattern
from sizewright.read.translating.judged import judged
from sizewright.read.translating.pairs import read_pairs
from sizewright.read.translating.rules import STRAY_TRANSLATION, UNTRANSLATED
from sizewright.read.translating.texts import Text, texts_of
from sizewright.read.translating.translation import Translation


def language_of(path: Path) -> str:
    """The language of a file of translations, by its name `NAME.CODE.md`; "" for every other file."""
    code = Path(path.stem).suffix.removeprefix(".")
    return code if is_language(code) else ""


def source_name(path: Path) -> str:
    """The name of the source that a file is, or that it translates."""
    return Path(path.stem).stem if language_of(path) else path.stem


def stray(path: Path, lines: Lines, names: Collection[str], languages: tuple[str, ...]) -> Finding | None:
    """The finding for a file of translations that nobody would read; `names` are the sources beside it."""
    code, name = language_of(path), source_name(path)
    if name not in names:
        mend = did_you_mean(name, names, "Name it like its source.")
        message = f"This translates nothing: there is no {name}.md beside it."
    elif code == languages[0]:
        message, mend = f"“{code}” is the language of the sources themselves.", "Name the file after another language."
    elif code not in languages:
        message = f"The site is not published in “{code}”."
        mend = f"Add it to content/site.yaml: “languages: [{', '.join((*languages, code))}]”."
    else:
        return None
    return STRAY_TRANSLATION.at(lines.whole_line(1), message, mend)


def without_words(languages: tuple[str, ...], project: Path) -> Iterator[Finding]:
    """A finding for each language of a site that neither the program nor the project has messages in."""
    for code in languages:
        places = (CATALOGUES, project / "content" / "catalogues", *(project / "themes").glob("*/catalogues"))
        known = (found for place in places for name in as_known(code) for found in (place / name).glob("*.po"))
        if is_english(code) or any(known):
            continue
        message = f"There are no messages in “{code}”: buttons, headings and instructions would be in English there."
        mend = f"Write them in content/catalogues/{code}/, or take “{code}” out of “languages” in content/site.yaml."
        yield UNTRANSLATED.at(None, message, mend)


def translated(
    pattern: Pattern, languages: tuple[str, ...], lines_of: Callable[[str, str], Lines | None]
) -> tuple[Pattern, tuple[Finding, ...]]:
    """A source with its translations, and what is wrong with them.

    `lines_of` gives the lines of the file for a name and a language, None where there is none.
    """
    found: list[Translation] = []
    findings: list[Finding] = []
    of = languages[0]
    for into in languages[1:]:
        lines = lines_of(pattern.name, into)
        if lines is None:
            findings.append(_untranslated(pattern, into))
            continue
        in_base = lines_of(pattern.adapts.base.name, into) if pattern.adapts else None
        base = read_translation(in_base, of, into)[0] if in_base is not None else None
        translation, wrong = read_translation(lines, of, into, base)
        found.append(translation)
        findings.extend((*wrong, *judged_beside(pattern, translation, based_told=base is not None)))
    return replace(pattern, translations=tuple(found)), tuple(findings)


def _untranslated(pattern: Pattern, into: str) -> Finding:
    typed = pattern.typed
    message = f"This is not translated into “{into}”: there is no {pattern.name}.{into}.md beside it."
    mend = f"“sizewright translate {typed.source} --into {into}” begins the file."
    return UNTRANSLATED.at(typed.whole_line(1), message, mend)


def read_translation(
    lines: Lines, of: str, into: str, base: Translation | None = None
) -> tuple[Translation, tuple[Finding, ...]]:
    """The translation in some lines; `base` is that of the pattern whose adaptation is translated."""
    file = read_pairs(lines)
    told = dict(base.told) if base is not None else {}
    told.update((pair.key, pair.translation) for pair in file.pairs if pair.translation)
    return Translation(of, into, lines, file.pairs, told), file.findings


def judged_beside(pattern: Pattern, translation: Translation, *, based_told: bool = False) -> Iterator[Finding]:
    """What is wrong between a source and its translation; `based_told` as in `own_texts`."""
    texts = texts_of(pattern)
    yield from judged(pattern.typed.source, texts, own_texts(pattern, texts, based_told=based_told), translation)


def own_texts(pattern: Pattern, texts: tuple[Text, ...], *, based_told: bool) -> tuple[Text, ...]:
    """Those of its texts that the file beside a source is asked for: not those that the base of an adaptation has too.

    Where that base has no file of its own in the language (`based_told`), all of them are asked for here.
    """
    if pattern.adapts is None or not based_told:
        return texts
    in_base = {text.key for text in texts_of(pattern.adapts.base)}
    return tuple(text for text in texts if text.key not in in_base)
