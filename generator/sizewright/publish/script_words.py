"""In: a script of a theme. Out: its messages in the language that is spoken, as a script to stand before it."""

import json

from sizewright.base.language import spoken
from sizewright.base.script_messages import translated

_TOLD = "globalThis.translated"


def script_words(script: str) -> str:
    """One line that adds to `globalThis.translated`, where tr.js looks; "" where nothing is other than in English."""
    language = spoken()
    found = translated(script, language)
    if not found:
        return ""
    words = json.dumps(found, ensure_ascii=False, separators=(",", ":"))
    plural = f',"":n=>+({language.plural})' if any(not isinstance(one, str) for one in found.values()) else ""
    return f"Object.assign({_TOLD}??={{}},{words[:-1]}{plural}}})"
