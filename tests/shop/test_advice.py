"""What to change while it cuts."""

from __future__ import annotations

from signgen.shop.advice import advice_for, all_advice


def test_says_what_to_change_and_by_how_much_for_pitch_burning_and_chatter() -> None:
    by_name = {row.name: row.text for row in all_advice()}
    for name in ("pitch", "burn", "chatter"):
        assert "10 %" in by_name[name]
        assert "feed" in by_name[name].lower() or "speed" in by_name[name].lower()


def test_advice_for_one_kind_of_edge_is_for_those_alone() -> None:
    assert "up-cut" in {row.name for row in advice_for({"up-cut"})}
    assert "down-cut" not in {row.name for row in advice_for({"up-cut"})}
    assert {row.name for row in advice_for(set())} == {row.name for row in all_advice() if not row.edges}


def test_danger_is_the_last_word() -> None:
    assert "emergency stop" in advice_for({"up-cut", "down-cut"})[-1].text
