"""Spellings of the trade beside the plain ones, as patterns of words and what is plain for them: one table.

Each word, sign and number stands between spaces; "#" is a number that differs by size. "\\1" is what a group holds.
"""

import re
from collections.abc import Callable

from sizewright.read.notation.fabric_names import usual_fabric

_ST, _STS = "(?:st|stitch)", "(?:sts?|stitch|stitches)"
_N = r"(?:\d+|#)"
_ROW, _ROWS = "(?:row|rnd|round)", "(?:rows?|rnds?|rounds?)"
_OF_ROW = rf"(?: of (?:the )?{_ROW})?"
_WORK = "(?:knit|purl|k|p)"
_BIND = "(?:bind off|cast off|bo|cast on)"
_SIDE = r"(?:\( (?:rs|ws|right side|wrong side) \))"
_ELSEWHERE = r"(?! (?:on|onto|to|from|of|together|tog|and (?:hold|leave|place|put|let|keep))\b)"
_FIRST = "(?P<first>rs|ws|right side|wrong side|knit|purl|k|p)"
_BEGUN = rf"(?:beg|beginning|starting|start) with (?:an? )?{_FIRST} row(?: ,| and|)"
_PATTERN = "(?:patterns?|patts?|pats?)"
_KEEPING = rf"(?:keeping|keep|maintaining) (?:the |in )?{_PATTERN}(?: correct| as set| as established)? ,"
_LOOPED = "backwards?(?:-| )loop|long-tail|knitted|cable"
_KNITS = rf"(?:(?:all|the|over) )+(?:k|knit|knits)(?: {_STS})?"
_PURLS = rf"(?:(?:all|the|over) )+(?:p|purl|purls)(?: {_STS})?"
_FACING = "(?: as they (?:face you|appear|present themselves))?"
_UNIT = '(?:cm|mm|in|inch|inches|"|″)'


def _together(match: re.Match[str]) -> str:
    return f"{match[1][0]}{match[2]}tog"


def _twice_slipped(match: re.Match[str]) -> str:
    return f"ss{match[1][0]}"


def _front_and_back(match: re.Match[str]) -> str:
    return f"{match[1][0]}fb"


def _leaning(match: re.Match[str]) -> str:
    return f"m1{match[1][0]}"


def _bracket_repeated(match: re.Match[str]) -> str | None:
    """Where no star stands before it, "[k2, p2], rep to end" repeats the bracket."""
    return None if "*" in match.string[: match.start()] else "\\1 \\2"


def _separated(match: re.Match[str]) -> str | None:
    """ "Row 1 - K to end" has its label before the dash, where no colon tells otherwise."""
    return None if ":" in match.string.split() else "\\1 :"


def _first_side(match: re.Match[str]) -> str | None:
    """The side of a first row: as it is said, or as the fabric has its knit row; "" where that is on either."""
    said = match["first"].split()[0]
    if said in ("rs", "ws", "right", "wrong"):
        return f" , beginning with a {'rs' if said[0] == 'r' else 'ws'} row ,"
    fabric, knit = usual_fabric(match["fabric"]), said[0] == "k"
    if fabric == "garter" and knit:
        return ""
    if fabric not in ("stockinette", "reverse stockinette"):
        return None
    return f" , beginning with a {'rs' if knit == (fabric == 'stockinette') else 'ws'} row ,"


def _begun_rows(match: re.Match[str]) -> str | None:
    """ "Beg with a k row, work 6 rows in St st"."""
    first = _first_side(match)
    return None if first is None else f"work in \\3{first} for \\2 rows \\4"


def _begun(match: re.Match[str]) -> str | None:
    """ "Beg with a k row, work in St st for 6 rows"."""
    first = _first_side(match)
    return None if first is None else f"work in \\2{first} \\3"


def _more_times(match: re.Match[str]) -> str | None:
    """ "a total of 4 times" are 3 more times behind the rows that were worked once."""
    return f"\\1 {int(match[2]) - 1} more times" if 1 < int(match[2]) < 10_000 else None


def _picked_up(match: re.Match[str]) -> str:
    """ "pick up and k2": the stitches are picked up and knitted."""
    return f"pick up and {'knit' if match[1] == 'k' else 'purl'} {match[2]} sts"


def _named_twice(match: re.Match[str]) -> str | None:
    """ "1x1 rib (k1, p1)": the stitches in the brackets say what the name does."""
    return "\\1" if (match[2], match[3]) == (match[4], match[5]) else None


_INCREASE = r"(kfb|pfb|kfbf|inc|increase)"

