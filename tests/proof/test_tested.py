"""Sheets that come back: as spreadsheets of other countries write them, with every slip a test knitter may make."""

import csv
import io
from collections.abc import Callable
from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.proof.test_expected import COWL, expected

from sizewright.base.printing import decimal
from sizewright.proof.expected import Expectation, Expected, Kind
from sizewright.proof.tested import Judged, Verdict, compared, may_be_off
from sizewright.proof.typed_answer import NoNumber, number_in
from sizewright.publish.tester.sheets import sheet_csv
from sizewright.read.returned import COLUMNS, Trouble, read_returned

EXPECTED = expected()
SMALL, LARGE = EXPECTED
Line = dict[str, str]
Fill = Callable[[Line], None]


def written(
    lines: list[Line], delimiter: str = ",", encoding: str = "utf-8", columns: tuple[str, ...] = COLUMNS
) -> bytes:
    text = io.StringIO(newline="")
    writer = csv.DictWriter(text, columns, delimiter=delimiter, extrasaction="ignore")
    writer.writeheader()
    writer.writerows(lines)
    return text.getvalue().encode(encoding)


def template(one: Expectation = SMALL) -> list[Line]:
    return list(csv.DictReader(io.StringIO(sheet_csv(one).decode("utf-8-sig"), newline="")))


def as_it_is(_: Line) -> None:
    """Changes nothing."""


def filled(one: Expectation = SMALL, fill: Fill = as_it_is) -> list[Line]:
    """A sheet in which everything came out as expected, but for what `fill` changes."""
    lines = template(one)
    for line in lines:
        line["got"] = {"Name": "Ann"}.get(line["at"], line["expected"])
        fill(line)
    return lines


def back(content: bytes, against: tuple[Expectation, ...] = EXPECTED) -> tuple[list[Judged], list[Trouble]]:
    sheets, troubles = read_returned("ann.csv", content)
    results = [compared(against, sheet) for sheet in sheets]
    return [one for one, _ in results if one], [*troubles, *(trouble for _, some in results for trouble in some)]


def at(place: str, got: str) -> Fill:
    def fill(line: Line) -> None:
        if f"{line['stage']}, {line['at']}, {line['unit']}" == place:
            line["got"] = got

    return fill


CAST_ON, RIB = "Rib, after “Cast on”, sts", "Rib, at the end, length of this part, cm"


@st.composite
def as_typed(draw: st.DrawFn, line: Expected) -> str:
    """The expected number as somebody may write it: comma or point, with or without its unit, lengths in inches too."""
    value, unit = line.value, line.unit.split()[0]
    if line.kind is Kind.LENGTH and draw(st.booleans()):
        value, unit = value * 50 / 127, "in"
    text = decimal(value)
    if draw(st.booleans()):
        text = text.replace(".", ",")
    ending = draw(st.sampled_from((f" {unit}", f"  {unit.upper()} ", unit, *(() if unit == "in" else ("",)))))
    return f"{draw(st.sampled_from(('', ' ')))}{text}{ending}"


@settings(max_examples=40)
@given(st.data())
def test_what_came_out_as_expected_is_no_difference(data: st.DataObject) -> None:
    """Whatever the spreadsheet, and also where columns stand in another order and rows were sorted."""
    one = data.draw(st.sampled_from(EXPECTED))
    lines = template(one)
    by_key = {line.key: line for line in one.lines}
    for line in lines:
        key = line["stage"], line["at"], line["unit"]
        line["got"] = data.draw(as_typed(by_key[key])) if key in by_key else "Ann"
    delimiter = data.draw(st.sampled_from(",;\t"))
    encoding = data.draw(st.sampled_from(("utf-8", "utf-8-sig", "utf-16", "cp1252")))
    columns = tuple(data.draw(st.permutations(COLUMNS)))
    (sheet,), troubles = back(written(data.draw(st.permutations(lines)), delimiter, encoding, columns))
    assert troubles == []
    assert {answer.verdict for answer in sheet.answers} == {Verdict.AS_EXPECTED}
    assert (sheet.knitter, sheet.expectation, sheet.same_version) == ("Ann", one, True)


@given(st.sampled_from([line for line in SMALL.lines if line.unit == "sts"]), st.integers(-8, 8).filter(bool))
def test_every_wrong_count_is_told(line: Expected, by: int) -> None:
    place = ", ".join(line.key)
    (sheet,), troubles = back(written(filled(fill=at(place, decimal(line.value + by).replace("−", "-")))))
    assert troubles == []
    (answer,) = sheet.having(Verdict.DIFFERENT)
    assert (answer.line, int(answer.by)) == (line, by)


