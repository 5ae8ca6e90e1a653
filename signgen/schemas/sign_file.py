"""The sign file's schema, from the rows of options, so that editors complete and check it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from signgen.option import Option
from signgen.schemas.known_words import known_words
from signgen.spec import keys
from signgen.spec.keys.lettering import LINE, LINE_KEYS
from signgen.spec.sign_file import FORMAT, VERSION
from signgen.units import GREATEST_COUNT, POSITIVE, Limits

_NAMED = frozenset({"length", "angle", "number", "count"})
"""Kinds that are numbers, or texts that say one: with a unit, as a fraction."""

_BOUNDS: Mapping[str, Limits] = {"length": POSITIVE, "count": Limits(least=0, greatest=GREATEST_COUNT)}
"""Where the row has none of its own, as `read_option` has it."""


def sign_file_schema() -> dict[str, Any]:
    """A JSON Schema of what stands in a sign file; TOML has the same kinds of values as JSON."""
    line = _table(LINE_KEYS)
    line["required"] = ["text"]
    line["description"] = "A line of lettering that is set in its own way."
    table = _table((*keys.KEYS, keys.OUT, LINE))
    own = {
        "format": {"description": "What the file is; it may be left out.", "enum": [FORMAT]},
        "version": {"description": "Of the format; it may be left out.", "enum": [*range(1, VERSION + 1)]},
    }
    table["properties"] = own | table["properties"]
    return {
        "description": "A sign for signgen make --from. Bare numbers are millimetres, texts may have a unit. Every key "
        "may be left to the command line.",
        **table,
        "$defs": {"Line": line},
    }


def _table(options: Iterable[Option]) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": {option.name: {"description": option.full_help, **_value(option)} for option in options},
        "additionalProperties": False,
    }


def _value(option: Option) -> dict[str, Any]:
    number = {"type": "number", **_bounds(option)}
    text = {"type": "string", "minLength": 1}
    match option.kind:
        case "tables":
            return {"type": "array", "minItems": 1, "items": {"$ref": "#/$defs/Line"}}
        case "pictures":
            own = _table(option.table)
            own["required"] = [option.table[0].name]
            return {"anyOf": [text, {"type": "array", "minItems": 1, "items": own}]}
        case "lines":
            return {"anyOf": [text, {"type": "array", "minItems": 1, "items": text}]}
        case "flag":
            return {"anyOf": [{"type": "boolean"}, {"enum": ["true", "false", "yes", "no", "on", "off"]}]}
        case "choice":
            return {"enum": list(option.choices)}
        case "size":
            pair = {"type": "array", "items": {"anyOf": [number, text]}, "minItems": 2, "maxItems": 2}
            return {"anyOf": [text, pair]}
        case kind if kind in _NAMED:
            return {"anyOf": [number | ({"type": "integer"} if kind == "count" else {}), text]}
        case _:
            words = known_words(option)
            return {"anyOf": [{"enum": list(words)}, text]} if words else text


def _bounds(option: Option) -> dict[str, float]:
    limits = option.limits or _BOUNDS.get(option.kind) or (POSITIVE if option.kind == "size" else None)
    if limits is None:
        return {}
    return {"exclusiveMinimum" if limits.open_below else "minimum": limits.least, "maximum": limits.greatest}
