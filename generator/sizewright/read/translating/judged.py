"""In: the texts of a source and a file of translations. Out: what is wrong between the two."""

from collections.abc import Iterator, Sequence

from sizewright.base.finding import Finding
from sizewright.read.translating.compared import compared
from sizewright.read.translating.pairs import Pair
from sizewright.read.translating.rules import MISSING_TRANSLATION, STALE_TRANSLATION
from sizewright.read.translating.stale import nearest_text
from sizewright.read.translating.texts import Text
from sizewright.read.translating.translation import Translation
from sizewright.read.typed_numbers import shortened

_QUOTED = 3  # missing translations that are told word for word


def judged(source: str, texts: Sequence[Text], own: Sequence[Text], translation: Translation) -> Iterator[Finding]:
    """What is wrong with a translation; `own` are those of the `texts` of a source that its file is asked for."""
    by_key = {text.key: text for text in texts}
    missing = tuple(text for text in own if text.asked and text.key not in translation.told)
    for several in _told_together(missing, translation):
        yield _missing(source, translation, several)
    for pair in translation.pairs:
        text = by_key.get(pair.key)
        if not pair.translation:
            continue
        if text is None:
            yield _stale(pair, nearest_text(pair, missing), translation)
        else:
            yield from compared(pair, text, translation.of, translation.into, translation.listed)


def _told_together(missing: tuple[Text, ...], translation: Translation) -> Iterator[tuple[Text, ...]]:
    """Missing texts are told together, but each that a remark lets pass, so that it lets pass no other."""
    let_pass = {one.rule.text for one in translation.accepted} & {MISSING_TRANSLATION.name}
    accepted = {pair.key for pair in translation.pairs if any(one.rule.text in let_pass for one in pair.accepted)}
    yield from ((text,) for text in missing if text.key in accepted)
    others = tuple(text for text in missing if text.key not in accepted)
    if others:
        yield others


def _missing(source: str, translation: Translation, missing: tuple[Text, ...]) -> Finding:
    quoted = "; ".join(f"{text.span.shown}: “{shortened(text.words)}”" for text in missing[:_QUOTED])
    more = f"; and {len(missing) - _QUOTED} more" if len(missing) > _QUOTED else ""
    few = "1 text is" if len(missing) == 1 else f"{len(missing)} texts are"
    message = f"{few} not translated: {quoted}{more}."
    empty = _empty(translation)
    there = [empty[text.key].span for text in missing if text.key in empty]
    mend = f"“sizewright translate {source} --into {translation.into}” adds them, to be filled in."
    if len(there) == len(missing):
        mend = "Write what is missing below its comment, which stands in the file already."
    return MISSING_TRANSLATION.at(there[0] if there else translation.lines.whole_line(1), message, mend)


def _empty(translation: Translation) -> dict[str, Pair]:
    """The pairs that are still to be filled in, by the key of their words."""
    return {pair.key: pair for pair in translation.pairs if not pair.translation}


def _stale(pair: Pair, near: Text | None, translation: Translation) -> Finding:
    message = f"The source has no text “{shortened(pair.words)}” to be translated, or has it no more."
    mend = "Take the pair out, or put the words that the source has now into its comment."
    if near is not None:
        message = f"{message} {near.span.shown} says “{shortened(near.words)}” now."
        mend = "Put these words into its comment, and change the translation with them."
        there = _empty(translation).get(near.key)
        if there is not None:
            mend = f"They stand in line {there.span.line}, to be filled in; then take this pair out."
    return STALE_TRANSLATION.at(pair.span, message, mend)
