"""In: instruction lines and the plans a pattern defines. Out: the lines with the words of each `{plan}`.

`sleeve = taper(…)` in a grade block makes `{sleeve}` in a work block stand for the plan's sentence with its numbers
for every size, so that the sentence is carried out, proved and printed like any other.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from sizewright.base.finding import Finding
from sizewright.read.formula import Call, Definition, Formula, Name
from sizewright.read.inserts import Insert, Words
from sizewright.read.pattern import Clause, GradeBlock, InstructionLine, LinePiece, Piece
from sizewright.read.plans import MEMBER, PLAN_WORDS
from sizewright.read.rules import NOT_UNDERSTOOD

Sentences = Mapping[str, tuple[str, ...]]


def plans_of(pieces: Iterable[Piece]) -> Sentences:
    """The sentences of the plans that the grade blocks define, by the names they are given."""
    return {
        statement.name.name: PLAN_WORDS[name]
        for piece in pieces
        if isinstance(piece, GradeBlock)
        for statement in piece.statements
        if isinstance(statement, Definition) and (name := plan_called(statement.formula)) in PLAN_WORDS
    }


def plan_called(formula: Formula) -> str:
    """The function that is all of a formula; "" where it is another."""
    return formula.tree.function if isinstance(formula.tree, Call) else ""


def expanded(
    lines: Iterable[InstructionLine], plans: Sentences, findings: list[Finding]
) -> tuple[InstructionLine, ...]:
    """The lines with the words of the plans in them."""
    return tuple(one for line in lines for one in (_line(line, plans, findings) if plans else (line,)))


def _line(line: InstructionLine, plans: Sentences, findings: list[Finding]) -> Iterator[InstructionLine]:
    named = [(one, plans[_bare(one)]) for one in line.pieces if isinstance(one, Insert) and _bare(one) in plans]
    whole = next((pair for pair in named if len(pair[1]) > 1), None)
    if whole is None:
        yield _within(line, plans) if named else line
        return
    insert, plan = whole
    if any(piece is not insert and not (isinstance(piece, str) and not piece.strip(" .")) for piece in line.pieces):
        message = f"“{{{insert.formula.text}}}” stands for {len(plan)} sentences and shares its line with others."
        findings.append(NOT_UNDERSTOOD.at(insert.span, message, "Give it a line of its own."))
    part = 0
    for words in plan:
        filling = _Filling(insert, part)
        filling.fill(words)
        part = filling.part
        yield replace(line, pieces=tuple(filling.pieces), clauses=tuple(filling.clauses))


def _bare(piece: LinePiece) -> str:
    """The name that an insert stands for; "" where it is a number or a formula."""
    if isinstance(piece, Insert) and isinstance(piece.formula.tree, Name) and piece.style is None:
        return piece.formula.tree.name if piece.formula.rounding is None else ""
    return ""


def _within(line: InstructionLine, plans: Sentences) -> InstructionLine:
    """A line with the words of plans among its own."""
    pieces: list[LinePiece] = []
    clauses: list[Clause] = []
    for piece in line.pieces:
        plan = plans.get(_bare(piece))
        if plan is None or not isinstance(piece, Insert):
            pieces.append(piece)
            continue
        filling = _Filling(piece)
        filling.fill(plan[0])
        clauses.extend(Clause(one.number, one.first + len(pieces), one.end + len(pieces)) for one in filling.clauses)
        pieces.extend(filling.pieces)
    return replace(line, pieces=tuple(pieces), clauses=tuple(clauses))


class _Filling:
    """The words of a plan with its numbers among them, and the clauses that a size with none of them leaves out.

    `part` is that of the insert made last: all of a plan's sentences stand behind one brace.
    """

    def __init__(self, insert: Insert, part: int = 0) -> None:
        self._insert = insert
        self.part = part
        self.pieces: list[LinePiece] = []
        self.clauses: list[Clause] = []

    def fill(self, words: str) -> None:
        """Takes the words up."""
        at = 0
        open_at: list[tuple[Insert, int]] = []
        for found in MEMBER.finditer(words):
            self._say(words[at : found.start()])
            at = found.end()
            if found["number"]:
                self.pieces.append(self._number(found["number"], found["style"]))
            elif found["clause"]:
                open_at.append((self._number(found["clause"], None), len(self.pieces)))
            else:
                number, first = open_at.pop()
                self.clauses.append(Clause(number, first, len(self.pieces)))
        self._say(words[at:])

    def _say(self, words: str) -> None:
        if words:
            self.pieces.append(Words(self._insert.span, words))

    def _number(self, member: str, style: str | None) -> Insert:
        self.part += 1
        place, name = self._insert.span, f"{self._insert.formula.text}.{member}"
        formula = Formula(place, name, Name(place, name), None)
        return Insert(place, formula, Words(place, style) if style else None, self._insert.sizes, self.part)
