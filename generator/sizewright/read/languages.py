"""In: `languages` of `content/site.yaml`. Out: their codes, that of the sources first."""

from sizewright.base.language import ENGLISH, is_language
from sizewright.read.pattern import Words
from sizewright.read.values import Keys, Values
from sizewright.read.yaml_tree import Node

_EXAMPLE = "Write for example “languages: [en, de]”, the language of your sources first."


def read_languages(values: Values, studio: Keys) -> tuple[str, ...]:
    """The languages of a site; English alone where nothing is said. `language` is the word for one alone."""
    several = studio.take("languages", lambda key, node: _codes(values, key, node))
    one = studio.take("language", lambda key, node: _codes(values, key, node))
    return several or one or (ENGLISH,)


def _codes(values: Values, key: str, node: Node) -> tuple[str, ...]:
    found: list[Words] = []
    for words in values.many(key, node):
        if not is_language(words.text):
            values.fault(words.span, f"“{words.text}” is no code of a language.", _EXAMPLE)
        elif words.text in (one.text for one in found):
            values.fault(words.span, f"“{words.text}” stands twice in “{key}”.", "Take one of the two out.")
        else:
            found.append(words)
    return tuple(words.text for words in found)
