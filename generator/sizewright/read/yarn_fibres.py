"""In: the fibre of a yarn, in words. Out: whether there is the hair of an animal in it."""

import re

# The wools and hairs of the trade (EU Regulation 1007/2011, annex I, 1 and 2, from memory), and the breeds and grades
# that labels name instead (common practice, no source). Silk is no hair.
_HAIR = re.compile(
    r"\b(?:wools?|woollen|woolen|worsted|lambswool|merino|shetland|bluefaced|blue-faced|corriedale|romney|targhee|"
    r"alpaca|llama|vicuna|vicuña|guanaco|mohair|angora|cashmere|camel|yak|qiviut|possum|goat|hair)\b",
    re.IGNORECASE,
)
_NONE = re.compile(r"\b(?:no|without|free of)\s+(?:animal\s+)?(?:wool|hair)\b|\bwool[- ]free\b", re.IGNORECASE)


def of_animals(fibre: str) -> bool:
    """Whether the words name wool or another animal's hair."""
    return _HAIR.search(_NONE.sub("", fibre)) is not None
