"""The shapes of schematics, one table, by the names they have in the source."""

from collections.abc import Mapping
from types import MappingProxyType

from sizewright.grade.schematic.accessories import ACCESSORIES
from sizewright.grade.schematic.garments import GARMENTS
from sizewright.grade.schematic.panels import PANELS
from sizewright.grade.schematic.plain import PLAIN
from sizewright.grade.schematic.shape import Shape

_ALL = (*PLAIN, *ACCESSORIES, *GARMENTS, *PANELS)

SHAPES: Mapping[str, Shape] = MappingProxyType({shape.name: shape for shape in _ALL})
