"""Two thousand random changes to ten good jobs: each is caught, or the sign comes out the same all the same."""

from __future__ import annotations

import pytest

from tests.checks.mutants import JOBS, caught_by, harm, judged_mutant, mutant

BATCHES, EACH = 5, 40
FEW = 5


def survivors(job: int, seeds: range) -> list[tuple[int, list[str], str]]:
    """(seed, harm, what was done) of those that pass and should not."""
    found = []
    for seed in seeds:
        what, texts = mutant(job, seed)
        judged = judged_mutant(job, texts)
        if not caught_by(judged.report) and (wrong := harm(job, judged)):
            found.append((seed, wrong, what))
    return found


@pytest.mark.sweep
@pytest.mark.parametrize("batch", range(BATCHES))
@pytest.mark.parametrize("job", range(len(JOBS)), ids=[name for name, _ in JOBS])
def test_no_harmful_mutant_passes(job: int, batch: int) -> None:
    assert survivors(job, range(batch * EACH, (batch + 1) * EACH)) == []


def test_a_few_of_them_every_day() -> None:
    assert survivors(6, range(1000, 1000 + FEW)) == []


def test_harm_is_seen_where_it_is() -> None:
    what, texts = mutant(6, 0)
    lines = texts[0].splitlines()
    deep = [n for n, line in enumerate(lines) if line.startswith("G1 X")][-3]
    spoilt = ("\n".join([*lines[:deep], "G4 P100", "M0", *lines[deep:]]) + "\n",)
    assert harm(6, judged_mutant(6, spoilt)), what
