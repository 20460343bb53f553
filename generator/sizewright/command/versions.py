"""In: OLD and NEW as a person types them: files, folders, git revisions. Out: the patterns of both, pair by pair."""

from collections.abc import Iterator, Mapping
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from sizewright.base.finding import has_error
from sizewright.command.outcome import Stopped
from sizewright.command.revisions import Repository
from sizewright.grade.run import grade
from sizewright.read.folder import Unreadable, read_project, read_single
from sizewright.read.pattern import Pattern
from sizewright.work.run import work
from sizewright.work.worked import Worked


@dataclass(frozen=True, slots=True)
class Version:
    """One side: its patterns by name; `single` where one file was asked for. `name` is what the person typed."""

    name: str
    patterns: Mapping[str, Pattern]
    single: bool
    faulty: frozenset[str]


@dataclass(frozen=True, slots=True)
class Versions:
    """Pairs of the same pattern, carried out, and the names of those only one side has."""

    old: Version
    new: Version

    def pairs(self) -> Iterator[tuple[Pattern, Pattern]]:
        """The patterns of both sides, by name; two files are a pair whatever they are called. Raises Stopped."""
        old, new = self.old.patterns, self.new.patterns
        if self.old.single and self.new.single:
            yield from zip(old.values(), new.values(), strict=True)
            return
        for here, there in ((self.old, self.new), (self.new, self.old)):
            for name in here.patterns if here.single else ():
                if name not in there.patterns:
                    raise Stopped(f"{there.name} has no pattern “{name}”.")
        yield from ((old[name], new[name]) for name in old if name in new)

    def only(self) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The patterns that are gone, and those that are new."""
        if self.old.single or self.new.single:
            return (), ()
        old, new = self.old.patterns, self.new.patterns
        return tuple(name for name in old if name not in new), tuple(name for name in new if name not in old)


def carried_out(pattern: Pattern) -> Worked:
    """The pattern in every size."""
    return work(grade(pattern))


@contextmanager
def versions(old: str, new: str) -> Iterator[Versions]:
    """Both sides, read. A revision alone means there what the other side names here, or the project of this folder.

    Raises Stopped where a side cannot be found or read.
    """
    with ExitStack() as stack:
        sides = []
        for typed, other in ((old, new), (new, old)):
            path = Path(typed)
            if not path.exists():
                beside = Path(other) if Path(other).exists() else Path()
                path = stack.enter_context(_checked_out(typed, beside))
            sides.append(_read(typed, path))
        yield Versions(*sides)


@contextmanager
def _checked_out(typed: str, beside: Path) -> Iterator[Path]:
    revision, colon, named = typed.partition(":")
    if not revision:
        raise Stopped(f"“{typed}” names no revision before the colon, and there is no such file.")
    path = Path(named or ".") if colon else beside
    around = path if path.is_dir() else path.parent
    while not around.is_dir():  # the folder may be gone by now
        around = around.parent
    repository = Repository(around if not colon else Path())
    place = repository.within(path.resolve())
    project = _project_of(place)
    with TemporaryDirectory(prefix="sizewright-") as folder:
        repository.write(repository.commit(revision), project, Path(folder))
        found = Path(folder) / place
        if not found.exists():
            raise Stopped(f"There is no {place} in {revision}.")
        yield found


def _project_of(place: str) -> str:
    """What of the repository a source needs: for a pattern its project's content, for a folder all below it."""
    parts = place.split("/")
    if parts[-3:-1] == ["content", "patterns"]:
        return "/".join(parts[:-2])
    return place


def _read(typed: str, path: Path) -> Version:
    try:
        project = read_single(path) if not path.is_dir() else read_project(path)
    except Unreadable as reason:
        raise Stopped(str(reason).replace(str(path), typed)) from reason
    wrong = {finding.span.source for finding in project.findings if finding.span and has_error((finding,))}
    faulty = frozenset(pattern.name for pattern in project.patterns if pattern.source in wrong)
    patterns = {pattern.name: pattern for pattern in project.patterns}
    return Version(typed, patterns, not path.is_dir(), faulty)
