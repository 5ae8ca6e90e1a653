"""Whole jobs as they were accepted: an example's sign file and every text that it must give.

Pictures are left out (they are looked at, and their bytes depend on Pillow's version); of the setup sheet the words are
kept, for they are what is read.
"""

from __future__ import annotations

import html
import json
import re
from pathlib import Path

from signgen.pipeline import gather, make_job, read_sign

ROOT = Path(__file__).parents[2]
FOLDER = Path(__file__).parent
EXAMPLES = tuple(sorted(path.stem for path in (ROOT / "examples").glob("*.toml")))


def texts(example: str) -> dict[str, str]:
    """Name -> text of every file of an example that is compared."""
    job = make_job(read_sign(gather({}, ROOT / "examples" / f"{example}.toml")))
    kept = {name: content.decode() for name, content in job.files.items() if name.endswith((".nc", ".json", ".toml"))}
    report = {
        key: value for key, value in json.loads(kept["report.json"]).items() if key != "sha256"
    }  # of pictures too
    kept["report.json"] = json.dumps(report, indent=2, ensure_ascii=False) + "\n"
    return kept | {"setup.txt": words(job.files["setup.html"].decode())}


def words(page: str) -> str:
    """What a page says, a line for each piece of text."""
    body = re.sub(r"<(style|script|head)\b.*?</\1>", "", page, flags=re.DOTALL)
    pieces = (html.unescape(piece).strip() for piece in re.split(r"<[^>]*>", body))
    return "\n".join(" ".join(piece.split()) for piece in pieces if piece) + "\n"
