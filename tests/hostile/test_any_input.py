"""Whatever is given, the answer is the work or a sentence: within seconds, within a gigabyte, never a traceback.

`SIGNGEN_FUZZ_SECONDS` says how long strange input is looked through (by seed, so that a find can be had again), and
`SIGNGEN_FUZZ_SEED` where to begin.
"""

from __future__ import annotations

import os
import random
import shutil
import time
from pathlib import Path

import pytest

from tests.hostile.making import ENTRIES, SIGN
from tests.hostile.running import run

SECONDS = float(os.environ.get("SIGNGEN_FUZZ_SECONDS", "120"))
FIRST = int(os.environ.get("SIGNGEN_FUZZ_SEED", "1"))

FILES = {
    "deep.toml": b"a=" + b"[" * 50_000,
    "long.toml": b"size = " + b"9" * 5000,
    "hex.toml": b"size = 0x" + b"f" * 5000,
    "dotted.toml": b".".join([b"a"] * 20_000) + b" = 1",
    "large.toml": b"a = 1\n" * 200_000,
    "many.toml": b"".join(b"[x%d]\n" % n for n in range(30_000)),
    "date.toml": b"size = 1979-13-99",
    "nobody.toml": b'text = "A"\nshop = "~nobody/x"\nfont = "~nobody/y.ttf"\nborder = "path:~nobody/z"',
    "tiny.toml": b'text = "A"\nsize = [1e-320, 100]\nthickness = 1e-320',
    "edge.svg": b'<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0' + b"L1 1 2 0" * 4900 + b'z"/></svg>',
    "groups.svg": b'<svg xmlns="http://www.w3.org/2000/svg">' + b"<g>" * 100_000,
    "moves.nc": b"G21 G90 G17\nM3 S9000\n" + b"G1 X1 Y1 F900\nX9\n" * 200_000 + b"M2\n",
    "circles.nc": b"G21 G90 G17\nM3 S9000\nG1 X0 Y0 Z9 F900\n" + b"G2 X0 Y0 I90 J0\n" * 60_000 + b"M2\n",
    "digits.nc": b"G21\nG1 X" + b"9" * 5000 + b" F1\nM2\n",
    "brackets.nc": b"G1 X" + b"[" * 50_000 + b"1" + b"]" * 50_000 + b"\nM2\n",
    "large.csv": b"name\n" + b'"' + b"x" * 9_000_000,
}
NOWHERE = ("x" * 300, "fifo", "/dev/zero", "/", "~nobody/x")
ON_BOARD = ("--stock", "200x150x12", "--tool", "end-mill 6")

COMMANDS = {
    **{name: ["make", "--from", name] for name in FILES if name.endswith(".toml")},
    **{name: ["make", "1", *SIGN, "--border", f"path:{name}"] for name in FILES if name.endswith(".svg")},
    **{name: ["check", name, *ON_BOARD] for name in FILES if name.endswith(".nc")},
    "large.csv": ["batch", "large.csv"],
    "cutter of 5 m": ["check", "digits.nc", "--stock", "200x150x12", "--tool", "end-mill 5000"],
    **{f"{name[:9]} as a font": ["make", "1", *SIGN, "--font", name] for name in ("x" * 300, "fifo", "/dev/zero", "/")},
    **{f"{name[:9]} as a shop": ["make", "1", *SIGN, "--shop", name] for name in ("x" * 300, "fifo", "/dev/zero", "/")},
    **{f"{name[:9]} as a sign": ["make", "--from", name] for name in NOWHERE},
    **{f"{name[:9]} as a list": ["batch", name] for name in NOWHERE},
    **{f"{name[:9]} as a program": ["check", name, *ON_BOARD] for name in NOWHERE if name != "/"},
    **{f"{name[:9]} as an edge": ["make", "1", *SIGN, "--border", f"path:{name}"] for name in ("x" * 300, "fifo", "/")},
}


@pytest.mark.parametrize("case", COMMANDS)
def test_what_cannot_be_meant_is_refused_in_a_sentence(tmp_path: Path, case: str) -> None:
    os.mkfifo(tmp_path / "fifo")
    if case in FILES:
        (tmp_path / case).write_bytes(FILES[case])
    else:
        (tmp_path / "digits.nc").write_bytes(FILES["digits.nc"])
    fate = run(COMMANDS[case], tmp_path)
    assert fate.problem() == ""
    assert fate.code != 0
    assert not (tmp_path / "out").exists()


@pytest.mark.sweep
def test_any_input_gives_the_work_or_a_sentence(tmp_path: Path) -> None:
    until = time.monotonic() + SECONDS
    seed, found = FIRST, []
    while time.monotonic() < until:
        rng = random.Random(seed)
        entry = ENTRIES[seed % len(ENTRIES)]
        folder = tmp_path / "it"
        folder.mkdir()
        arguments = entry(rng, folder)
        fate = run(arguments, folder)
        if fate.problem():
            found.append(f"seed {seed}, {entry.__name__}: {arguments}\n{fate.problem()}")
        shutil.rmtree(folder)
        seed += 1
    assert not found, "\n\n".join([f"{len(found)} of {seed - FIRST}", *found[:20]])
