"""In: a theme's name and the project folder. Out: its templates, compiled once, and the files it adds to the site.

A theme is looked for file by file: in the project's own `themes/NAME`, then in the shipped theme of that name, then in
the shipped `studio` theme. So a designer overrides one template or one stylesheet and keeps the rest.
"""

import re
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from traceback import extract_tb
from typing import Any

from jinja2 import BaseLoader, Environment, FileSystemLoader, StrictUndefined
from jinja2.exceptions import TemplateNotFound, TemplateSyntaxError
from jinja2.runtime import LoopContext
from jinja2.sandbox import ImmutableSandboxedEnvironment

from sizewright.base.language import tr, tr_as, tr_many
from sizewright.base.nearest import did_you_mean
from sizewright.publish.output import Output
from sizewright.publish.slim import slim
from sizewright.publish.view_words import in_both_terms

BASIC = "studio"
ASSETS = "assets"
ICON = "icon.svg"
ICON_PICTURES = {size: f"icon-{size}.png" for size in (192, 512)}  # of the icon, for devices that draw no SVG
PAPER, LARGE = "paper", "large"
_SHIPPED = "shipped"
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]*")


class BadTheme(Exception):  # noqa: N818 (named for the fault, like a finding)
    """A theme that is missing or broken, in words for a person."""


@dataclass(frozen=True, slots=True)
class Theme:
    """Templates and files of one theme; `folders` are searched in this order."""

    name: str
    folders: tuple[Path, ...]
    environment: Environment = field(repr=False, compare=False)

    @classmethod
    def find(cls, name: str, project: Path) -> "Theme":
        """The theme of that name, the project's own or a shipped one.

        Raises BadTheme where there is none.
        """
        if not _NAME.fullmatch(name):
            raise BadTheme(f"“{name}” is not a theme's name: letters, digits, - and _ only.")
        own, shipped = project / "themes", _shipped()
        folders = tuple(folder for folder in (own / name, shipped / name) if folder.is_dir())
        if (own / name) in folders:
            _inside(project, own / name)
            if (shipped / name) in folders and (own / name).samefile(shipped / name):
                folders = (shipped / name,)  # the project is the one that themes are shipped from
        if not folders:
            known = {folder.name for place in (own, shipped) if place.is_dir() for folder in place.iterdir()}
            raise BadTheme(f"There is no theme “{name}”. {did_you_mean(name, sorted(known))}".strip())
        if (shipped / BASIC) not in folders:
            folders = (*folders, shipped / BASIC)
        return cls(name, folders, _environment(folders))

    def file(self, path: str) -> Path | None:
        """The nearest file of that path, for example `paper/paper.css`; None where no folder has it.

        Raises BadTheme for a link that leads out of the theme's folder.
        """
        for folder in self.folders:
            found = folder / path
            if found.is_file():
                return _inside(folder, found)
        return None

    def assets(self) -> tuple[Output, ...]:
        """What the theme adds to the site: its `assets` folder, below `theme/`, scripts without their comments."""
        files = dict(self._below(ASSETS))
        drawn = files[ICON].parent  # whoever draws another icon is not given pictures of this one
        told = {
            name: path for name, path in files.items() if name not in ICON_PICTURES.values() or path.parent == drawn
        }
        return tuple(Output(f"theme/{name}", slim(name, path.read_bytes())) for name, path in told.items())

    def paper_files(self, *, large: bool = False) -> tuple[Output, ...]:
        """What print pages may load beside media: the `paper` folder (stylesheets, TTF fonts) as `theme/paper/...`.

        In large print a file of the `large` folder stands for the one of its name there.
        """
        found = {name: (f"theme/{PAPER}/{name}", path) for name, path in self._below(PAPER)}
        if large:
            found |= {name: (f"theme/{LARGE}/{name}", path) for name, path in self._below(LARGE)}
        return tuple(Output(name, path.read_bytes()) for _, (name, path) in sorted(found.items()))

    def render(self, template: str, **data: object) -> str:
        """One page. Raises BadTheme where a template cannot be read or asks for what is not there."""
        try:
            return self.environment.get_template(template).render(**data)
        except BadTheme:
            raise
        except TemplateSyntaxError as error:
            raise BadTheme(f"{error.filename or template}:{error.lineno}: {error.message}") from error
        except Exception as error:  # a template can fail in as many ways as a program
            raise BadTheme(f"{_place(error) or template}: {error} (theme “{self.name}”)") from error

    def _below(self, place: str) -> Iterator[tuple[str, Path]]:
        """Every file below one folder of the theme, by its path from there, the nearest of each, sorted."""
        found: dict[str, Path] = {}
        for folder in self.folders:
            top = folder / place
            for path in sorted(top.rglob("*")):
                if path.is_file() and not path.name.startswith("."):
                    found.setdefault(path.relative_to(top).as_posix(), _inside(folder, path))
        yield from sorted(found.items())


