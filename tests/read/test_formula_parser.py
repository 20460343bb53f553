"""In: formulas as designers type them. Out: the tree they mean, or the place and the words of what is wrong."""

from fractions import Fraction

import pytest

from sizewright.base.finding import Finding
from sizewright.base.place import Lines
from sizewright.read.formula import (
    Call,
    Comparison,
    Definition,
    Direction,
    Fit,
    Formula,
    Literal,
    Multiple,
    Name,
    Negation,
    Operation,
    Relation,
    Tree,
    names_in,
)
from sizewright.read.formula_parser import FormulaParser
from sizewright.read.grade_block import read_grade_block

SIZES = ("S", "M", "L")


def said(tree: Tree) -> str:
    """A tree in words of its own, every operation in brackets."""
    match tree:
        case Literal(values=values, unit=unit):
            numbers = " ".join(str(value) for value in values)
            return f"[{numbers}{' ' + unit.name if unit else ''}]"
        case Name(name=name):
            return name
        case Negation(operand=operand):
            return f"(- {said(operand)})"
        case Operation(operator=operator, left=left, right=right):
            return f"({said(left)} {operator} {said(right)})"
        case Call(function=function, arguments=arguments):
            return f"{function}({', '.join(map(said, arguments))})"


def formula(text: str) -> Formula:
    read = FormulaParser(Lines("x.md", text), SIZES).formula(0, len(text))
    assert isinstance(read, Formula), read
    return read


def fault(text: str) -> Finding:
    read = FormulaParser(Lines("x.md", text), SIZES).statement(0, len(text))
    assert isinstance(read, Finding), read
    return read


@pytest.mark.parametrize(
    ("text", "tree"),
    [
        ("1 + 2 * 3", "([1] + ([2] * [3]))"),
        ("1 - 2 - 3", "(([1] - [2]) - [3])"),
        ("a / b / c", "((a / b) / c)"),
        ("(1 + 2) * 3", "(([1] + [2]) * [3])"),
        ("-a * b", "((- a) * b)"),
        ("a - -b", "(a - (- b))"),
        ("+a", "a"),
        ("22 st / 10 cm", "([22 stitch] / [10 centimetre])"),
        ("1/2 / 3", "([1/2] / [3])"),
        ("chest / 2 1/2", "(chest / [5/2])"),
        ("2 1/4 in", "[9/4 inch]"),
        ("2¼ in", "[9/4 inch]"),
        ("2 ¼ in", "[9/4 inch]"),
        ("¼ in", "[1/4 inch]"),
        ('16"', "[16 inch]"),
        ("16″", "[16 inch]"),
        ("50%", "[50 percent]"),
        ("0.1 + 0.2", "([1/10] + [1/5])"),
        ("4 (5, 6) cm", "[4 5 6 centimetre]"),
        ("4 (5: 6) cm", "[4 5 6 centimetre]"),
        ("4 (5; 6)", "[4 5 6]"),
        ("-5 (-5, 4) cm", "[-5 -5 4 centimetre]"),
        ("−5 (+5, –4) cm", "[-5 5 -4 centimetre]"),
        ("-(4 (5, 6) cm)", "(- [4 5 6 centimetre])"),
        ("a × b ÷ c · d − e", "((((a * b) / c) * d) - e)"),
        ("max(a, b + 1, 4 (5, 6))", "max(a, (b + [1]), [4 5 6])"),
        ("body.stitches * around", "(body.stitches * around)"),
        ("nearest + plus + of", "((nearest + plus) + of)"),
        ("Ärmel2 + _x", "(Ärmel2 + _x)"),
        ("٣ + 1", "([3] + [1])"),  # a digit is a digit, whatever the script
    ],
)
def test_a_formula_means_what_it_says(text: str, tree: str) -> None:
    assert said(formula(text).tree) == tree


