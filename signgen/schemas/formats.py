"""Every format by its name, and its JSON Schema (draft 2020-12)."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import msgspec

from signgen.schemas.answers import ErrorReport, Explained, Feeds, Listed
from signgen.schemas.batch import BatchReport
from signgen.schemas.check import VerdictReport
from signgen.schemas.lines import ProgramLines
from signgen.schemas.report import Report
from signgen.schemas.sign_file import sign_file_schema

DRAFT = "https://json-schema.org/draft/2020-12/schema"

SIGN_FILE = "sign-file"

FORMATS: dict[str, type[msgspec.Struct]] = {
    "report": Report,
    "batch": BatchReport,
    "check": VerdictReport,
    "list": Listed,
    "feeds": Feeds,
    "explain": Explained,
    "lines": ProgramLines,
    "error": ErrorReport,
}
"""What programs read; the sign file is what they may write."""

NAMES = (*FORMATS, SIGN_FILE)

ABOUT = {
    "report": "report.json of a sign, and what make --json prints",
    "batch": "batch.json of a list, and what batch --json prints",
    "check": "each board in the list that check --json prints",
    "list": "what list --json prints",
    "feeds": "what feeds --json prints",
    "explain": "what explain --json prints",
    "lines": "what explain PROGRAM.nc --json prints",
    "error": "what goes to standard error when --json was asked for",
    SIGN_FILE: "sign.toml, and any file for make --from",
}


def schema_of(name: str) -> dict[str, Any]:
    """The schema of a format. Later versions of signgen may bring keys that it does not name; in a sign file those are
    slips."""
    if name == SIGN_FILE:
        return {"$schema": DRAFT, "title": "signgen sign file", **sign_file_schema()}
    (schema,), parts = msgspec.json.schema_components([FORMATS[name]], ref_template="#/$defs/{name}")
    whole = parts.pop(schema["$ref"].removeprefix("#/$defs/"))
    ordered: dict[str, Any] = _ordered({"$schema": DRAFT, **whole, "$defs": dict(sorted(parts.items()))})
    return ordered


def _ordered(schema: Any) -> Any:
    """The same with alternatives in an order of their own, null last, and descriptions on one line: in both versions of
    msgspec differ."""
    if isinstance(schema, list):
        return [_ordered(each) for each in schema]
    if not isinstance(schema, dict):
        return schema
    found = {name: _ordered(each) for name, each in schema.items()}
    if isinstance(found.get("anyOf"), list):
        found["anyOf"].sort(key=lambda each: (each.get("type") == "null", json.dumps(each, sort_keys=True)))
    if isinstance(found.get("description"), str):
        found["description"] = " ".join(found["description"].split())
    return found


def schema_text(name: str) -> str:
    """The schema as a file of the package has it."""
    return json.dumps(schema_of(name), indent=1, ensure_ascii=False) + "\n"


def schema_path(name: str) -> Path:
    """Where the file of a schema lies, in a wheel as in the repository."""
    return Path(__file__).parent / f"{name}.schema.json"
