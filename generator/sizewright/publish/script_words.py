"""In: a script of a theme. Out: it in the language that is spoken, or its messages there as a script of their own."""

import json
import re

from sizewright.base.language import Language, spoken
from sizewright.base.script_messages import translated

_TOLD = "globalThis.translated"
_TEXT = r'"(?:[^"\\\n]|\\.)*"'
_MESSAGE = re.compile(rf"\b(tr\(\s*|trNodes\(\s*)({_TEXT})(?=\s*[,)])")
_MANY = re.compile(rf"\b(trMany\(\s*)({_TEXT})(\s*,\s*)({_TEXT})(?=\s*,)")


def script_words(script: str) -> str:
    """One line that adds to `globalThis.translated`, where tr.js looks; "" where nothing is other than in English."""
    language = spoken()
    found = translated(script, language)
    if not found:
        return ""
    words = json.dumps(found, ensure_ascii=False, separators=(",", ":"))
    plural = f',"":n=>+({language.plural})' if any(not isinstance(one, str) for one in found.values()) else ""
    return f"Object.assign({_TOLD}??={{}},{words[:-1]}{plural}}})"


def spoken_script(script: str) -> str:
    """A script with its messages put into the language, and those that cannot be in a line before it.

    A page is lighter so than by a table alone, which has every message in English once more.
    """
    language = spoken()
    found = translated(script, language)
    if not found:
        return script

    def one(call: re.Match[str]) -> str:
        words = found.get(_read(call[2]))
        return call[1] + _written(words) if isinstance(words, str) else call[0]

    def many(call: re.Match[str]) -> str:
        forms = found.get(_read(call[2]))
        return call[0] if forms is None else f"{call[1]}{_written(forms[0])}{call[3]}{_written(forms[1])}"

    put = _MESSAGE.sub(one, script)
    if _has_two_forms(language):
        put = _MANY.sub(many, put)
    return "\n".join(filter(None, (script_words(put), put)))


def _has_two_forms(language: Language) -> bool:
    """Whether its plurals are those of English, which scripts choose among without being told."""
    return re.sub(r"[\s()]", "", language.plural) == "n!=1"


def _read(literal: str) -> str:
    try:
        return str(json.loads(literal))
    except ValueError:  # an escape that JSON has not
        return ""


def _written(words: str) -> str:
    return json.dumps(words, ensure_ascii=False)
