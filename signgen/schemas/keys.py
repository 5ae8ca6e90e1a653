"""The keys of a format, told one by one from its schema."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct


class Key(Struct, frozen=True, kw_only=True):
    """`path` from the top with dots, and [] for each of a list; `kind` what stands there ('number | null'); `always`:
    whether it is there in every report; `about` may be empty where the path says all."""

    path: str
    kind: str
    always: bool
    about: str

    @property
    def line(self) -> str:
        return f"{self.path}{'' if self.always else '?'} {self.kind}"


def keys_of(schema: dict[str, Any]) -> Iterator[Key]:
    """Every key that a format may have, in order; what refers to itself is told once."""
    yield from _keys(schema, schema, "", ())


def _keys(schema: dict[str, Any], whole: dict[str, Any], path: str, seen: tuple[str, ...]) -> Iterator[Key]:
    if "$ref" in schema:
        name = schema["$ref"].rsplit("/", 1)[1]
        if name not in seen:
            yield from _keys(whole["$defs"][name], whole, path, (*seen, name))
        return
    for each in (*schema.get("anyOf", ()), *schema.get("prefixItems", ())[:1]):
        yield from _keys(each, whole, path, seen)
    if isinstance(schema.get("items"), dict):
        yield from _keys(schema["items"], whole, f"{path}[]", seen)
    for name, value in schema.get("properties", {}).items():
        below = f"{path}.{name}".lstrip(".")
        always = name in schema.get("required", ())
        yield Key(path=below, kind=_kind_of(value, whole), always=always, about=_about(value, whole))
        yield from _keys(value, whole, below, seen)


def _kind_of(schema: dict[str, Any], whole: dict[str, Any]) -> str:
    """'number | null', '[string]', "'bottom' | 'top'"."""
    if "$ref" in schema:
        return _kind_of(whole["$defs"][schema["$ref"].rsplit("/", 1)[1]], whole)
    if "anyOf" in schema:
        return " | ".join(dict.fromkeys(_kind_of(each, whole) for each in schema["anyOf"]))
    if "enum" in schema:
        return " | ".join(repr(each) for each in schema["enum"])
    if "prefixItems" in schema:
        return f"[{', '.join(_kind_of(each, whole) for each in schema['prefixItems'])}]"
    if isinstance(schema.get("items"), dict):
        return f"[{_kind_of(schema['items'], whole)}]"
    return str(schema.get("type", "anything"))


def _about(schema: dict[str, Any], whole: dict[str, Any]) -> str:
    """What it says of itself, or what stands there says."""
    if "description" in schema:
        return str(schema["description"])
    if "$ref" in schema:
        return _about(whole["$defs"][schema["$ref"].rsplit("/", 1)[1]], whole)
    inner = (*schema.get("anyOf", ()), *([schema["items"]] if isinstance(schema.get("items"), dict) else ()))
    return next((said for each in inner if (said := _about(each, whole))), "")
