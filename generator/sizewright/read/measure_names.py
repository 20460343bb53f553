"""In: a name of a measurement, a yarn or a fabric. Out: its words, and whether it is a usual one.

The usual ones are messages; what is not among them is a designer's own, and is told by the translation of its source.
"""

from sizewright.base.language import later_as

NAME = "name"  # the context of these messages

# What sizes measure, what yarns and fabrics are called, by the words of their names.
USUAL_NAMES = frozenset(
    (
        later_as("name", "age"),
        later_as("name", "ankle"),
        later_as("name", "arm"),
        later_as("name", "arm length"),
        later_as("name", "arm to underarm"),
        later_as("name", "armhole depth"),
        later_as("name", "back length"),
        later_as("name", "ball"),
        later_as("name", "bust"),
        later_as("name", "calf"),
        later_as("name", "chest"),
        later_as("name", "contrast"),
        later_as("name", "cross back"),
        later_as("name", "foot"),
        later_as("name", "foot length"),
        later_as("name", "hand"),
        later_as("name", "hand length"),
        later_as("name", "head"),
        later_as("name", "height"),
        later_as("name", "hip"),
        later_as("name", "hips"),
        later_as("name", "leg"),
        later_as("name", "leg length"),
        later_as("name", "length"),
        later_as("name", "main"),
        later_as("name", "neck"),
        later_as("name", "shoulders"),
        later_as("name", "side"),
        later_as("name", "upper arm"),
        later_as("name", "waist"),
        later_as("name", "width"),
        later_as("name", "wrist"),
    )
)


def name_words(name: str) -> str:
    """The words of a name that formulas use: "upper_arm" is "upper arm"."""
    return name.replace("_", " ")
