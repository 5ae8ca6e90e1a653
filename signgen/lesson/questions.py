"""What a pupil is asked, and the answer that only the teacher's file has."""

from __future__ import annotations

from msgspec import Struct, field

from signgen.messages import Message, Num, Sentence
from signgen.messages.wording import Value
from signgen.numbers import rounded


class Question(Struct, frozen=True, kw_only=True):
    """`kind` is the row of the tables (`ask.kind`), `values` what its words name. `value` with `tolerance`, in `unit`
    ("mm", "", "rpm" ...); from `line` of `file`. `about` tells apart questions of one kind."""

    kind: str
    value: float
    tolerance: float
    unit: str
    file: str
    line: int
    about: str = ""
    places: int = 3
    values: dict[str, Value] = field(default_factory=dict)

    @property
    def ask(self) -> Message:
        return Message(f"ask.{self.kind}", **self.values)

    @property
    def unit_said(self) -> Sentence:
        return Message("answer.rpm") if self.unit == "rpm" else self.unit

    @property
    def answer(self) -> Message:
        """'12.5 mm ± 0.1'."""
        shown = Num(rounded(self.value, self.places), self.places, True)
        return Message(
            "answer.exact" if self.tolerance == 0 else "answer.about",
            value=shown,
            unit=Message("answer.unit", unit=self.unit_said) if self.unit else "",
            tolerance=Num(self.tolerance, 3, True),
        )

    @property
    def source(self) -> Message:
        return Message("answer.line", file=self.file, line=self.line)
