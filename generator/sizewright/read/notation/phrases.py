"""In: a sentence of instructions. Out: what it says, where it is one of the trade's set phrases; one table.

A sentence is written out with "#" for each number and matched as a whole; a group of the match is turned back into the
tokens it stands for.
"""

import re
from collections.abc import Callable
from dataclasses import replace

from sizewright.read.inserts import Told
from sizewright.read.notation.apart_phrase import APART, apart
from sizewright.read.notation.direction_tree import (
    BindOffAll,
    CastOn,
    Direction,
    Even,
    Gather,
    Join,
    RepeatRows,
    SameAgain,
    TakeUp,
)
from sizewright.read.notation.not_understood import NotUnderstood
from sizewright.read.notation.phrase_match import Match
from sizewright.read.notation.row_labels import row_name
from sizewright.read.notation.silent_phrases import DIVIDED, SILENT
from sizewright.read.notation.tree import Count
from sizewright.read.notation.words import Kind, Sentence, told_sentence, typed

_ROW = r"(?:rows?|rnds?|rounds?)"
_STS = r"\b(?:sts?|stitch|stitches)\b"
_UNIT = r"(?: (?:cm|in|inch|inches|mm|\"|″))?"
_OTHER = rf"(?: (?P<other>[\[(] #{_UNIT} [\])]))?"
_SIDE = r"(?:rs|ws|right side|wrong side)"
_SIDED = rf"{_SIDE} (?:row|rnd|round)"
_FACING = rf"with (?:the )?(?P<facing>{_SIDE}) facing(?: for (?:the )?next row)?"
_ENDS = rf"(?:with|after|on) (?:an? )?(?P<ends>{_SIDED})|(?P<at>at (?:the )?marker)"
_ENDING = rf"(?:(?: ,)? (?:ending|end) (?:{_FACING}|{_ENDS}))?"
_ENDING_ROWS = _ENDING.replace("<ends>", "<last>").replace("<at>", "<there>").replace("<facing>", "<faces>")
_ENDING_LEFT = rf"(?:(?: ,)? (?:ending|end) (?:with|after|on) (?:an? )?(?P<done>{_SIDED}))?(?: (?P<behind>.*))?"
_BEGINS = rf"(?: , (?:beg|beginning|starting) with (?:an? )?(?P<begins>{_SIDED})(?: ,)?)?"
_MEANING = r"(?: \( (?:knit|k) every (?:rnd|round|row) \))?"
_SINCE = r"(?: from (?:the )?(?P<since>.+?))?"

# How far rows go on, at the end of a sentence.
_EXTENT = (
    r"(?:(?P<times># (?:more )?times?(?: more)?|once more|twice more|once|twice)"
    rf"|(?:until|till) (?:the )?(?P<what>[a-z' ]+?) measures? (?:about )?(?P<length>#{_UNIT}){_OTHER}{_SINCE}{_ENDING}"
    rf"|(?:until|till) (?P<left>#)(?: {_STS})? (?:remain|remains|are left|rem|left){_ENDING_LEFT}"
    r"|for (?:(?:a|another|the next) )?(?P<for>#)(?P<unit> (?:cm|in|inch|inches|mm|\"|″))?"
    rf"(?P<also> [\[(] #{_UNIT} [\])])?(?: more)?(?P<rows> {_ROW})?{_ENDING_ROWS})"
)
_NUMBERS = r"(?P<numbers>#(?: (?:,|and|&|to|through|-) #| , and #)*)"
_BY_NAME = rf"(?P<fabric>(?:[a-z]|\d+ ?[x×] ?\d+ )[a-z0-9' ,x#/&-]*?{_MEANING})"


