"""Which keys each version of a format has, on record: a version only gains keys."""

from __future__ import annotations

from pathlib import Path

from signgen.schemas.formats import FORMATS, NAMES, SIGN_FILE, schema_of, schema_path, schema_text
from signgen.schemas.keys import keys_of

FOLDER = Path(__file__).parent / "keys"


def version_of(name: str) -> int:
    """The version that a format says it has; of sign files there is one."""
    if name == SIGN_FILE:
        return 1
    (version,) = schema_of(name)["properties"]["version"]["enum"]
    assert isinstance(version, int)
    return version


def record_of(name: str) -> Path:
    return FOLDER / f"{name}-{version_of(name)}.txt"


def keys_now(name: str) -> list[str]:
    """Sign files name no shop's words here: a further material changes no format."""
    lines = [key.line for key in keys_of(schema_of(name))]
    return sorted({line.split()[0] for line in lines}) if name not in FORMATS else lines


def lost(name: str) -> list[str]:
    """What the record of this version has and the format no more: a key that is gone, or means another thing."""
    path = record_of(name)
    if not path.exists():
        return []
    now = set(keys_now(name))
    return [line for line in path.read_text(encoding="utf-8").splitlines() if line not in now]


def accept() -> None:
    """Write the schemas of the package and the records anew. Raises: SystemExit where a version lost a key."""
    FOLDER.mkdir(exist_ok=True)
    for name in NAMES:
        if gone := lost(name):
            raise SystemExit(f"{name}: raise its version, for these keys are gone or changed: {', '.join(gone)}")
        schema_path(name).write_text(schema_text(name), encoding="utf-8")
        record_of(name).write_text("\n".join(keys_now(name)) + "\n", encoding="utf-8")
