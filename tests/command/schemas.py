"""In: a published JSON Schema and what a command printed. Out: every key and value that the schema does not tell."""

import json
from importlib.resources import files
from typing import Any

from jsonschema import Draft202012Validator

from sizewright import command


def shipped(name: str) -> Any:  # noqa: ANN401 (a tree of JSON)
    """A schema as it is shipped beside the commands."""
    return json.loads(files(command).joinpath(name).read_bytes())


def closed(schema: Any) -> Any:  # noqa: ANN401 (a tree of JSON)
    """The schema without room for keys it does not tell: readers must bear such, and we must not print them."""
    if isinstance(schema, list):
        return [closed(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    parts = {key: closed(part) for key, part in schema.items()}
    return {**parts, "additionalProperties": False} if "properties" in parts and "type" in parts else parts


def faults(schema: Any, told: object) -> list[str]:  # noqa: ANN401 (a tree of JSON)
    """What is not as the schema says, each with its place."""
    found = Draft202012Validator(closed(schema)).iter_errors(told)
    return [f"{error.json_path}: {error.message}" for error in found]
