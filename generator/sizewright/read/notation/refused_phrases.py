"""In: a sentence of instructions. Out: how to write it instead, where it is a known one that cannot be carried out."""

import re

from sizewright.read.notation.not_understood import NotUnderstood
from sizewright.read.notation.phrases import written_out
from sizewright.read.notation.words import Sentence, spanned, typed

_PART = r"(?:heel(?: flap| turn)?|turn(?:ing)?(?: the)? heel|gusset|toe|crown|instep|foot|leg)(?: shaping)?"
_HEADING = re.compile(rf"(?P<part>{_PART})(?: :(?: .*)?)?")
_REFUSED = (
    (
        re.compile(r"(?:next|first|last|following) # (?:rows|rnds|rounds)(?: \( .*? \))? : .*"),
        "Write the row once, and how often it comes again: “Rep last row 3 more times.”",
    ),
    (
        re.compile(
            r"(?:rep|repeat) .*(?:until|till) (?:all|no) (?:the )?(?:[a-z]+ )?(?:sts?|stitches) .*(?:worked|left)"
        ),
        "Say how often: “Repeat Rows 3 and 4 five more times.”",
    ),
    (
        re.compile(r".* # (?:st|stitch) (?:fewer|less) between .*"),
        "Write the rounds out, or have them worked out by a plan in the grade block, such as “hat_crown”.",
    ),
)


def refuse(sentence: Sentence) -> None:
    """Raises `NotUnderstood` for a heading within a block, and for rows that nobody can count."""
    text = written_out(sentence)
    heading = _HEADING.fullmatch(text)
    if heading is not None:
        words = sentence[: heading["part"].count(" ") + 1]
        mend = f"Write it as a heading outside of the block: “### {typed(words)}”."
        raise NotUnderstood(spanned(words), typed(words), mend)
    for pattern, mend in _REFUSED:
        if pattern.fullmatch(text):
            raise NotUnderstood(spanned(sentence), typed(sentence[:4]) + " …", mend)
