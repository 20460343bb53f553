"""In: the code of a language and folders of message catalogues. Out: words of the program and of themes in it.

Every message is English in the program and its own key (gettext). What is being written is in the language of the
innermost `with speaking(...)`; without one it is English, so that what only checks and prints findings need not know of
languages. Catalogues are `CODE/*.po` in the folders given; a later folder adds to the earlier ones or tells it anew.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field, replace
from functools import cache
from io import BytesIO
from pathlib import Path
from types import MappingProxyType

from babel import Locale, UnknownLocaleError
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po
from babel.numbers import get_decimal_symbol
from babel.support import Translations

ENGLISH = "en"
_FAR = 200  # until there every form of every language's plural has come up once, as far as it is ever counted here
CATALOGUES = Path(__file__).resolve().parents[1] / "catalogues"  # those of the program


@dataclass(frozen=True, slots=True, eq=False)
class Language:
    """One language: its code (BCP 47), its messages, and the names of one source that are told otherwise in it.

    `comma` is the sign before decimals.
    """

    code: str
    messages: Translations = field(repr=False)
    names: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    comma: str = "."

    @property
    def locale(self) -> Locale:
        """What is known of how dates and numbers are written in it."""
        return Locale.parse(self.code, sep="-")

    @property
    def plural(self) -> str:
        """Which form of a message a number `n` takes, from 0: an expression of C, as catalogues tell it (gettext)."""
        rule = re.search(r"plural=([^;]+)", self.messages.info().get("plural-forms", ""))
        return rule[1] if rule else "n != 1"

    @property
    def numbers(self) -> tuple[int, ...]:
        """A number for each form of a message, in the order of the forms."""
        first: dict[int, int] = {}
        for number in range(_FAR):
            first.setdefault(self.messages.plural(number), number)
        return tuple(first[form] for form in sorted(first))

    @property
    def own_name(self) -> str:
        """What its speakers call it: "Deutsch"."""
        name = self.locale.get_display_name() or self.code
        return name[:1].upper() + name[1:]

    def naming(self, names: Mapping[str, str]) -> "Language":
        """The same language with the names of one source."""
        return replace(self, names=names)


def is_language(code: str) -> bool:
    """Whether there is a language of this code (BCP 47), as it is written in a page: "de", "pt-BR"."""
    try:
        return str(Locale.parse(code, sep="-")).replace("_", "-") == code
    except (ValueError, UnknownLocaleError):
        return False


def as_known(code: str) -> tuple[str, ...]:
    """The names a language may be known by, the wider first: what is written in "de" is read in "de-AT" too."""
    wide = code.partition("-")[0]
    return (wide,) if wide == code else (wide, code)


def language(code: str, folders: Sequence[Path] = ()) -> Language:
    """A language with the catalogues of the program and of `folders`. Read once for each."""
    return _language(code, (CATALOGUES, *folders))


@cache
def _language(code: str, folders: tuple[Path, ...]) -> Language:
    messages: Translations | None = None
    locale = Locale.parse(code, sep="-")
    for path in (
        path for folder in folders for known in as_known(code) for path in sorted((folder / known).glob("*.po"))
    ):
        with path.open("rb") as opened:
            catalogue = read_po(opened, locale=locale, abort_invalid=True)
        compiled = BytesIO()
        write_mo(compiled, catalogue)
        compiled.seek(0)
        own = Translations(compiled)
        messages = messages.merge(own) if messages else own
    return Language(code, messages or Translations(), comma=get_decimal_symbol(locale))


_SPOKEN: ContextVar[Language | None] = ContextVar("spoken", default=None)


@contextmanager
def speaking(spoken: Language) -> Iterator[None]:
    """What is written within is in this language."""
    token = _SPOKEN.set(spoken)
    try:
        yield
    finally:
        _SPOKEN.reset(token)


def spoken() -> Language:
    """The language that is written in."""
    return _SPOKEN.get() or _english()


@cache
def _english() -> Language:
    return language(ENGLISH)  # asked for with every number in print


def in_english() -> bool:
    """Whether it is English, of whatever country."""
    return is_english(spoken().code)


def is_english(code: str) -> bool:
    """Whether a language is English, of whatever country."""
    return as_known(code)[0] == ENGLISH


def tr(message: str, /, **parts: object) -> str:
    """A message in the spoken language, its `{name}` filled in where parts are given."""
    return _filled(spoken().messages.ugettext(message), parts)


def tr_many(one: str, many: str, number: int, /, **parts: object) -> str:
    """The form of a message for a number, which fills in `{n}`."""
    return _filled(spoken().messages.ungettext(one, many, number), {"n": number, **parts})


def tr_as(context: str, message: str, /, **parts: object) -> str:
    """A message that means several things in English, told apart by its context."""
    return _filled(str(spoken().messages.upgettext(context, message)), parts)


def later(message: str, /) -> str:
    """Marks a message of a table, to be translated with `tr` where it is used."""
    return message


def later_as(_context: str, message: str, /) -> str:
    """The same for one that is told apart by its context, to be translated with `tr_as`."""
    return message


def named(name: str, /) -> str:
    """A name that a source gives (a size, a stitch pattern, a piece) as its translation says it."""
    return spoken().names.get(name, name)


def _filled(message: str, parts: Mapping[str, object]) -> str:
    return message.format(**parts) if parts else message
