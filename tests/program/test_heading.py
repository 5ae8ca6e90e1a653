"""The comments at the top say everything, however much that is."""

from __future__ import annotations

from signgen.dialects.words import comment
from signgen.pipeline import prove
from signgen.program.heading import LINE_WIDTH, heading
from tests.asking import spec_of


def test_a_program_that_does_much_says_it_to_the_end() -> None:
    does = ("engraves the letters and the lines", "sinks 2 screw heads of 10.4 mm", "bevels the edge by 1.5 mm", "more")
    facts = prove(spec_of())
    lines = heading(
        lines=("Smithy",),
        number=1,
        count=3,
        description=does,
        tool=facts.programs[0].tool,
        drawing=facts.drawing,
        stock=facts.stock,
        material_label="Birch plywood",
        zero=facts.zero,
    ).lines
    assert all(len(line) <= LINE_WIDTH for line in lines)
    assert ", ".join(does) in " ".join(lines)
    # nor does the writer take anything off
    assert [comment(line) for line in lines] == [f"({line})" for line in lines]
