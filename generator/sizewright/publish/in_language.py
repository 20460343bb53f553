"""In: a project and its sound patterns. Out: both as they are told in one of its languages."""

from collections.abc import Sequence
from dataclasses import replace

from sizewright.proof.proofed import Proofed
from sizewright.read.project import Project


def told_in(code: str, project: Project, sound: Sequence[Proofed]) -> tuple[Project, tuple[Proofed, ...]]:
    """What there is in a language: all in the first, in another one what has been translated."""
    if code == project.studio.language:
        return project, tuple(sound)
    studio = replace(project.studio, languages=(code,))
    return replace(project, studio=studio, patterns=(), pages=(), techniques=()), ()
