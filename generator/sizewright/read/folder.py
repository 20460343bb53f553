"""In: a project folder, or one pattern file alone. Out: the project, read; what cannot be opened is `Unreadable`."""

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import replace
from pathlib import Path

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean
from sizewright.base.place import Lines
from sizewright.read.adapting.adapted import based_on, read_adaptation
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.pattern import Pattern
from sizewright.read.pictures import judge_picture
from sizewright.read.project import Project, SizeTable, Studio, Term
from sizewright.read.rules import UNREADABLE_SIGN_OFF, UNSAFE_REFERENCE
from sizewright.read.sign_off import SUFFIX, lone_sign_offs, read_sign_off
from sizewright.read.sizes import read_size_table
from sizewright.read.source import KINDS, SourceReader
from sizewright.read.studio import read_studio
from sizewright.read.terms import TERMS, read_terms
from sizewright.read.translating.beside import not_alone, sources_among, strays, translated, without_words
from sizewright.read.translating.lists import LIST, read_lists
from sizewright.read.translating.shared import SITE, STITCHES, read_shared
from sizewright.read.translating.translation import Translation
from sizewright.read.values import Values

_LARGEST = 2_000_000  # bytes; no pattern a person wrote comes near it


class Unreadable(Exception):  # noqa: N818 -- said to a person, who calls it by what happened
    """A path that cannot be read; the message is for a person."""


def read_project(folder: Path) -> Project:
    """The project in a folder. Raises `Unreadable` where there is none or a file cannot be opened."""
    content = folder / "content"
    if not content.is_dir():
        message = f"{folder} holds no folder “content”, so it is no project. “sizewright begin NAME” starts one."
        raise Unreadable(message)
    return _Reader(folder, content.resolve()).project()


def read_single(path: Path, text: str | None = None) -> Project:
    """The project of one pattern file, or of `text` in its place: in a project with its tables, else of it alone."""
    if not_alone(path):
        raise Unreadable(not_alone(path))
    content = path.resolve().parent.parent
    inside = content.name == "content" and path.resolve().parent.name == "patterns"
    reader = _Reader(content.parent if inside else path.resolve().parent, content if inside else None)
    return reader.single(path) if text is None else reader.alone(lines_of(str(path), text), path.stem)


def read_again(project: Project, names: Collection[str]) -> Project:
    """The project with these patterns of it read anew and all else as it was, for somebody who changed just them.

    Where patterns have come or gone, all of it is read anew. Raises `Unreadable`.
    """
    content = (project.folder / "content").resolve()
    reader = _Reader(project.folder, content)
    reader.languages, reader.listed = project.studio.languages, project.studio.listed
    paths = {path.stem: path for path in reader.sources_in("patterns")}
    if set(paths) != {pattern.name for pattern in project.patterns}:
        return read_project(project.folder)
    reader.tables = project.tables
    reader.stitches = Vocabulary(project.terms)
    reader.findings.clear()  # what the folder as a whole gave stands in the project already
    again = {name: reader.pattern(paths[name], "patterns") for name in paths if name in names}
    before = (source for pattern in project.patterns if pattern.name in again for source in pattern.sources)
    sources = {*before, *(source for pattern in again.values() for source in pattern.sources)}
    others = (finding for finding in project.findings if finding.span is None or finding.span.source not in sources)
    patterns = tuple(again.get(pattern.name, pattern) for pattern in project.patterns)
    return replace(project, patterns=patterns, findings=(*others, *reader.findings))


def read_text(text: str, source: str = "pattern.md") -> Project:
    """The project of one pattern that is held in memory, alone; `source` is what its findings call it."""
    path = Path(source)
    return _Reader(path.parent, None).alone(lines_of(source, text), path.stem)


def lines_of(source: str, text: str) -> Lines:
    """The lines of a text, whichever way they end; a NUL, which no text holds, is shown as CommonMark shows it."""
    return Lines(source, text.replace("\r\n", "\n").replace("\r", "\n").replace("\0", "\ufffd"))


