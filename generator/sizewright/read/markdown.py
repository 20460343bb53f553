"""In: Markdown. Out: its tokens, with `{...}` and `::: ...` as tokens of their own. HTML is never passed on."""

from collections.abc import Sequence
from functools import cache

from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.rules_inline import StateInline
from markdown_it.token import Token
from mdit_py_plugins.container import container_plugin

INSERT = "insert"
PASSAGE_OPEN = "container_passage_open"
PASSAGE_CLOSE = "container_passage_close"


class _Parser(MarkdownIt):
    def validateLink(self, url: str) -> bool:  # noqa: ARG002, N802 -- overrides markdown-it
        """Every link is passed on: an unsafe one is a finding of ours, not dropped silently."""
        return True


def _insert(state: StateInline, silent: bool) -> bool:  # noqa: FBT001 -- the signature markdown-it calls
    """`{...}` up to the brace that closes it; without one, up to the end of the line, and `info` says so."""
    if state.src[state.pos] != "{":
        return False
    close = state.src.find("}", state.pos, state.posMax)
    line_end = state.src.find("\n", state.pos, state.posMax)
    closed = close >= 0 and (line_end < 0 or close < line_end)
    end = close + 1 if closed else (line_end if line_end >= 0 else state.posMax)
    if not silent:
        token = state.push(INSERT, "", 0)
        token.content = state.src[state.pos : end]
        token.info = "closed" if closed else "open"
        token.meta = {"start": state.pos}
    state.pos = end
    return True


@cache
def _parser() -> _Parser:
    parser = _Parser("commonmark", {"html": False}, renderer_cls=RendererHTML)
    parser.enable(["table", "strikethrough"])
    parser.use(container_plugin, name="passage", validate=lambda *_: True)
    parser.inline.ruler.before("link", INSERT, _insert)
    return parser


@cache
def _renderer() -> RendererHTML:
    return RendererHTML(_parser())


def tokens_of(text: str) -> list[Token]:
    """The tokens of a text: CommonMark and tables.

    A line end is put behind it: the reader of passages looks at the sign behind the last line though there be none.
    """
    return _parser().parse(f"{text}\n")


def html_of(text: str) -> str:
    """The HTML of a whole text of our own, in which no numbers stand."""
    return str(_renderer().render(tokens_of(text), _parser().options, {}))


def rendered(tokens: Sequence[Token], index: int) -> str:
    """The HTML of one token."""
    rule = _renderer().rules.get(tokens[index].type)
    if rule is not None:
        return str(rule(tokens, index, _parser().options, {}))
    return _renderer().renderToken(tokens, index, _parser().options, {})