def _place(error: Exception) -> str:
    """The template and line where an error happened."""
    frames = [frame for frame in extract_tb(error.__traceback__) if frame.filename.endswith(".html")]
    return f"{frames[-1].filename}:{frames[-1].lineno}" if frames else ""


def _inside(folder: Path, path: Path) -> Path:
    resolved = path.resolve()
    if not resolved.is_relative_to(folder.resolve()):
        raise BadTheme(f"{path} is a link that leads out of its folder.")
    return resolved


@cache
def _shipped() -> Path:
    """Where the shipped themes are: in the package when installed from a wheel, else in the repository."""
    package = Path(__file__).resolve().parents[1]
    inside = package / "themes"
    return inside if inside.is_dir() else package.parents[1] / "themes"


@cache
def _environment(folders: tuple[Path, ...]) -> Environment:
    """One environment for a list of folders; `shipped/NAME` is the template that an overriding one extends."""
    environment = _Sandbox(
        folders,
        loader=_Nearest(folders),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=True,
        extensions=["jinja2.ext.i18n"],
    )
    environment.globals.clear()
    environment.policies["ext.i18n.trimmed"] = True
    environment.install_gettext_callables(tr, tr_many, newstyle=True, pgettext=tr_as)  # type: ignore[attr-defined]
    environment.globals["_"] = environment.globals["gettext"]
    environment.filters["terms"] = in_both_terms
    return environment


_LOOP = ("first", "last", "index")


class _Sandbox(ImmutableSandboxedEnvironment):
    """The sandbox, with a short way to what templates are given: a field of a view is data and always safe."""

    def __init__(self, folders: tuple[Path, ...], **options: Any) -> None:  # noqa: ANN401 (those of the engine)
        super().__init__(**options)
        self._folders = folders

    def join_path(self, template: str, parent: str) -> str:
        """The name of a template that another asks for: `shipped/NAME` lies in a folder behind that of the asker."""
        if not template.startswith(f"{_SHIPPED}/"):
            return template
        behind, name = _behind(parent)
        while behind < len(self._folders) and not (self._folders[behind] / name).is_file():
            behind += 1
        return f"{_SHIPPED}/" * behind + template

    def getattr(self, obj: Any, attribute: str) -> Any:  # noqa: ANN401 (the signature of the engine)
        """The attribute, or what the sandbox makes of it."""
        kind = type(obj)
        if attribute in getattr(kind, "__dataclass_fields__", ()) or (kind is LoopContext and attribute in _LOOP):
            return getattr(obj, attribute)
        return super().getattr(obj, attribute)


def _behind(template: str) -> tuple[int, str]:
    """How many folders are passed over for a template, and its name: "shipped/page.html" passes over one."""
    behind = 0
    while template.startswith(f"{_SHIPPED}/"):
        behind, template = behind + 1, template.removeprefix(f"{_SHIPPED}/")
    return behind, template


class _Nearest(BaseLoader):
    """Reads a template from the first folder that has it; one under `shipped/` from those behind."""

    def __init__(self, folders: tuple[Path, ...]) -> None:
        self._loaders = tuple(_Enclosed(folder) for folder in folders)

    def get_source(self, environment: Environment, template: str) -> tuple[str, str, Any]:
        """The text of a template. Raises TemplateNotFound, and BadTheme for a link out of a folder."""
        behind, name = _behind(template)
        for loader in self._loaders[behind:]:
            with suppress(TemplateNotFound):
                return loader.get_source(environment, name)
        raise TemplateNotFound(template)


class _Enclosed(FileSystemLoader):
    """Reads templates of one folder, and through no link that leads out of it."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder)
        self._folder = folder

    def get_source(self, environment: Environment, template: str) -> tuple[str, str, Any]:
        """The text of a template. Raises BadTheme for a link out of the folder."""
        source, name, fresh = super().get_source(environment, template)
        _inside(self._folder, Path(name))
        return source, name, fresh