_PLAIN = re.compile(
    rf"(?:cast on|co) #(?: {_STS})?"
    rf"|(?:(?:place (?:a )?(?:marker|m)|pm)(?: and| ,| , and)? )?join(?: to work)?(?: in the (?:round|rnd))?"
    rf"|(?:bind off|cast off|bo)(?: (?:all|the|rem|remaining))*(?: {_STS})?"
    r"|bind off remaining # sts?"
    rf"|(?:place|put|return|slip) (?:the )?(?:# )?held (?:[a-z' ]+ )?{_STS}(?: back)? (?:on|onto) (?:the )?needles?"
    rf"|(?:join|rejoin) yarn to (?:the )?(?:# )?held (?:[a-z' ]+ )?{_STS}"
    rf"|cut (?:the )?yarn and thread (?:the )?tail (?:through|thru) (?:the )?(?:remaining |rem )?(?:# )?{_STS}"
)


def _more_than(tokens: Sentence) -> Told:
    """The words of a phrase that tell more than its node does; none where they are the plain ones of the trade."""
    return () if _PLAIN.fullmatch(written_out(tokens)) else told_sentence(tokens)


_MARKERS = ("marker", "markers", "pm", "m")


def _cast_on(match: Match) -> tuple[Direction, ...]:
    count = match.count("count")
    if count is None:
        return ()
    marker = next((token for token in match.part("rest") if token.text in _MARKERS), None)
    if marker is not None and "join" not in match.words("rest"):
        raise NotUnderstood(marker.span, marker.typed, "Write “Cast on 8 sts, pm, cast on 8 sts”.")
    rest = match.tokens[len(match.tokens) - len(match.words("rest").split()) :] if match.words("rest") else ()
    joining = next((place for place, token in enumerate(rest) if token.text == "join"), None)
    if joining is None:
        return (CastOn(match.span, count, _more_than(match.tokens)),)
    while joining and rest[joining - 1].text in (*_MARKERS, "place", "a", "and", ",", "then"):
        joining -= 1
    clause = rest[joining:]
    while clause[0].text in ("and", ",", "then"):
        clause = clause[1:]
    before = match.tokens[: len(match.tokens) - len(rest) + joining]
    text = written_out(clause)
    words = _more_than(clause) if any(pattern.fullmatch(text) for pattern in _JOINING) else ()
    return (CastOn(match.span, count, _more_than(before)), Join(match.span, _marked(clause), words))


def _marked(tokens: Sentence) -> bool:
    return any(token.text in _MARKERS for token in tokens)


def _join(match: Match) -> tuple[Direction, ...]:
    return (Join(match.span, _marked(match.tokens), _more_than(match.tokens)),)


def _in_the_round(match: Match) -> bool:
    return any(token.text in ("rnd", "rnds", "round", "rounds") for token in match.tokens)


def _repeat(match: Match) -> tuple[Direction, ...]:
    name, rounds = typed(match.part("of")), _in_the_round(match)
    words = typed(match.part("rows_said"))
    if match.has("numbers"):
        return (RepeatRows(match.span, match.numbers(), 0, name, match.extent(), words=words, in_the_round=rounds),)
    back = match.count("back")
    if back is not None and not isinstance(back.value, int):
        raise NotUnderstood(back.span, typed(match.part("back")), "Say how many rows in a number that all sizes share.")
    rows = 1 if back is None or not isinstance(back.value, int) else back.value
    return (RepeatRows(match.span, None, rows, name, match.extent(), words=words, in_the_round=rounds),)


def _call(match: Match) -> tuple[Direction, ...]:
    words, rounds = typed(match.part("name")), _in_the_round(match)
    extent = match.extent()
    return (RepeatRows(match.span, None, 0, "", extent, name=row_name(words), words=words, in_the_round=rounds),)


_FABRIC_WORDS = {"": "pattern", "k": "knit", "p": "purl", "knit": "knit", "purl": "purl", "straight": "even"}


def _even(match: Match) -> tuple[Direction, ...]:
    extent = match.extent()
    if match.has("count"):
        extent = replace(extent, rows=match.count("count"))
    fabric = re.sub(r"^(?:even|straight) in (?=.)", "", typed(match.part("fabric")), flags=re.IGNORECASE)
    fabric = _FABRIC_WORDS.get(fabric.casefold(), fabric)
    return (Even(match.span, fabric, extent, in_the_round=_in_the_round(match)),)


