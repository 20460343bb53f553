"""In: the words behind the label of a row. Out: the rows it is like, "As Row 2", "Rep Rows 1 and 2 twice"."""

from sizewright.read.notation.cursor import ROW_WORDS
from sizewright.read.notation.direction_tree import Numbers
from sizewright.read.notation.not_understood import NotUnderstood
from sizewright.read.notation.phrase_match import numbers_of
from sizewright.read.notation.words import Kind, Sentence, spanned, typed

_LEADS = {"as", "for", "work", "rep", "repeat", "same", "the"}
_BETWEEN = ("and", "to", "through")
_ONCE = {"once": 1, "twice": 2}


def rows_like(body: Sentence, rows: Numbers) -> Numbers | None:
    """The rows that are meant; None where the words say something else. `rows` are those of the label.

    Raises `NotUnderstood` where they are not as many, so that it would be open which is like which.
    """
    words, times = _without_times(body)
    texts = [token.text for token in words]
    row = next((place for place, text in enumerate(texts) if text in ROW_WORDS), 0)
    if not row or not set(texts[:row]) <= _LEADS:
        return None
    numbers = words[row + 1 :]
    if not numbers or any(token.kind is Kind.WORD and token.text not in _BETWEEN for token in numbers):
        return None
    like = numbers_of(numbers)
    _judge(body, rows, like, times)
    return like


def _without_times(body: Sentence) -> tuple[Sentence, int | None]:
    """The words before "twice" or "3 times", and how often that is."""
    if body and body[-1].text in _ONCE:
        return body[:-1], _ONCE[body[-1].text]
    count = body[-2].count if len(body) > 2 and body[-1].text == "times" else None
    if count is not None and isinstance(count.value, int):
        return body[:-2], count.value
    return body, None


def _judge(body: Sentence, rows: Numbers, like: Numbers, times: int | None) -> None:
    meant, told = len(like.listed), len(rows.listed)
    if meant < 2 and times is None:
        return
    fits = told == meant * times if times is not None else told and told % meant == 0
    if rows.last is None and not fits:
        mend = f"Write as many rows as those they are like: here {told} stand for {meant * (times or 1)}."
        raise NotUnderstood(spanned(body), typed(body), mend)
