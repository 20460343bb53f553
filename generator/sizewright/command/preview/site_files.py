"""In: the path a browser asks for and the folder of pages. Out: the file that answers, never one outside it."""

from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType
from urllib.parse import quote, unquote

# What the written site consists of. A kind that is not here is sent as plain bytes, which a browser does not run.
CONTENT_TYPES: Mapping[str, str] = MappingProxyType(
    {
        ".html": "text/html; charset=utf-8",
        ".css": "text/css; charset=utf-8",
        ".js": "text/javascript; charset=utf-8",
        ".json": "application/json",
        ".webmanifest": "application/manifest+json",
        ".atom": "application/atom+xml",
        ".xml": "application/xml",
        ".txt": "text/plain; charset=utf-8",
        ".pdf": "application/pdf",
        ".svg": "image/svg+xml",
        ".png": "image/png",
        ".jpg": "image/jpeg",
        ".jpeg": "image/jpeg",
        ".webp": "image/webp",
        ".avif": "image/avif",
        ".gif": "image/gif",
        ".ico": "image/x-icon",
        ".woff2": "font/woff2",
        ".woff": "font/woff",
        ".ttf": "font/ttf",
        ".vtt": "text/vtt; charset=utf-8",
    }
)


def content_type(file: Path) -> str:
    """What a browser is told that the file is."""
    return CONTENT_TYPES.get(file.suffix.casefold(), "application/octet-stream")


def parts_of(target: str) -> tuple[str, ...] | None:
    """The steps of a request's path, or None where it steps out of the folder or is no path at all."""
    path = target.split("?", 1)[0].split("#", 1)[0]
    steps = tuple(step for step in unquote(path).split("/") if step not in ("", "."))
    outside = any(step == ".." or set(step) & set("\\\0:") for step in steps)
    return None if outside or not path.startswith("/") else steps


def file_for(folder: Path, target: str) -> Path | None:
    """The file in the folder that answers a request; a folder is answered by its index page; None where there is none.

    Links are followed before the test, so that one that leads out of the folder is not.
    """
    parts = parts_of(target)
    if parts is None:
        return None
    asked = folder.joinpath(*parts)
    is_folder = target.partition("?")[0].endswith("/")
    try:
        found = (asked / "index.html" if is_folder else asked).resolve(strict=True)
    except (OSError, RuntimeError):  # not there, a name too long, or a circle of links
        return None
    return found if found.is_file() and found.is_relative_to(folder.resolve()) else None


def with_slash(folder: Path, target: str) -> str | None:
    """The address with a slash at its end where a folder is asked for without it, so that relative links hold."""
    parts = parts_of(target)
    path, _, query = target.partition("?")
    if not parts or path.endswith("/") or file_for(folder, f"{path}/") is None:
        return None
    return "/" + "/".join(quote(part) for part in parts) + "/" + (f"?{query}" if query else "")
