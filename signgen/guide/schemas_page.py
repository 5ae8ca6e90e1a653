"""What `signgen explain schema` says: which formats there are, and how an editor takes up the sign file's."""

from __future__ import annotations

from collections.abc import Iterator

from signgen.option import pick
from signgen.schemas.formats import ABOUT, NAMES, SIGN_FILE, schema_text


def schemas_page() -> Iterator[str]:
    """Line by line, none wider than 79 characters."""
    yield "JSON Schemas (draft 2020-12) of what signgen writes for other programs:"
    yield ""
    yield from (f"    {name:<10} {ABOUT[name]}" for name in NAMES)
    yield ""
    yield "signgen explain schema report prints that of reports, and so on."
    yield "Everything but a sign file says its format and version. A version may gain"
    yield "keys, and loses none. From Python, msgspec.json.decode(text, type=Report) with"
    yield "signgen.schemas.report.Report reads a report into typed values."
    yield ""
    yield "Editors complete and check sign files by the schema: write it beside them,"
    yield ""
    yield f"    signgen explain schema {SIGN_FILE} > sign.schema.json"
    yield ""
    yield "and let the first line of the file be"
    yield ""
    yield "    #:schema ./sign.schema.json"


def schema_named(name: str) -> str:
    """A schema as text. Raises: AskError that offers the formats."""
    return schema_text(pick(name, NAMES, "schema"))