class _Reader:
    def __init__(self, folder: Path, content: Path | None) -> None:
        self.folder = folder
        self.content = content
        self.findings: list[Finding] = []
        self.outside: set[Path] = set()
        self.stitches = Vocabulary()
        self.tables: Mapping[str, SizeTable] = {}
        self.cautions: tuple[str, ...] = ()
        self.languages: tuple[str, ...] = Studio().languages
        self.listed: Mapping[str, tuple[Term, ...]] = {}
        self.translations: tuple[Translation, ...] = ()
        self.media: frozenset[str] | None = None
        self.sources: frozenset[str] | None = None
        if content is not None:
            self.media = frozenset(path.relative_to(content / "media").as_posix() for path in self.files("media", "*"))
            self.sources = frozenset(f"{kind}/{path.name}" for kind in KINDS for path in self.sources_in(kind))

    def project(self) -> Project:
        studio, terms = self.shared()
        patterns, pages, techniques = (
            tuple(self.pattern(path, kind) for path in self.sources_in(kind))
            for kind in ("patterns", "pages", "techniques")
        )
        self.judge_pictures()
        self.findings.extend(lone_sign_offs(self.files("patterns", f"*{SUFFIX}"), self.typed))
        self.judge_translations()
        return self.finished(studio, terms, patterns, pages, techniques)

    def single(self, path: Path) -> Project:
        project = self.alone(self.lines(path, str(path)), path.stem)
        pattern = self.signed(self.translated(project.patterns[0], path.parent), path)
        return replace(project, patterns=(pattern,), findings=tuple(self.findings))

    def alone(self, lines: Lines, name: str) -> Project:
        studio, terms = self.shared()
        return replace(self.finished(studio, terms, (self.read(lines, name, "patterns"),), (), ()), whole=False)

    def shared(self) -> tuple[Studio, tuple[Term, ...]]:
        """What all patterns share: the studio, the stitches of its own, and the size tables, which are kept here."""
        studio = Studio()
        terms: tuple[Term, ...] = TERMS
        for path in self.files(".", "site.yaml"):
            values = Values(self.lines(path))
            studio = read_studio(values)
            self.cautions = tuple(one.name for one in studio.cautions)
            self.languages = studio.languages
            self.findings.extend(values.findings)
        lists = ((path.parent.name, self.lines(path)) for path in self.files("catalogues", f"*/{LIST}"))
        self.listed, wrong = read_lists(lists, self.languages)
        self.findings.extend(wrong)
        studio = replace(studio, listed=self.listed)
        for path in self.files(".", "stitches.yaml"):
            values = Values(self.lines(path))
            terms = read_terms(values)
            self.stitches = Vocabulary(terms)
            self.findings.extend(values.findings)
        self.tables = dict(self.read_tables())
        self.translations, findings = read_shared(studio, terms, self.lines_beside(self.content or self.folder))
        self.findings.extend(findings)
        return studio, terms

    def read_tables(self) -> Iterator[tuple[str, SizeTable]]:
        for path in self.files("sizes", "*.yaml"):
            lines = self.lines(path)
            values = Values(lines)
            table = read_size_table(path.stem, lines, values)
            self.findings.extend(values.findings)
            if table is not None:
                yield table.name, table

    def finished(
        self,
        studio: Studio,
        terms: tuple[Term, ...],
        patterns: tuple[Pattern, ...],
        pages: tuple[Pattern, ...],
        techniques: tuple[Pattern, ...],
    ) -> Project:
        return Project(
            self.folder,
            studio,
            patterns,
            pages,
            techniques,
            self.tables,
            terms,
            self.media or frozenset(),
            tuple(self.findings),
            translations=self.translations,
        )

    def files(self, folder: str, names: str) -> tuple[Path, ...]:
        """The files of a folder below `content/`, sorted; one that leads out of the project is a finding, left out."""
        if self.content is None:
            return ()
        found = sorted(
            (self.content / folder).rglob(names) if folder == "media" else (self.content / folder).glob(names)
        )
        return tuple(path for path in found if path.is_file() and not path.name.startswith(".") and self.inside(path))

    def sources_in(self, folder: str) -> tuple[Path, ...]:
        """The sources of a folder, without the translations beside them."""
        return sources_among(self.files(folder, "*.md"), self.languages)

    def inside(self, path: Path) -> bool:
        if self.content is not None and path.resolve().is_relative_to(self.content):
            return True
        if path not in self.outside:
            self.outside.add(path)
            message = f"“{self.typed(path)}” leads out of the project."
            self.findings.append(UNSAFE_REFERENCE.at(None, message, "Copy the file itself into content/."))
        return False

    def typed(self, path: Path) -> str:
        """The path as a person would type it, standing in the project folder."""
        base = self.folder.resolve()
        return path.relative_to(base).as_posix() if path.is_relative_to(base) else str(path)

    def lines(self, path: Path, source: str | None = None) -> Lines:
        source = source or self.typed(path)
        try:
            with path.open("rb") as file:
                data = file.read(_LARGEST + 1)
        except OSError as fault:
            raise Unreadable(f"{source} cannot be opened: {fault.strerror}.") from None
        if len(data) > _LARGEST:
            raise Unreadable(f"{source} is larger than {_LARGEST // 1_000_000} MB, too large for a pattern.")
        try:
            text = data.decode("utf-8-sig")
        except UnicodeDecodeError as fault:
            line = data.count(b"\n", 0, fault.start) + 1
            raise Unreadable(f"{source} is not UTF-8 text (line {line}). Save it again as UTF-8.") from None
        return lines_of(source, text)

    def pattern(self, path: Path, folder: str) -> Pattern:
        pattern = self.translated(self.read(self.lines(path), path.stem, folder), path.parent)
        return self.signed(pattern, path) if folder == "patterns" else pattern

    def signed(self, pattern: Pattern, path: Path) -> Pattern:
        """The pattern with what somebody signed off, where there is a file beside it that says so."""
        beside = (path.parent.resolve() / path.name).with_suffix(SUFFIX)
        if not beside.is_file() or (self.content is not None and not self.inside(beside)):
            return pattern
        try:
            found = read_sign_off(self.lines(beside))
        except Unreadable as fault:
            found = UNREADABLE_SIGN_OFF.at(None, str(fault), "Sign the pattern off again.")
        if isinstance(found, Finding):
            self.findings.append(found)
            return pattern
        return replace(pattern, sign_off=found)

    def translated(self, pattern: Pattern, folder: Path) -> Pattern:
        """The pattern with the translations that stand in a folder, for each language the studio publishes in."""
        told, findings = translated(pattern, self.languages, self.lines_beside(folder), self.listed)
        self.findings.extend(findings)
        return told

    def lines_beside(self, folder: Path) -> Callable[[str, str], Lines | None]:
        """Gives the lines of a translation in a folder, by the name of its source and its language."""

        def lines_of(name: str, code: str) -> Lines | None:
            path = folder / f"{name}.{code}.md"
            there = path.is_file() and (self.content is None or self.inside(path))
            return self.lines(path) if there else None

        return lines_of

    def judge_translations(self) -> None:
        self.findings.extend(without_words(self.languages, self.folder))
        shared = (self.files(".", "*.md"), self.files(".", "*.yaml"))
        self.findings.extend(strays(*shared, self.languages, self.lines, (SITE, STITCHES)))
        for folder in KINDS:
            beside = (self.files(folder, "*.md"), self.sources_in(folder))
            self.findings.extend(strays(*beside, self.languages, self.lines))

    def read(self, lines: Lines, name: str, folder: str) -> Pattern:
        reader = SourceReader(folder, self.tables, self.cautions, self.stitches, self.media, self.sources)
        if folder == "patterns" and based_on(lines) is not None:
            beside = self.beside(Path(lines.source))
            pattern, findings = read_adaptation(lines, name, reader, lambda base: self.base(base, beside))
        else:
            pattern, findings = reader.read(lines, name)
        self.findings.extend(findings)
        return pattern

    def beside(self, source: Path) -> Path:
        """The folder in which the base of a pattern is looked for: that of the patterns, else its own."""
        return self.content / "patterns" if self.content is not None else source.parent

    def base(self, name: str, beside: Path) -> Lines | str:
        """The lines of a base; else what is wrong, and behind a line end what to do about it."""
        path = beside / f"{name}.md"
        others = [one.stem for one in sources_among(sorted(beside.glob("*.md")), self.languages)]
        if "/" in name or "\\" in name or not path.is_file() or (self.content is not None and not self.inside(path)):
            mend = did_you_mean(name, others, f"Put {name}.md beside this file; only the departures stand in this one.")
            return f"The base “{name}” is not there: {self.typed(path)} was looked for.\n{mend}"
        try:
            return self.lines(path)
        except Unreadable as fault:
            return f"{fault}\nMend the base first."

    def judge_pictures(self) -> None:
        for path in self.files("media", "*"):
            source = self.typed(path)
            try:
                finding = judge_picture(path.read_bytes(), path.suffix.lower(), source)
            except OSError as fault:
                raise Unreadable(f"{source} cannot be opened: {fault.strerror}.") from None
            if finding is not None:
                self.findings.append(finding)
