"""Files that somebody at the page hands over: each keeps a name and a content of its own."""

from __future__ import annotations

from pathlib import Path

from signgen.batching.pool import PoolLimits
from signgen.web.desk import Desk
from signgen.web.person import Person
from signgen.web.work import Answer, Request


def nothing(_: Request) -> Answer:
    return {"ok": True}


def test_a_name_is_never_given_twice_though_others_were_let_go(tmp_path: Path) -> None:
    with Desk(nothing, 1, PoolLimits(time_s=5, memory_mb=500)) as desk:
        person = Person(tmp_path, desk)
        names = [person.take("font", "Gate.ttf", content) for content in (b"a", b"b", b"c")]
        assert names == ["Gate.ttf", "Gate-2.ttf", "Gate-3.ttf"]
        person.forget("Gate-2.ttf")
        names[1] = person.take("font", "Gate.ttf", b"d")
        assert [Path(person.own[name]).read_bytes() for name in names] == [b"a", b"d", b"c"]
