"""In: what is wrong in each size. Out: it in one sentence, sizes with the same words together."""

from collections.abc import Iterable


def by_size(told: Iterable[tuple[str, str]]) -> str:
    """ "S, M: 74 sts, 2 left over; L: 90 sts, 2 left over"; the nameless size of a pattern of one is left out.

    `told` are names of sizes and words, in the order of the sizes.
    """
    sizes: dict[str, list[str]] = {}
    for size, words in told:
        sizes.setdefault(words, []).append(size)
    parts = [f"{', '.join(names)}: {words}" if any(names) else words for words, names in sizes.items()]
    return "; ".join(parts)