def _bind_off(match: Match) -> tuple[Direction, ...]:
    return (BindOffAll(match.span, _more_than(match.tokens), match.count("count")),)


def _gather(match: Match) -> tuple[Direction, ...]:
    return (Gather(match.span, match.count("count"), _more_than(match.tokens)),)


def _close(match: Match) -> tuple[Direction, ...]:
    return (Gather(match.span, None, told_sentence(match.tokens)),)


def _graft(match: Match) -> tuple[Direction, ...]:
    counted = [(match.count(side), match.words(f"{side}_name")) for side in ("one", "other")]
    sides = tuple((count, name) for count, name in counted if count is not None)
    return (Gather(match.span, None, told_sentence(match.tokens), sides),)


def _take_up(match: Match) -> tuple[Direction, ...]:
    said = (*match.words("name").split(), *match.words("for").split())
    name = " ".join(word for word in said if word not in _SAID)
    return (TakeUp(match.span, match.count("count"), _more_than(match.tokens), name, match.has("rejoined")),)


def _same_again(match: Match) -> tuple[Direction, ...]:
    one = Count(match.span, 1)
    times = (match.count("count") or one) if match.has("count") else one
    more, part = match.has("more") or not match.has("count"), match.words("part")
    plain = written_out(match.tokens) == f"make # {'more ' if more else ''}{part} the same way"
    return (SameAgain(match.span, part, times, not more, () if plain else told_sentence(match.tokens)),)


def _nothing(_: Match) -> tuple[Direction, ...]:
    return ()


Builder = Callable[[Match], tuple[Direction, ...]]

_MARKED = r"(?:(?:place (?:a )?(?:[a-z]+ )*?(?:marker|m)|pm)(?: for [a-z ]+?)?(?: and| ,)? )?"
_MARKED_BEHIND = r"(?:pm|place (?:a )?(?:[a-z]+ )*?(?:marker|m))(?: for [a-z ]+)?"
_ALL_THE = r"(?: (?:all|the|rem|remaining))"
_BOUND = r"very loosely|loosely|firmly|evenly|purlwise|knitwise|pwise|kwise|as if to (?:knit|purl)"
_HOW = rf"(?: (?:{_BOUND}|on (?:the )?{_SIDE}(?: row)?|in .+|using .+|with .+|, [^#]+|and .+))*"
_CUT = r"(?:(?:cut|break) (?:the )?yarn(?: .*?)? (?:, |and )*)?"
_PULL = r"(?:thread|draw|run|pull|pass)"
_PUT = r"(?:place|return|slip|put|transfer|take)"
# Words, or a comma and what is told behind it; a sign or a number there would be part of the count.
_BEHIND_CAST_ON = r"(?P<rest>(?:(?: (?!st)[a-z]| , (?:# )?[a-z]).*)?)"
_SAID = (
    *("the", "held", "sts", "st", "stitches", "on", "hold", "of"),
    *("remaining", "waiting", "next", "all", "for", "live"),
)
_HELD = rf"(?:the )?(?:(?P<count>#) )?(?P<name>[a-z' ]*?){_STS}(?P<for> (?:of|for) [a-z' ]+?)?"
_ONTO_NEEDLE = r"(?: back)? (?:on|onto|to)(?: the| a| your)?(?: [a-z-]+| #(?: mm)?| us #)*? (?:needles?|dpns?)\b.*"
_FROM = r"(?: (?:from|off) (?:the )?(?:hold|holder|waste yarn|scrap yarn|yarn|thread)(?: of [a-z ]+?)?)?"
_OTHER_SIDE = r"(?:with (?:the )?(?:rs|ws|right side|wrong side) facing (?:, )?)?"

