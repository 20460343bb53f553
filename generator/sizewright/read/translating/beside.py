"""In: a source and the lines of its translation. Out: the translation, and what is wrong between the two."""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from sizewright.base.finding import Finding
from sizewright.base.language import CATALOGUES, as_known, is_english, is_language
from sizewright.base.nearest import did_you_mean, nearest
from sizewright.base.place import Lines, Span
from sizewright.read.pattern import Pattern
from sizewright.read.term import Term
from sizewright.read.translating.judged import judged
from sizewright.read.translating.pairs import read_pairs
from sizewright.read.translating.rules import STRAY_TRANSLATION, UNTRANSLATED
from sizewright.read.translating.texts import Text, texts_of
from sizewright.read.translating.translation import Translation

_LIKENESS = 0.5  # of two letters, one is enough: "ed" is meant for "de"


def language_of(path: Path) -> str:
    """The language of a file of translations, by its name `NAME.CODE.md`; "" for every other file."""
    code = Path(path.stem).suffix.removeprefix(".")
    return code if is_language(code) else ""


def source_name(path: Path) -> str:
    """The name of the source that a file is, or that it translates."""
    return Path(path.stem).stem if language_of(path) else path.stem


def translates(path: Path, names: Collection[str], languages: tuple[str, ...]) -> bool:
    """Whether a file is a translation by its name, or is meant to be one, as `NAME.X.md` beside the source `NAME`."""
    return bool(language_of(path)) or bool(_parted(path, names, languages))


def _parted(path: Path, names: Collection[str], languages: tuple[str, ...]) -> tuple[str, str] | None:
    """The name and the language of a file beside the source of that name: `NAME.X.md`, `NAME_de.md`."""
    name, _, code = path.stem.rpartition(".")
    if name in names:
        return name, code
    name, _, code = path.stem.rpartition("_")
    return (name, code) if name in names and code.casefold() in map(str.casefold, languages[1:]) else None


def sources_among(paths: Sequence[Path], languages: tuple[str, ...]) -> tuple[Path, ...]:
    """Those files of a folder that are sources, without the translations beside them."""
    names = {path.stem for path in paths}
    return tuple(path for path in paths if not translates(path, names, languages))


def not_alone(path: Path) -> str:
    """Why a file is not read alone: it translates the source beside it; "" for any other."""
    source = path.with_name(f"{Path(path.stem).stem}.md")
    if source == path or not source.is_file():
        return ""
    if language_of(path):
        return f"{path} is a translation; it is read with its source, {source.name}."
    return f"{path} is named like a translation of {source.name}, into a language that there is not."


def strays(
    paths: Iterable[Path],
    sources: Collection[Path],
    languages: tuple[str, ...],
    lines_of: Callable[[Path], Lines],
    meant: Collection[str] = (),
) -> Iterator[Finding]:
    """A finding for each file of translations that nobody would read.

    `sources` are those beside it, `meant` the names that one may have, whether it is there or not.
    """
    there = {path.stem: path.name for path in sources}
    names = {**dict.fromkeys(meant, ""), **there}
    for path in paths:
        said = _stray(path, names, languages) if translates(path, names, languages) else None
        if said is not None:
            yield STRAY_TRANSLATION.at(lines_of(path).whole_line(1), *said)


def _stray(path: Path, names: Mapping[str, str], languages: tuple[str, ...]) -> tuple[str, str] | None:
    """What is wrong with the name of a file of translations, and how to mend it; `names` of sources and their files."""
    name, code = _parted(path, names, languages) or (source_name(path), language_of(path))
    if not names.get(name):
        ending = ".yaml" if name in names else ".md"
        mend = did_you_mean(name, [one for one, file in names.items() if file], "Name it like its source.")
        return f"This translates nothing: there is no {name}{ending} beside it.", mend
    if not language_of(path):
        near = nearest(code, languages[1:], _LIKENESS)
        otherwise = f"Give a translation the code of its language, as {name}.de.md; a source has no dot in its name."
        message = f"Nobody reads this file: a translation of {name} is named {name}.CODE.md."
        if path.stem == f"{name}.{code}":
            message = f"Nobody reads this file: there is no language “{code}”."
        return message, f"Did you mean {name}.{near}.md?" if near else otherwise
    if code == languages[0]:
        return f"“{code}” is the language of the sources themselves.", "Name the file after another language."
    if code not in languages:
        mend = f"Add it to content/site.yaml: “languages: [{', '.join((*languages, code))}]”."
        return f"The site is not published in “{code}”.", mend
    return None


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
    pattern: Pattern,
    languages: tuple[str, ...],
    lines_of: Callable[[str, str], Lines | None],
    listed: Mapping[str, tuple[Term, ...]],
) -> tuple[Pattern, tuple[Finding, ...]]:
    """A source with its translations, and what is wrong with them.

    `lines_of` gives the lines of the file for a name and a language, None where there is none; `listed` are the terms
    that the studio adds to a language.
    """
    found: list[Translation] = []
    findings: list[Finding] = []
    of = languages[0]
    for into in languages[1:]:
        lines = lines_of(pattern.name, into)
        if lines is None:
            findings.append(untranslated(pattern.typed.whole_line(1), pattern.name, pattern.typed.source, into))
            continue
        in_base = lines_of(pattern.adapts.base.name, into) if pattern.adapts else None
        base = read_translation(in_base, of, into)[0] if in_base is not None else None
        translation, wrong = read_translation(lines, of, into, base, listed.get(into, ()))
        found.append(translation)
        findings.extend((*wrong, *judged_beside(pattern, translation, based_told=base is not None)))
    return replace(pattern, translations=tuple(found)), tuple(findings)


def untranslated(span: Span, name: str, source: str, into: str) -> Finding:
    """The finding for a source of that name that has no file in a language."""
    message = f"This is not translated into “{into}”: there is no {name}.{into}.md beside it."
    mend = f"“sizewright translate {source} --into {into}” begins the file."
    return UNTRANSLATED.at(span, message, mend)


def read_translation(
    lines: Lines, of: str, into: str, base: Translation | None = None, listed: tuple[Term, ...] = ()
) -> tuple[Translation, tuple[Finding, ...]]:
    """The translation in some lines; `base` is that of the pattern whose adaptation is translated."""
    file = read_pairs(lines)
    told = dict(base.told) if base is not None else {}
    told.update((pair.key, pair.translation) for pair in file.pairs if pair.translation)
    return Translation(of, into, lines, file.pairs, told, accepted=file.accepted, listed=listed), file.findings


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
