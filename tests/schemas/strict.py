"""Schemas as the tests hold them: no key but those that are named. `watch` has every report and sign file of the tests
judged."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Iterator
from functools import cache
from typing import Any

from jsonschema import Draft202012Validator

from signgen import pipeline
from signgen.api import checking
from signgen.batching import run
from signgen.batching.report import BATCH
from signgen.job import verdict
from signgen.schemas.formats import schema_of


def closed(schema: Any) -> Any:
    """The schema in which no object may have keys that it does not name."""
    if isinstance(schema, list):
        return [closed(each) for each in schema]
    if not isinstance(schema, dict):
        return schema
    inner = {name: closed(each) for name, each in schema.items()}
    if isinstance(schema.get("properties"), dict) and schema.get("type") == "object":
        inner["additionalProperties"] = False
    return inner


@cache
def _validator(name: str) -> Draft202012Validator:
    return Draft202012Validator(closed(schema_of(name)))


def problems(name: str, value: object) -> list[str]:
    """What of a value is not as its schema says."""
    return [f"{error.json_path}: {error.message}"[:300] for error in _validator(name).iter_errors(value)]


def must_fit(name: str, value: object) -> None:
    """Raises: AssertionError with what is not as the schema says."""
    found = problems(name, value)
    assert not found, "\n".join([f"signgen/schemas does not know this of a {name}:", *found[:5]])


def watch() -> None:
    """From now on whatever this process writes for programs is held against its schema."""
    report_text, verdict_data, write_reports = pipeline.report_text, verdict.verdict_data, run.write_reports
    dump_sign_file = pipeline.dump_sign_file

    def watched_report(facts: Any, *more: Any) -> str:
        text = report_text(facts, *more)
        must_fit("report", json.loads(text))
        return text

    def watched_verdict(judged: Any) -> dict[str, object]:
        data = verdict_data(judged)
        must_fit("check", json.loads(json.dumps(data)))
        return data

    def watched_batch(out: Any, *more: Any) -> None:
        write_reports(out, *more)
        must_fit("batch", json.loads((out / BATCH).read_text(encoding="utf-8")))

    def watched_sign_file(spec: Any) -> str:
        text = dump_sign_file(spec)
        must_fit("sign-file", tomllib.loads(text))
        return text

    pipeline.dump_sign_file = watched_sign_file  # type: ignore[attr-defined]
    pipeline.report_text = watched_report  # type: ignore[assignment,attr-defined]
    verdict.verdict_data = checking.verdict_data = watched_verdict  # type: ignore[attr-defined]
    run.write_reports = watched_batch  # type: ignore[attr-defined]


def keys_of(schema: dict[str, Any]) -> Iterator[str]:
    """Every key that a format may have, a line each: its path, whether it is always there, and what stands there."""
    yield from _keys(schema, schema, "", ())


def _keys(schema: dict[str, Any], whole: dict[str, Any], path: str, seen: tuple[str, ...]) -> Iterator[str]:
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
        always = "" if name in schema.get("required", ()) else "?"
        below = f"{path}.{name}".lstrip(".")
        yield f"{below}{always} {kind_of(value, whole)}"
        yield from _keys(value, whole, below, seen)


def kind_of(schema: dict[str, Any], whole: dict[str, Any]) -> str:
    """'number | null', '[string]', "'bottom' | 'top'"."""
    if "$ref" in schema:
        return kind_of(whole["$defs"][schema["$ref"].rsplit("/", 1)[1]], whole)
    if "anyOf" in schema:
        return " | ".join(dict.fromkeys(kind_of(each, whole) for each in schema["anyOf"]))
    if "enum" in schema:
        return " | ".join(repr(each) for each in schema["enum"])
    if "prefixItems" in schema:
        return f"[{', '.join(kind_of(each, whole) for each in schema['prefixItems'])}]"
    if isinstance(schema.get("items"), dict):
        return f"[{kind_of(schema['items'], whole)}]"
    return str(schema.get("type", "anything"))