@pytest.mark.parametrize(
    ("place", "inside", "outside"),
    [
        # 3 % of 44 cm are 1.32; of 4 cm 0.12, but a tape is read to half a centimetre
        (
            "Finished measurements, Around, cm",
            ("42.7", "45,3 cm", "17 1/2 in", '17½"', "450 mm"),
            ("42.6", "45.4", "18 in"),
        ),
        (RIB, ("3.5", "4.5"), ("3.4", "4.6")),
        ("Rib, at the end, rounds of this part, rnds", ("11", "13"), ("10", "14")),  # worked to a length: one row
        ("Top, at the end, rounds of this part, rnds", ("4", "4 rnds", "4 rows"), ("3", "5")),  # told by their number
        ("Gauge, swatch in ribbing, blocked, sts in 10 cm", ("19.5", "20.5 sts in 10 cm"), ("19.4", "21")),
        ("Yarn in all, yarn, g", ("12.74", "16.7", "0.5 oz"), ("12.7", "17")),  # 14.74 g, and two grams for the scale
    ],
)
def test_how_far_off_is_still_as_expected(place: str, inside: tuple[str, ...], outside: tuple[str, ...]) -> None:
    for verdict, texts in ((Verdict.AS_EXPECTED, inside), (Verdict.DIFFERENT, outside)):
        for text in texts:
            (sheet,), troubles = back(written(filled(fill=at(place, text))))
            assert troubles == []
            got = {", ".join(answer.line.key): answer.verdict for answer in sheet.answers}
            assert (text, got[place]) == (text, verdict)


def test_a_sheet_of_before_that_called_rounds_rows_is_compared_as_well() -> None:
    def before(line: Line) -> None:
        line["at"] = line["at"].replace("rounds of", "rows of")
        line["unit"] = line["unit"].replace("rnds", "rows")

    (sheet,), troubles = back(written(filled(fill=before)))
    assert troubles == []
    assert not sheet.having(Verdict.EMPTY)


def test_another_tolerance_is_for_measures_and_never_for_counts() -> None:
    lines = {", ".join(line.key): line for line in SMALL.lines}
    around = lines["Finished measurements, Around, cm"]
    assert may_be_off(around, Fraction(1, 10)) == Fraction(44, 10)
    assert may_be_off(lines[CAST_ON], Fraction(1, 10)) == 0


def test_yarn_that_is_at_least_so_much_may_be_more() -> None:
    text = COWL.replace("Knit 3 rounds.", "Knit 3 rounds.\nDo something pretty. # declared: {cast_on * 3/4} sts")
    one = expected(text)[0]
    assert one.lines[-1].least
    for got, verdict in (("30", Verdict.AS_EXPECTED), ("5", Verdict.DIFFERENT)):
        (sheet,), _ = back(written(filled(one, at("Yarn in all, yarn, g", got))), (one,))
        assert sheet.answers[-1].verdict is verdict


NO_NUMBERS = (
    "about 72", "~72", "72?", "seventy", "72 - 74", "-4", "1,234", "1.234", "72 apples", "72.5", "72 cm", "1/0", "1e5",
    "=6*12", "#REF!", "72 72", "9" * 200, "٧٢x", "½x", ",5",
)  # fmt: skip


@pytest.mark.parametrize("typed", NO_NUMBERS)
def test_what_is_no_number_is_told_and_not_guessed(typed: str) -> None:
    (sheet,), (trouble,) = back(written(filled(fill=at(CAST_ON, typed))))
    (answer,) = sheet.having(Verdict.UNREAD)
    assert answer.got is None
    assert trouble.row == 9
    assert typed[:20] in trouble.message
    assert "remarks" in trouble.mend


@pytest.mark.parametrize("typed", ["43,999", "43.999", "1,234 cm"])
def test_what_may_be_thousands_or_decimals_is_neither(typed: str) -> None:
    (sheet,), (trouble,) = back(written(filled(fill=at("Finished measurements, Around, cm", typed))))
    assert [answer.line.at for answer in sheet.having(Verdict.UNREAD)] == ["Around"]
    assert "or a number with decimals" in trouble.message


