"""`python -m tests.golden.accept`: write the golden files, the schemas and the record of their keys anew, to
be read in review like code."""

from __future__ import annotations

import shutil

from tests.golden import keys
from tests.golden.golden import EXAMPLES, FOLDER, texts


def main() -> None:
    keys.accept()
    for example in EXAMPLES:
        folder = FOLDER / example
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir()
        for name, text in texts(example).items():
            (folder / name).write_text(text, encoding="utf-8")
        print(f"{folder.relative_to(FOLDER.parents[1])}: accepted")


if __name__ == "__main__":
    main()
