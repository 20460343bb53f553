"""The plans of the grading language, one table, by the name they have in a formula."""

from collections.abc import Mapping
from types import MappingProxyType

from sizewright.grade.shaping.plan import Plan
from sizewright.grade.shaping.spread import SPREADS

PLANS: Mapping[str, Plan] = MappingProxyType({plan.name: plan for plan in (*SPREADS,)})
