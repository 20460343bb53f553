"""In: a source or a project, and a language. Out: the files of translations beside the sources, new or refreshed."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from sizewright.base.place import Lines
from sizewright.command.outcome import Stopped
from sizewright.command.reading import open_folder, open_paths
from sizewright.read.folder import lines_of
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project
from sizewright.read.source import KINDS
from sizewright.read.translating.beside import language_of, own_texts
from sizewright.read.translating.pairs import read_pairs
from sizewright.read.translating.refreshed import Refreshed, refreshed
from sizewright.read.translating.shared import shared_texts
from sizewright.read.translating.texts import Text, texts_of


@dataclass(frozen=True, slots=True)
class TranslationFile:
    """One file of translations: its path, what stands in it now ("" where it is not there yet), and what is to."""

    path: Path
    before: str
    after: Refreshed

    @property
    def changes(self) -> bool:
        """Whether it is to be written."""
        return self.before != self.after.text


def translation_files(path: Path, into: str) -> tuple[TranslationFile, ...]:
    """The files for a source, or for all sources of a project. Raises Stopped, and writes nothing."""
    folder, alone = _place(path)
    project = open_folder(folder).project if folder else open_paths((path,))[0].project
    if into == project.studio.language:
        raise Stopped(f"“{into}” is the language of the sources themselves.")
    found = (*_files(project, into, alone), *_shared(project, into, alone))
    if not found:
        raise Stopped(f"{path} holds nothing that is translated.")
    return found


def _place(path: Path) -> tuple[Path | None, Path | None]:
    """The project folder that a path lies in, if it does, and the one source that is meant."""
    if path.is_dir():
        return path, None
    if not path.is_file():
        raise Stopped(f"{path} is not there.")
    if language_of(path):
        raise Stopped(f"{path} is a translation itself: give the source beside it.")
    resolved = path.resolve()
    if resolved.parent.name == "content" and resolved.suffix == ".yaml":
        return path.parent / "..", path
    inside = resolved.parent.name in KINDS and resolved.parent.parent.name == "content"
    return (path.parent / ".." / ".." if inside else None), path


def _files(project: Project, into: str, alone: Path | None) -> Iterator[TranslationFile]:
    for pattern in (*project.patterns, *project.pages, *project.techniques):
        path = project.folder / pattern.typed.source
        if alone is None:
            yield _file(path, pattern, into, together=True)
        elif not project.whole or path.resolve() == alone.resolve():
            yield _file(alone, pattern, into, together=False)


def _shared(project: Project, into: str, alone: Path | None) -> Iterator[TranslationFile]:
    """What the studio says in files of its own, where it says anything."""
    for name, texts in shared_texts(project.studio, project.terms):
        path = project.folder / "content" / f"{name}.yaml"
        if texts and (alone is None or path.resolve() == alone.resolve()):
            yield _refreshed(_beside(alone or path, name, into), texts, texts)


def _file(path: Path, pattern: Pattern, into: str, *, together: bool) -> TranslationFile:
    """The file of one source; `together` with it that of its base is written."""
    based = pattern.adapts.base if pattern.adapts else None
    base_told = based is not None and (together or _beside(path, based.name, into).is_file())
    texts = texts_of(pattern)
    own = own_texts(pattern, texts, based_told=base_told)
    return _refreshed(_beside(path, pattern.name, into), own, texts)


def _beside(path: Path, name: str, into: str) -> Path:
    return path.with_name(f"{name}.{into}.md")


def _refreshed(path: Path, texts: tuple[Text, ...], known: tuple[Text, ...]) -> TranslationFile:
    """A file with its pairs in order. Raises Stopped where something in it is no pair, which would be lost."""
    before = _text_of(path)
    file = read_pairs(Lines(path.as_posix(), before))
    if file.findings:
        first = file.findings[0]
        raise Stopped(f"{first.span}: {first.message} {first.mend} No file was written.")
    return TranslationFile(path, before, refreshed(texts, {text.key for text in known}, file))


def _text_of(path: Path) -> str:
    if not path.is_file():
        return ""
    try:
        return lines_of(str(path), path.read_bytes().decode("utf-8-sig")).text
    except UnicodeDecodeError as fault:
        raise Stopped(f"{path} is not UTF-8 text. Save it again as UTF-8.") from fault