SPELLINGS: tuple[tuple[str, str | Callable[[re.Match[str]], str | None]], ...] = (
    # Labels of rows
    (rf"^next ({_N}) ({_ROWS}) : ({_WORK})$", "\\3 \\1 \\2"),
    (r"^r(\d+)(?= [:(])", lambda match: f"row {match[1]}"),
    (r"^r (\d+)(?= [:(])", "row \\1"),
    (r"^(rs|ws)(?= :)", "\\1 row"),
    (rf"^({_ROWS} \d+(?: (?:to|-|and|,|&|through) \d+)*(?: {_SIDE})?) [-)](?= [^-\d#])", _separated),
    # Stitches
    (rf"(k|knit|p|purl) (?:the )?(?:next )?([2-5]) (?:{_STS} )?(?:together|tog)", _together),
    (rf"([kp])([2-5]) (?:{_STS} (?:together|tog)|together)", _together),
    (r"(?:sl|slip)(\d)(p|k|pw|kw|pwise|kwise)", lambda match: f"sl {match[1]} {match[2][0]}wise"),
    (r"through (?:the )?back (?:of )?(?:the )?(?:loops?|lps?)|in (?:the )?back loops?", "tbl"),
    (r"slip (?:, )?slip (?:, )?(knit|purl)(?=$| [,;)\].])", _twice_slipped),
    (r"as if to k2tog", "knitwise"),
    (rf"(slip|sl) (?:the )?(?:next )?({_N}) (?:{_STS} )?(?:together|tog)", "\\1 \\2"),
    (rf"pass (?:the )?(?:2|both) (?:slipped |sl )?{_STS} over", "p2sso"),
    (r"(k|knit|p|purl) (?:1 )?(?:in|into) (?:the )?front and (?:the )?back", _front_and_back),
    (rf"(?:inc|increase) 1(?: {_ST})?(?= (?:in|into) )", "inc"),
    (rf"{_INCREASE} (?:of|in|into) (?:the )?(?:first|next|last|same|following|this) {_ST}", "\\1"),
    (rf"{_INCREASE} (?:of|in|into) (?:each|every) {_ST}(?= (?:to|until|across|around)\b)", "\\1"),
    (rf"{_INCREASE} (?:of|in|into) (?:each|every) {_ST}(?=$| [,;(])", "\\1 to end"),
    (rf"{_INCREASE} of (?:the )?next ({_N}) {_STS}", "\\1 in each of next \\2 sts"),
    (r"(?:m1|make 1|make one) (left|right|l|r)", _leaning),
    (r"y / o", "yo"),
    (r"(?<=[,*;(\[] )2 yo", "yo twice"),
    (rf"(k|knit|p|purl|slip|sl) (?:the )?(?:first|next|following|last) ({_N}) {_STS}{_ELSEWHERE}", "\\1 \\2"),
    (rf"(k|knit|p|purl|slip|sl) (?:the )?(?:first|next|following|last) {_ST}{_ELSEWHERE}", "\\1 1"),
    (rf"(k|knit|p|purl|work) (?:the )?(?:rem|remaining) {_STS}{_ELSEWHERE}", "\\1 to end"),
    (rf"(k|knit|p|purl|work) (?:the )?(?:rem|remaining) ({_N} {_STS}){_ELSEWHERE}", "\\1 \\2"),
    (rf"({_WORK}) (?:all )?(?:but|except) (?:the )?last ({_N} {_STS})", "\\1 to last \\2"),
    (rf"(k|knit|p|purl|work) (?:the )?rest(?: of (?:the )?(?:{_ROW}|{_STS}))?", "\\1 to end"),
    # Places
    (rf"(?:to|until) within ({_N}) {_STS} (?:of|from) (?:the )?end{_OF_ROW}", "to last \\1 sts"),
    (rf"(?:to|until) ({_N}) {_STS} from (?:the )?end{_OF_ROW}", "to last \\1 sts"),
    (rf"(?:to|until) within ({_N}) {_STS} (?:of|from)", "to \\1 sts before"),
    (rf"to ({_N}) {_STS} from(?= (?:the )?(?:next )?(?:[a-z]+ )?(?:marker|m)\b)", "to \\1 sts before"),
    (r"(knit|purl|k|p) across(?= (?:to|until)\b)", "\\1"),
    (rf"across (?:the |this )?{_ROW}", "across"),
    (r"(to|before|past|until) (?:the )?1 st (marker|m)", "\\1 \\2"),
    (r"marker ([a-h\d]) \( marker \1 \)", "marker \\1"),
    (
        rf"using (?:the |an? )?({_LOOPED})(?: method| cast-on)?(?: ,)? (cast on|co) ({_N} {_STS})",
        "\\2 \\3 using the \\1 method",
    ),
    (r"pick up &(?= (?:knit|purl|k|p)\d*(?: |$))", "pick up and"),
    (rf"pick up and k(?= {_N})", "pick up and knit"),
    (rf"pick up and p(?= {_N})", "pick up and purl"),
    (rf"pick up and ([kp])(\d{{1,4}})(?: {_STS})?", _picked_up),
    # Repeats
    (r"(rep|repeat) (?:instructions )?between \*(?: and \*)?(?: s)?", "\\1 from *"),
    (rf"([\])]) [,;] (rep|repeat)(?= (?:to|until|till|across|around|{_N})\b)", _bracket_repeated),
    (r"(?<=: )(?:rep|repeat)(?= [(\[])", ""),
    (r"([\])]) x(\d+)", lambda match: f"\\1 {match[2]} times"),
    (r"([\])]) all (in|into)", "\\1 \\2"),
    # Counts
    (rf"^({_N}) body ({_STS})((?: (?:remain|remaining|rem))?)$", "\\1 \\2 \\3"),
    # Fabrics
    (r"(in|work|of) \( (k\d+ , p\d+) \)(?= (?:rib|ribbing)\b)", "\\1 \\2"),
    (r"((\d+)[x×](\d+) (?:rib|ribbing)) [(\[] k(\d+) , p(\d+) [)\]]", _named_twice),
    (r"work(?= [(\[] [^\d#])", ""),
    (rf"(?:knit|k) {_KNITS} and (?:purl|p) {_PURLS}{_FACING}", "knit the knits and purl the purls"),
    (rf"(?:purl|p) {_KNITS} and (?:knit|k) {_PURLS}{_FACING}", "purl the knits and knit the purls"),
    (rf"(?:knit|k) {_PURLS} and (?:purl|p) {_KNITS}{_FACING}", "purl the knits and knit the purls"),
    (rf"(?:purl|p) {_PURLS} and (?:knit|k) {_KNITS}{_FACING}", "knit the knits and purl the purls"),
    (
        rf"work (?:all )?(?:the |these )*{_STS} as they (?:face you|present themselves|present|come|are)",
        "work sts as they appear",
    ),
    (rf"^{_KEEPING} work(?= {_N} {_ROWS}$)", "work in pattern for"),
    (rf"^{_KEEPING}", ""),
    # Directions of several rows
    (rf"^{_BEGUN} (?:work|knit) ({_N}) {_ROWS} (?:in |of )?(?P<fabric>[^,]+?)((?: ,)? end.*)?$", _begun_rows),
    (rf"^{_BEGUN} (?:work|continue|cont)(?: even| straight)? in (?P<fabric>[^,]+?) ((?:for|until|till) .+)$", _begun),
    (rf"^({_WORK}) (?:the )?next ({_ROW})", "\\1 1 \\2"),
    (rf"^({_WORK}) 1 {_ROW}(?: ,| and| , and)?(?= (?:dec|inc)[a-z]* )", "\\1 ,"),
    (rf"({_WORK} {_N} (?:more )?{_ROWS}) (?:, and|, then|,|and)(?= {_WORK} {_N} {_ROWS})", "\\1 ;"),
    (rf"({_N} {_UNIT}) / ({_N} {_UNIT})", "\\1 ( \\2 )"),
    (r"^((?:rep|repeat|work) .*?) (?:for )?(?:a )?total of (\d+) times", _more_times),
    (r"^((?:rep|repeat|work) [^,]*?)(?: ,)? (\d+) times (?:in all|in total|total|altogether)", _more_times),
    (rf"^((?:rep|repeat|work) .*?) , then(?= {_ROWS} \d.* (?:once|twice|times?|more)$)", "\\1 , then rep"),
    (rf"^((?:rep|repeat|work) .*?) , then ({_ROW} \d+)$", "\\1 , then rep \\2 once"),
    (rf"(every [^,;]*?{_ROWS}) ,(?= {_N} times)", "\\1"),
    (rf"^at (?:the )?(?:beg|beginning) of ([^,;]+ {_ROWS}) , ({_BIND} {_N} {_STS})", "\\2 at beginning of \\1"),
    (
        rf"({_BIND}) ({_N} {_STS} (?:at|on) [^,;]*?{_ROWS})(?: ,)?(?: and)?(?: then)?(?= {_N} {_STS} (?:at|on))",
        "\\1 \\2 ; \\1",
    ),
    (rf"(beg|beginning|end) of (?:the )?(?:foll|following)(?= {_N} (?:rows|rnds|rounds)(?: |$))", "\\1 of next"),
    (r"(beg|beginning|end) of each of (?:the )?next", "\\1 of next"),
    (r"(?:at )?(?:the )?(?:beg|beginning) and (?:the )?end(?= of|$| [,;])", "at each end"),
    # Short rows
    (
        r"(k|knit|p|purl) (?:the |each |next )?(?:ds|dst|double st|double stitch)(?! (?:as|tog|together|with)\b)",
        "\\1 ds as one",
    ),
    (r"w [+&] t", "w&t"),
    (r"wrap (?:and|&) turn \( (?:w&t|wt) \)", "w&t"),
)
