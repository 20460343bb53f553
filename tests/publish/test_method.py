"""In: the language as it is. Out: its page on the site leaves nothing of it out."""

from bs4 import BeautifulSoup

from sizewright.grade.functions import FUNCTIONS
from sizewright.grade.shaping.table import PLANS
from sizewright.proof.run import RULES
from sizewright.publish.output import Output


def test_every_function_and_plan_of_the_language_has_its_place(sample_outputs: dict[str, Output]) -> None:
    page = BeautifulSoup(sample_outputs["method.html"].content, "html.parser")
    for name in FUNCTIONS:
        assert page.select_one(f"#function--{name} code")
    for name, plan in PLANS.items():
        told = page.select_one(f"#plan--{name}")
        assert told is not None
        assert all(f"{argument.name.replace('_', ' ')}: " in told.get_text() for argument in plan.arguments)
        assert all(f"{member.name}: " in told.get_text() for member in plan.members)


def test_every_rule_has_its_place(sample_outputs: dict[str, Output]) -> None:
    page = BeautifulSoup(sample_outputs["rules.html"].content, "html.parser")
    for name, rule in RULES.items():
        told = page.select_one(f"#rule--{name}")
        assert told is not None
        assert rule.level in told.get_text()
        assert {strong.get_text() for strong in told.select("strong")} >= {"Why it matters.", "Example.", "Instead."}
