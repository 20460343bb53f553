"""In: a message with places to fill, and markup for them. Out: the whole as markup."""

from markupsafe import Markup, escape


def message_html(message: str, /, **parts: str) -> Markup:
    """The message escaped, its `{name}` filled; parts that are plain text are escaped too."""
    return escape(message).format(**parts)
