"""The plans of the grading language, one table, by the name they have in a formula."""

from collections.abc import Mapping
from types import MappingProxyType

from sizewright.grade.shaping.ends import ENDS
from sizewright.grade.shaping.fronts import FRONTS
from sizewright.grade.shaping.necks import NECKS
from sizewright.grade.shaping.over_rows import OVER_ROWS
from sizewright.grade.shaping.pick_up import PICK_UPS
from sizewright.grade.shaping.plan import Plan
from sizewright.grade.shaping.raglan import RAGLANS
from sizewright.grade.shaping.set_in import SET_IN
from sizewright.grade.shaping.spread import SPREADS
from sizewright.grade.shaping.tapers import TAPERS
from sizewright.grade.shaping.v_fronts import V_FRONTS
from sizewright.grade.shaping.yokes import YOKES

_ALL = (*SPREADS, *OVER_ROWS, *PICK_UPS, *TAPERS, *RAGLANS, *YOKES, *SET_IN, *NECKS, *FRONTS, *V_FRONTS, *ENDS)

PLANS: Mapping[str, Plan] = MappingProxyType({plan.name: plan for plan in _ALL})
