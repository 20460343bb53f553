"""In: JSON values. Out: the content of a script element that holds them as data."""

import json
from collections.abc import Mapping

from markupsafe import Markup

Value = str | int | None | list["Value"] | Mapping[str, "Value"]

# What must not stand inside a script element as it is (HTML Living Standard, section 4.12.1.3).
_ESCAPED = str.maketrans({"<": "\\u003c", ">": "\\u003e", "&": "\\u0026", "\u2028": "\\u2028", "\u2029": "\\u2029"})


def script_data(value: Value) -> Markup:
    """The JSON text, safe wherever a script element may stand."""
    return Markup(json.dumps(value, ensure_ascii=False, separators=(",", ":")).translate(_ESCAPED))  # noqa: S704 (escaped here)
