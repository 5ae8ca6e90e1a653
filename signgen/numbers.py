"""How the sheet, the drawings and the summary write figures: short, never '-0', the same everywhere."""

from __future__ import annotations


def rounded(value: float, places: int) -> float:
    """`value` rounded, with 0.0 for what rounds to minus nothing.

    >>> rounded(-0.00001, 3)
    0.0
    """
    return round(float(value), places) + 0.0


def figure(value: float, places: int = 1) -> str:
    """The figure without needless zeros.

    >>> figure(12.0), figure(12.54), figure(-0.01), figure(0.35, 2), figure(1500.0, 0)
    ('12', '12.5', '0', '0.35', '1500')
    """
    text = f"{rounded(value, places):.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def time_parts(minutes: float) -> tuple[int, int, int]:
    """(hours, minutes, seconds) to plan by, rounded up to 10 s below ten minutes and to whole minutes above.

    >>> time_parts(0.1), time_parts(3.2), time_parts(3.0), time_parts(12.4), time_parts(75.0)
    ((0, 0, 10), (0, 3, 20), (0, 3, 0), (0, 13, 0), (1, 15, 0))
    """
    tens = max(int(-(-round(minutes * 60, 3) // 10)) * 10, 10)
    if tens < 600:
        return 0, tens // 60, tens % 60
    whole = int(-(-round(minutes, 4) // 1))
    return whole // 60, whole % 60, 0


def span(minutes: float) -> str:
    """A time to plan by, in English.

    >>> span(0.1), span(3.2), span(3.0), span(12.4), span(75.0)
    ('10 s', '3 min 20 s', '3 min', '13 min', '1 h 15 min')
    """
    parts = zip(time_parts(minutes), ("h", "min", "s"), strict=True)
    return " ".join(f"{value} {unit}" for value, unit in parts if value)
