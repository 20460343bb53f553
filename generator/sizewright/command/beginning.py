"""In: a name and the folder a person is in. Out: a small pattern that proofs clean, and a project around it."""

import re
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from string import Template
from unicodedata import combining, normalize

from sizewright.command import starter

_ADDRESS = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_LONGEST = 60


class CannotBegin(Exception):  # noqa: N818 (named for the fault, like a finding)
    """Nothing was written, for a reason that is a sentence for a person."""


@dataclass(frozen=True, slots=True)
class Begun:
    """What was written, and the project folder it belongs to (None for a file that stands alone)."""

    pattern: Path
    project: Path | None
    studio: Path | None


def is_address(name: str) -> bool:
    """Whether a name can be a page's address, and a file's on every system: small letters, digits, single hyphens."""
    return bool(_ADDRESS.fullmatch(name)) and len(name) <= _LONGEST


def nearest_address(name: str) -> str:
    """The address closest to what was typed; "" where none of it can be kept."""
    plain = "".join(sign for sign in normalize("NFKD", name.removesuffix(".md")) if not combining(sign))
    words = re.findall(r"[a-z0-9]+", plain.casefold())
    return "-".join(words)[:_LONGEST].strip("-")


def begin(name: str, folder: Path, *, new_project: bool, text: str | None = None) -> Begun:
    """Writes the pattern: into the project the folder is part of, as a new project, or alone.

    An empty folder becomes a project, and so does any other where `new_project` asks for it. `text` is what is written,
    the pattern to start from where it is left out.
    Raises CannotBegin, and OSError where the system refuses; nothing that is there is ever written over.
    """
    _check(name)
    project = project_around(folder)
    if project is None and (new_project or _is_empty(folder)):
        project = folder
    file = project / "content" / "patterns" / f"{name}.md" if project else folder / f"{name}.md"
    if file.exists() or file.is_symlink():
        raise CannotBegin(f"{shown_path(file, folder)} is there already; it was left as it is. Choose another name.")
    studio = _begin_project(project) if project else None
    file.parent.mkdir(parents=True, exist_ok=True)
    _write_new(file, Template(_text("pattern.md")).substitute(title=title_of(name)) if text is None else text)
    return Begun(file, project, studio)


def title_of(name: str) -> str:
    """A title where nobody gave one: "ear-band" is "Ear band"."""
    return name.replace("-", " ").capitalize()


def _check(name: str) -> None:
    if is_address(name):
        return
    near = nearest_address(name)
    instead = f" Try “{near}”." if near else ""
    raise CannotBegin(
        f"“{name}” cannot be a page's address: use small letters, digits and hyphens, at most {_LONGEST}.{instead}"
    )


def project_around(folder: Path) -> Path | None:
    """The project a folder is part of: itself or one above it; None outside of any."""
    if (folder / "content").is_dir():
        return folder
    return next((above for above in folder.parents if (above / "content" / "site.yaml").is_file()), None)


def _is_empty(folder: Path) -> bool:
    return all(entry.name.startswith(".") for entry in folder.iterdir())


def _begin_project(project: Path) -> Path | None:
    """Writes `content/site.yaml` where there is none; gives its path only if it was written."""
    studio = project / "content" / "site.yaml"
    if studio.exists() or studio.is_symlink():
        return None
    studio.parent.mkdir(parents=True, exist_ok=True)
    _write_new(studio, _text("site.yaml"))
    return studio


def _write_new(file: Path, text: str) -> None:
    with file.open("x", encoding="utf-8", newline="\n") as new:
        new.write(text)


def _text(name: str) -> str:
    return files(starter).joinpath(name).read_text(encoding="utf-8")


def shown_path(path: Path, folder: Path) -> str:
    """The path as the person would type it from the folder they are in."""
    try:
        return str(path.relative_to(folder))
    except ValueError:
        return str(path)
