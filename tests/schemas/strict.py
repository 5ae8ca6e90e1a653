"""Schemas as the tests hold them: no key but those that are named. `watch` has every report and sign file of the tests
judged."""

from __future__ import annotations

import json
import tomllib
from functools import cache
from typing import Any

from jsonschema import Draft202012Validator

from signgen import pipeline
from signgen.api import checking
from signgen.batching import run
from signgen.batching.report import BATCH
from signgen.lesson import checked_data as checked
from signgen.schemas.formats import schema_of
from signgen.spec.sign_file import stamped


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
    report_text, checked_data, write_reports = pipeline.report_text, checked.checked_data, run.write_reports
    dump_sign_file = pipeline.dump_sign_file

    def watched_report(facts: Any, *more: Any) -> str:
        text = report_text(facts, *more)
        must_fit("report", json.loads(text))
        return text

    def watched_verdict(judged: Any, *more: Any) -> dict[str, object]:
        data = checked_data(judged, *more)
        must_fit("check", json.loads(json.dumps(data)))
        return data

    def watched_batch(out: Any, *more: Any) -> None:
        write_reports(out, *more)
        must_fit("batch", json.loads((out / BATCH).read_text(encoding="utf-8")))

    def watched_sign_file(spec: Any) -> str:
        text = dump_sign_file(spec)
        must_fit("sign-file", tomllib.loads(stamped(text)))
        return text

    pipeline.dump_sign_file = watched_sign_file  # type: ignore[attr-defined]
    pipeline.report_text = watched_report  # type: ignore[assignment,attr-defined]
    checked.checked_data = checking.checked_data = watched_verdict  # type: ignore[attr-defined]
    run.write_reports = watched_batch  # type: ignore[attr-defined]