# "the second sleeve the same way", "2 more squares the same", "2 sleeves alike"
_HOW_MANY = r"(?:(?:the |a )?(?:second|other|another) (?:one )?|(?:the )?(?P<count>#) (?P<more>more |other )?)"
_ALIKE = r"(?:(?:to )?(?:be )?(?:the same(?: way)?|alike|(?:to )?match(?: the first)?)(?: .*)?)"

# What a row may be called by; "last row" and "knit row" are no names.
_NO_NAME = r"(?:last|these|this|those|next|every|each|all|first|same|rest|an?|in|even|as|to|knit|purl|plain|k|p|rows?)"
_NAME = rf"(?!{_NO_NAME} )[a-z][a-z'-]*(?: (?!of |in |for )[a-z][a-z'-]*){{0,2}} (?:row|rnd|round)"
_NAMED = rf"(?P<name>{_NAME}(?: #(?! (?:more|times?)))?)"

_FOR_PATTERN = r"(?: for (?:the )?patt?(?:ern)?)?"
_ALL_OF = rf"the (?P<back>#) {_ROW} of (?P<of>.+?)"
_PLURAL = rf"(?P<of>(?!{_NO_NAME} )[a-z][a-z' -]*?) (?:rows|rnds|rounds) {_NUMBERS}"
_NO_ROUND = r"(?!the round|rounds?|rnds?|rows?)"
_LAST = r"(?:the |these |this )?(?:(?:last|previous|preceding) )?"

_WHOLE_NAME = r"(?!.* (?:over|across|between|to) |.* ,).+?"  # "NAME over next 10 sts" is a part of a row

_SET = rf"(?:the )?(?:(?:held|first|last|next) )?(?P<{{0}}>#)(?P<{{0}}_name>(?: [a-z]+)*?) {_STS}"

_SOURCES: tuple[tuple[str, Builder], ...] = (
    (rf"(?:(?:with|using) .+?,? )?(?:cast on|co) (?P<count>#)(?: {_STS})?{_BEHIND_CAST_ON}", _cast_on),
    (
        rf"(?:{DIVIDED}(?: ,| and| , and| , then) )?{_MARKED}join(?! yarn| new| the yarn).*?(?:round|{_ROW}|twist).*",
        _join,
    ),
    (rf"{_MARKED}join(?: ,| and)?(?: {_MARKED_BEHIND})?", _join),
    (APART, apart),
    (rf"(?:rep|repeat|work) (?:the )?{_NAMED}(?: {_EXTENT}| (?:on|in|over) (?:the )?next {_ROW})?", _call),
    (rf"(?:rep|repeat|work) (?P<rows_said>{_ALL_OF}) {_EXTENT}", _repeat),
    (rf"(?:rep|repeat|work) (?P<rows_said>{_PLURAL})(?: {_EXTENT})?", _repeat),
    (rf"(?:rep|repeat|work) (?P<rows_said>{_ROW} {_NUMBERS}(?: of (?P<of>.+?))?)(?: ,)? {_EXTENT}", _repeat),
    (
        rf"(?:rep|repeat) (?P<rows_said>{_LAST}(?:(?P<back>#) )?{_ROW}(?: of (?P<of>.+?))?) {_EXTENT}",
        _repeat,
    ),
    (rf"work (?P<rows_said>{_ROW} {_NUMBERS}(?: of (?P<of>{_WHOLE_NAME}))?)(?: (?P<once>once))?", _repeat),
    (rf"(?:work|continue|cont|knit)(?: even| straight)? (?:in|even in) {_BY_NAME}{_BEGINS} {_EXTENT}", _even),
    (rf"(?:work|continue|cont)(?: even| straight)?(?: in (?:pattern|patt))? {_EXTENT}", _even),
    (rf"(?:work|continue|cont) {_BY_NAME} {_EXTENT}", _even),
    (rf"(?P<fabric>knit|purl|k|p)(?: (?:every|all|each) {_ROW}s?)?{_BEGINS} {_EXTENT}", _even),
    (rf"(?P<fabric>knit|purl|k|p) (?P<count>#)(?: more)?(?: (?P<begins>rs|ws))? {_ROW}", _even),
    (rf"(?:work )?(?P<count>#)(?: more)? (?P<fabric>knit|purl) {_ROW}", _even),
    (rf"(?:work|knit) (?P<count>#)(?: more)? {_ROW} (?:in |of )?{_BY_NAME}{_ENDING}", _even),
    (rf"work (?P<count>#) more {_ROW}", _even),
    (rf"(?:bind off|cast off|bo)(?:{_ALL_THE}+ (?P<count>#)|{_ALL_THE}*)(?: {_STS})?{_HOW}", _bind_off),
    (rf"{_CUT}{_PULL} .*(?:through|thru) .*?(?:(?P<count>#) )?(?:rem |remaining )?{_STS}.*", _gather),
    (rf"graft {_SET.format('one')} (?:to|with|and) {_SET.format('other')}(?: .*)?", _graft),
    (r"(?:graft|close) .*", _close),
    (rf"{_PUT} {_HELD}{_FROM}{_ONTO_NEEDLE}", _take_up),
    (rf"{_OTHER_SIDE}(?P<rejoined>join|rejoin|attach) (?:the )?(?:new )?yarn (?:to|at) {_HELD}.*", _take_up),
    (rf"(?:work|continue|cont|knit)(?: even| straight)? in {_NO_ROUND}{_BY_NAME}(?:(?: ,)? as follows)?", _even),
    (rf"(?:rep|repeat) (?:{_ROW} {_NUMBERS}|these (?:# )?{_ROW}|the (?:last )?# {_ROW}){_FOR_PATTERN}", _nothing),
    (rf"(?:make|work|knit) {_HOW_MANY}(?P<part>[a-z' -]*?)(?: (?:in|exactly|just))? {_ALIKE}", _same_again),
)

