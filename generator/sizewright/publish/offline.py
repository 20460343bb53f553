"""In: the digests of a site's files. Out: its service worker and its web app manifest, so that it is read offline.

Sources: W3C Service Workers (the worker's script is at the top of what it serves), W3C Web Application Manifest.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass
from pathlib import Path

from sizewright.base.language import spoken, tr
from sizewright.publish.manifest import digest
from sizewright.publish.output import Output
from sizewright.publish.theme import ICON, ICON_PICTURES
from sizewright.read.project import Studio

WORKER = "sw.js"
APP = "site.webmanifest"

_SCRIPT = Path(__file__).with_name("worker.js")
_SHORT = 12  # signs of a digest that the worker compares by

# What a reader does not read: for machines, and the worker itself.
_NOT_READ = (".json", ".xml", ".webmanifest", ".js.map")

# For a place where no worker may be: it takes itself away, and whatever one before it has kept.
RETIRED = b"""self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith("sizewright ")) await caches.delete(name);
  await self.registration.unregister();
})()));
"""


@dataclass(frozen=True, slots=True)
class NoNetwork:
    """What is said in one language where a page cannot be had."""

    lang: str
    title: str
    heading: str
    text: str
    link: str

    @classmethod
    def told(cls) -> "NoNetwork":
        """In the language that is spoken."""
        return cls(
            spoken().code,
            tr("No network"),
            tr("There is no network"),
            tr("This page has not been opened on this device before, so it is not kept here."),
            tr("All patterns"),
        )


def offline_files(studio: Studio, digests: Mapping[str, str], languages: Mapping[str, NoNetwork]) -> Iterator[Output]:
    """The two files; `digests` are those of all others, by their paths, `languages` by their folders ("", "de/")."""
    yield Output(APP, _app(studio, tuple(_icons(digests))))
    yield Output(WORKER, _worker(digests, languages))


def _worker(digests: Mapping[str, str], languages: Mapping[str, NoNetwork]) -> bytes:
    """The worker's script: another one as soon as any file is, so that a browser takes the new site."""
    files = {path: digests[path][:_SHORT] for path in sorted(digests) if not path.endswith(_NOT_READ)}
    table = json.dumps(files, ensure_ascii=False, indent=1)
    version = digest(table.encode())[:_SHORT]
    told = json.dumps({below: asdict(words) for below, words in languages.items()}, ensure_ascii=False)
    head = f'const FILES = {table};\nconst VERSION = "{version}";\nconst LANGUAGES = {told};\n'
    return head.encode() + _SCRIPT.read_bytes()


def _icons(digests: Mapping[str, str]) -> Iterator[dict[str, str]]:
    """The icon, and the pictures of it that there are."""
    named = {"any": ("image/svg+xml", ICON)}
    named |= {f"{size}x{size}": ("image/png", name) for size, name in ICON_PICTURES.items()}
    for sizes, (kind, name) in named.items():
        if f"theme/{name}" in digests:
            yield {"src": f"theme/{name}", "sizes": sizes, "type": kind, "purpose": "any"}


def _app(studio: Studio, icons: tuple[dict[str, str], ...]) -> bytes:
    told: dict[str, object] = {
        "name": studio.name,
        "description": studio.description,
        "lang": studio.language,
        "id": "./",
        "start_url": "./index.html",
        "scope": "./",
        "display": "standalone",
        "icons": icons,
    }
    return (
        json.dumps({name: value for name, value in told.items() if value}, ensure_ascii=False, indent=1) + "\n"
    ).encode()
