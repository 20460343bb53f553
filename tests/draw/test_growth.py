"""The picture of how a quantity grows: a dot a size, in proportion, named for those who do not see it."""

import xml.etree.ElementTree as ET
from fractions import Fraction

from defusedxml.ElementTree import fromstring

from sizewright.draw.growth import HEIGHT, WIDTH, growth_svg

SVG = "{http://www.w3.org/2000/svg}"


def drawn(*values: int, astray: int | None = None) -> ET.Element:
    return fromstring(growth_svg([Fraction(value) for value in values], "a < b", astray=astray))


def dots(drawing: ET.Element) -> list[tuple[float, float]]:
    return [(float(one.attrib["cx"]), float(one.attrib["cy"])) for one in drawing.iter(f"{SVG}circle")]


def test_a_dot_for_each_size_in_proportion() -> None:
    found = dots(drawn(10, 20, 40))
    across, up = [x for x, _ in found], [y for _, y in found]
    assert across[1] - across[0] == across[2] - across[1] > 0
    assert round((up[1] - up[2]) / (up[0] - up[1]), 1) == 2.0  # 20 sts of step beside 10
    assert all(0 < x < WIDTH and 0 < y < HEIGHT for x, y in found)


def test_a_ring_around_the_size_that_is_out_of_line() -> None:
    assert len(dots(drawn(1, 2, 30, 4))) == 4
    *four, ring = dots(drawn(1, 2, 30, 4, astray=2))
    assert ring == four[2]


def test_values_that_do_not_grow_stand_in_the_middle() -> None:
    assert {y for _, y in dots(drawn(5, 5))} == {HEIGHT / 2}


def test_it_has_a_name() -> None:
    drawing = drawn(1, 2)
    assert drawing.attrib["role"] == "img"
    assert drawing.findtext(f"{SVG}title") == "a < b"