@pytest.mark.parametrize(
    ("words", "direction", "of", "plus"),
    [
        ("nearest whole", Direction.NEAREST, "[1]", "[0]"),
        ("up to even", Direction.UP, "[2]", "[0]"),
        ("down to odd", Direction.DOWN, "[2]", "[1]"),
        ("nearest multiple of 4", Direction.NEAREST, "[4]", None),
        ("up to multiple of 6 plus 2", Direction.UP, "[6]", "[2]"),
        ("up  to multiple of repeat plus (a - 1)", Direction.UP, "repeat", "(a - [1])"),
        ("nearest multiple of 4 (6, 8) plus 1 st", Direction.NEAREST, "[4 6 8]", "[1 stitch]"),
    ],
)
def test_a_rounding_to_a_multiple(words: str, direction: Direction, of: str, plus: str | None) -> None:
    rounding = formula(f"around * gauge, {words}").rounding
    assert rounding is not None
    assert isinstance(rounding.step, Multiple)
    step = rounding.step
    assert (rounding.direction, said(step.of), step.plus and said(step.plus)) == (direction, of, plus)


def test_a_rounding_to_a_length() -> None:
    rounding = formula("around, down to 1/4 in").rounding
    assert rounding is not None
    assert not isinstance(rounding.step, Multiple)
    assert (rounding.direction, said(rounding.step)) == (Direction.DOWN, "[1/4 inch]")


@pytest.mark.parametrize(
    ("sign", "relation"),
    [
        *(("=", Relation.EQUAL), ("==", Relation.EQUAL), ("!=", Relation.UNEQUAL), ("≠", Relation.UNEQUAL)),
        *(("<", Relation.LESS), ("<=", Relation.AT_MOST), ("≤", Relation.AT_MOST)),
        *((">", Relation.MORE), (">=", Relation.AT_LEAST), ("≥", Relation.AT_LEAST)),
    ],
)
def test_a_promise_compares(sign: str, relation: Relation) -> None:
    text = f"require crown {sign} 8 st, nearest whole"
    read = FormulaParser(Lines("x.md", text), SIZES).statement(0, len(text))
    assert isinstance(read, Comparison)
    assert (read.relation, said(read.left.tree), said(read.right.tree)) == (relation, "crown", "[8 stitch]")
    assert read.text == text


@pytest.mark.parametrize("sign", ["=", "==", "<=", "≠"])
def test_a_promise_compares_numbers_of_plans_and_gauges(sign: str) -> None:
    """The dot behind a name once made “=” the sign of a definition."""
    text = f"require back.left {sign} front.left"
    read = FormulaParser(Lines("x.md", text), SIZES).statement(0, len(text))
    assert isinstance(read, Comparison)
    assert (said(read.left.tree), said(read.right.tree)) == ("back.left", "front.left")


def test_a_promise_to_fit() -> None:
    text = "require cast_on + 1 st fits multiple of 8 plus 1"
    read = FormulaParser(Lines("x.md", text), SIZES).statement(0, len(text))
    assert isinstance(read, Fit)
    assert said(read.left.tree) == "(cast_on + [1 stitch])"
    assert said(read.multiple.of) == "[8]"


def test_every_node_has_its_place() -> None:
    text = "around = chest + max(2 cm, 1 in) * 3"
    lines = Lines("x.md", f"Ä🧶\n  {text}  # a comment")
    read = FormulaParser(lines, SIZES).statement(5, 5 + len(text))
    assert isinstance(read, Definition)

    def typed(node: Tree | Name | Definition) -> str:
        span = node.span
        return lines.text[lines.offset(span.line, span.column) : lines.offset(span.end_line, span.end_column)]

    total = read.formula.tree
    assert isinstance(total, Operation)
    assert isinstance(total.right, Operation)
    nodes = (read, read.name, total, total.left, total.right, total.right.left, total.right.right)
    assert [typed(node) for node in nodes] == [
        *(text, "around", "chest + max(2 cm, 1 in) * 3", "chest"),
        *("max(2 cm, 1 in) * 3", "max(2 cm, 1 in)", "3"),
    ]


def test_the_names_of_a_formula_in_their_order() -> None:
    read = formula("b * (a + -c) / max(d, b), nearest multiple of e plus f")
    assert [name.name for name in (*names_in(read.tree), *names_in(read.rounding))] == list("bacdbef")