@given(st.text(max_size=80))
def test_any_text_is_a_number_or_told(typed: str) -> None:
    for line in SMALL.lines:
        with suppress(NoNumber):
            assert number_in(typed, line) >= 0


def test_empty_boxes_and_lost_rows_are_empty_and_nothing_else() -> None:
    lines = [line for line in filled(fill=at(CAST_ON, " ")) if line["stage"] != "Top"]
    (sheet,), troubles = back(written(lines))
    assert troubles == []
    assert {answer.line.stage for answer in sheet.having(Verdict.EMPTY)} == {"Rib", "Top"}
    (sheet,), (trouble,) = back(written(template()))
    assert (sheet.filled, trouble.message) == (0, "No box of size S is filled in.")


def test_a_sheet_of_another_version_is_compared_where_both_expect_the_same() -> None:
    old = expected(COWL.replace("{head: 48 cm}", "{head: 50 cm}").replace("Knit 3 rounds", "Knit 5 rounds"))[0]
    (sheet,), (trouble,) = back(written(filled(old, at(RIB, "9"))))
    assert not sheet.same_version
    assert [answer.line.at for answer in sheet.having(Verdict.DIFFERENT)] == ["at the end, length of this part"]
    moved = [answer.line.at for answer in sheet.having(Verdict.MOVED)]
    assert "after “Cast on”" in moved
    assert "another version" in trouble.message
    assert "Rib, after “Cast on”" in trouble.message


def change(**told: str) -> Fill:
    return lambda line: line.update(told)


def moved_box(line: Line) -> None:
    if line["unit"] == "cm":
        line["at"] = "later"


@pytest.mark.parametrize(
    ("lines", "message"),
    [
        (filled(fill=change(size="Giant", version="v-0")), "“Giant” is no size of Trial Cowl."),
        (filled(fill=change(size="10-12")), "The sheet says size 10-12, but it was made for size S."),
        (filled(LARGE, change(size="10-Dec")), "“10-Dec” is no size; by its version the sheet is that of 10-12."),
        (filled(fill=change(pattern="sock")), "The sheet is of another pattern, “sock”."),
        (filled(fill=change(version="")), "The sheet was made for another version"),
        (filled(fill=moved_box), "The sheet has no line “Rib, later” in “cm”."),
        ([*filled(), {**filled()[9], "got": "80"}], "stands twice, with"),
    ],
)
def test_sheets_that_are_not_what_they_say(lines: list[Line], message: str) -> None:
    _, troubles = back(written(lines))
    assert any(message in one.message for one in troubles)


PLAIN = written(filled())


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "is empty"),
        (b"\xef\xbb\xbf\r\n\r\n", "is empty"),
        (b",", "is empty"),
        (b"PK\x03\x04rest", "workbook"),
        (b"\xff\xfe\x00", "no text"),
        (b"a\x00b", "no text"),
        (b"\x81\x8d", "no text"),
        (b"hello", "“pattern”, “version”, “size”, “stage”, “at”, “unit”, “got” cannot be found"),
        (written(filled(), columns=COLUMNS[:7]), "The column “got” cannot be found"),
        (PLAIN.splitlines()[0], "no line below"),
        (PLAIN.replace(b",88,88,", b",88,8,8,1,"), "more cells than there are columns"),
        (PLAIN + b'x,"unclosed', "no CSV"),
        (b"x" * 6_000_000, "too large"),
    ],
)
def test_files_that_are_no_sheets(content: bytes, message: str) -> None:
    _, troubles = back(content)
    assert message in troubles[0].message
    assert troubles[0].mend


def test_a_spreadsheet_s_own_first_line_and_old_encoding() -> None:
    lines = filled(fill=lambda line: line.update(got="Ülkü") if line["at"] == "Name" else None)
    (sheet,), troubles = back(b"sep=;\r\n" + written(lines, ";", "cp1252"))
    assert (sheet.knitter, troubles) == ("Ülkü", [])


@given(st.binary(max_size=300) | st.text(max_size=300).map(str.encode))
def test_any_bytes_are_read_or_told(content: bytes) -> None:
    for text in (content, PLAIN[:200] + content, PLAIN + content):
        sheets, troubles = back(text)
        assert sheets or troubles


def test_many_sizes_in_one_file() -> None:
    sheets, troubles = back(written([*filled(), *filled(LARGE)]))
    assert ([one.expectation.size for one in sheets], troubles) == (["S", "10-12"], [])