_PHRASES = tuple((re.compile(source), build) for source, build in (*_SOURCES, *((one, _nothing) for one in SILENT)))
_JOINING = tuple(pattern for pattern, build in _PHRASES if build is _join)


# A second instruction behind a phrase that is read for its beginning would be lost. "in k1, p1 rib" is none; what
# stands for it must be as many words, since words are counted.
_RIBS = re.compile(r"k\d+ , p\d+")
_VERBS = (
    r"knit|purl|k|p|sl|k\d+|p\d+|sl\d+|k\d*tog|p\d*tog|ssk|yo|m1\w?|rep|repeat|bind|cast|pick|inc|dec|increase|decrease"
)
_WORK = r"work(?! (?:back|flat|in rows|in rounds|in the))"
_SECOND = re.compile(rf" (?:,|;|and|then)(?: (?:then|next))? (?P<verb>(?:{_VERBS}|{_WORK})(?= |$))")


def _refuse_second(sentence: Sentence, text: str) -> None:
    """Raises `NotUnderstood` where a second instruction hangs on a phrase."""
    found = _SECOND.search(_RIBS.sub("a named rib", text))
    if found is not None:
        token = sentence[found.string.count(" ", 0, found.start("verb"))]
        raise NotUnderstood(token.span, token.typed, "Make the second instruction a sentence of its own.")


def written_out(sentence: Sentence) -> str:
    """The words of a sentence in small letters, "#" for each number."""
    return " ".join(token.text.replace(" ", "") if token.kind is not Kind.WORD else token.text for token in sentence)


def read_phrase(sentence: Sentence) -> tuple[Direction, ...] | None:
    """What a set phrase says; None where the sentence is none. Raises `NotUnderstood`."""
    text = written_out(sentence)
    for pattern, build in _PHRASES:
        found = pattern.fullmatch(text)
        if found is not None:
            match = Match(sentence, found)
            if build not in (_repeat, _even, _call):  # these say all that stands in them, and their fabrics hold commas
                start = found.start("count") if build is _cast_on else 0  # "with A, cast on" is one instruction
                _refuse_second(sentence[text.count(" ", 0, start) :], text[start:])
            return None if match.has("count") and match.count("count") is None else build(match)
    return None