# What people type by habit, and the mend they are told.
SLIPS = (
    ("cast_on = around * gauge nearest multiple of 4", 26, "Write “, nearest …”."),
    ("cast_on = 72 up to even", 14, "Write “, up to …”."),
    ("cast_on = (72) down  to even", 16, "Write “, down to …”."),
    ("cast_on = 72 nearest", 14, "Write a comma before a rounding: “, nearest multiple of 4”."),
    ("width = 41,5 cm", 9, "Write a decimal point: “41.5”."),
    ("width = around + 1,25 in", 18, "Write a decimal point: “1.25”."),
    ("area = 4 x 5 cm", 10, "Write “*” for times."),
    ("area = width x 5 cm", 14, "Write “*” for times."),
    ("gauge = 22 st over 10 cm", 15, "Write “/”: 22 st / 10 cm."),
    ("gauge = 22 st per 10 cm", 15, "Write “/”: 22 st / 10 cm."),
)


@pytest.mark.parametrize(("text", "column", "mend"), SLIPS)
def test_a_common_slip_is_told_where_it_stands(text: str, column: int, mend: str) -> None:
    found = fault(text)
    assert found.span is not None
    assert (found.span.column, found.mend) == (column, mend)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("a = b *", "the line ends where a number or a name was expected"),
        ("a = b c", "“c” stands where a sign (+ − * /) or the end was expected"),
        ("a = (b c", "“c” stands where a sign (+ − * /) or “)” was expected"),
        ("a = 4 cm, even", "“even” stands where “nearest”, “up to” or “down to” was expected"),
        ("a = b, up 4", "“4” stands where “to” was expected"),
        ("a = b, nearest multiple 4", "“4” stands where “of” was expected"),
        ("a 4", "“4” stands where “=” was expected"),
        ("require a 4", "“4” stands where"),
        ("require a fits 4", "“4” stands where “multiple of …” was expected"),
        ("a = b, nearest", "the line ends where “whole”, “even”, “odd”, “multiple of …” or a length was expected"),
        ("a = max(4 cm", "the line ends where"),
    ],
)
def test_a_fault_says_what_was_expected(text: str, wanted: str) -> None:
    assert wanted in fault(text).message


@pytest.mark.parametrize("text", ["(" * 70 + "1" + ")" * 70, "1+" * 90 + "1", "-" * 90 + "1", "b" + " " * 2000])
def test_what_nobody_would_write_is_refused(text: str) -> None:
    assert fault(f"a = {text}").rule == "unreadable-formula"


def statements(*lines: str) -> tuple[list[str], list[str]]:
    """The statements of a block, in their own words, and the messages of what is wrong with it."""
    text = Lines("x.md", "\n".join(lines))
    block, findings = read_grade_block(text, text.whole_line(1), 1, len(lines) + 1, SIZES)
    texts = [one.formula.text if isinstance(one, Definition) else one.text for one in block.statements]
    return texts, [f"{one.span and one.span.line}: {one.message}" for one in findings]


@pytest.mark.parametrize(
    ("lines", "count"),
    [
        (("a = 4 (5,", "  6) cm"), 1),
        (("a = 4 (5, # two", "  # three", "  6) cm"), 1),
        (("a = 4 (5, # two", "  6) cm # and three"), 1),
        (("a = b,", "  nearest whole"), 1),
        (("a = b +", "  c"), 1),
        (("a = 4 cm", "", "b = 5 cm"), 2),
        (("require a +", "  4 cm > b"), 1),
    ],
)
def test_a_statement_may_go_on_in_the_next_line(lines: tuple[str, ...], count: int) -> None:
    assert len(statements(*lines)[0]) == count


def test_a_bracket_left_open_takes_no_other_statement_with_it() -> None:
    found, wrong = statements("a = 4 (5, 6", "b = 4 cm", "c = (1 + 2", "require b > 3 cm", "d = max(b,")
    assert found == ["4 cm", "require b > 3 cm"]
    assert [one.partition(":")[0] for one in wrong] == ["1", "3", "5"]


def test_a_name_whose_formula_cannot_be_read_is_known_to_be_meant() -> None:
    text = Lines("x.md", "a = 4 *\nb = 5 cm\nrequire c *\n d")
    block, findings = read_grade_block(text, text.whole_line(1), 1, 5, SIZES)
    assert block.unreadable == {"a"}
    assert len(findings) == 2


def test_a_number_is_exact() -> None:
    tree = formula("0.1").tree
    assert isinstance(tree, Literal)
    assert tree.values == (Fraction(1, 10),)
