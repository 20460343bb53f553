"""In: a sentence. Out: its parts: the halves around a joint, what stands between joints, where some words begin."""

import re

from sizewright.read.notation.words import Sentence

_JOINTS = (",", ";", ":", "and", "-")


def whole_row(body: Sentence) -> Sentence:
    """ "Knit all sts", "Knit across", "Purl every st", "Knit this rnd": as much as "Knit"."""
    texts = [token.text for token in body]
    if texts[0] in ("knit", "purl", "k", "p", "pearl", "plain") and len(texts) > 1:
        rest = " ".join(texts[1:])
        if re.fullmatch(
            r"(?:knitting|all|every|each|across|around|this|the|to the|plain|sts?|stitch(?:es)?|row|rnd|round| )+", rest
        ):
            return body[:1]
    return body


def place_of(sentence: Sentence, words: tuple[str, ...]) -> int | None:
    """Where some words begin in a sentence; None where they do not stand in it."""
    texts = tuple(token.text for token in sentence)
    return next((place for place in range(len(texts)) if texts[place : place + len(words)] == words), None)


def trimmed(sentence: Sentence) -> Sentence:
    """Without the joints at either end."""
    while sentence and sentence[-1].text in _JOINTS:
        sentence = sentence[:-1]
    while sentence and sentence[0].text in _JOINTS:
        sentence = sentence[1:]
    return sentence


def parted(sentence: Sentence) -> tuple[Sentence, Sentence] | None:
    """The two halves around the first "then", or around ";" where there is none."""
    joints = {token.text: place for place, token in reversed(tuple(enumerate(sentence)))}
    then = joints.get("then", joints.get(";", 0))
    before = then
    while before and sentence[before - 1].text in (",", ";", "and"):
        before -= 1
    return (sentence[:before], sentence[then + 1 :]) if before and then + 1 < len(sentence) else None
