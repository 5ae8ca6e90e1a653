"""Formats keep their promise: a version gains keys, it loses and changes none."""

from __future__ import annotations

import json
from typing import get_type_hints

import pytest
from jsonschema import Draft202012Validator

from signgen.api.options import Options
from signgen.schemas.formats import ABOUT, NAMES, schema_of, schema_path, schema_text
from signgen.spec.keys import KEYS
from signgen.spec.keys.lettering import LINE
from tests.golden.keys import keys_now, lost, record_of

ANEW = "python -m tests.golden.accept writes them anew"


@pytest.mark.parametrize("name", NAMES)
def test_a_version_loses_no_key(name: str) -> None:
    assert lost(name) == [], "raise the format's version, or keep the key as it was"
    assert record_of(name).read_text(encoding="utf-8").splitlines() == keys_now(name), ANEW


@pytest.mark.parametrize("name", NAMES)
def test_the_packages_schemas_are_those_of_its_code(name: str) -> None:
    assert schema_path(name).read_text(encoding="utf-8") == schema_text(name), ANEW
    Draft202012Validator.check_schema(json.loads(schema_text(name)))


def test_a_lost_and_a_changed_key_are_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    real = schema_of("batch")
    other = json.loads(json.dumps(real))
    del other["properties"]["list"]
    other["$defs"]["BatchTotals"]["properties"]["minutes"] = {"type": "string"}
    monkeypatch.setattr("tests.golden.keys.schema_of", lambda name: other)
    assert lost("batch") == ["list string", "totals.minutes number"]


def test_every_schema_says_what_it_is_of() -> None:
    assert set(ABOUT) == set(NAMES)
    assert {path.name for path in schema_path("report").parent.glob("*.json")} == {
        schema_path(name).name for name in NAMES
    }


def test_options_from_python_are_the_keys_of_a_sign_file() -> None:
    known = {key.name.replace("-", "_") for key in KEYS if key.kind != "lines"} | {LINE.name}
    assert set(get_type_hints(Options)) == known, "name it in signgen/api/options.py"
