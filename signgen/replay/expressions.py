"""Values of words: numbers, parameters (`#3`) and expressions (`[1 + 2]`, `sin[30]`).

Source: NIST IR 6556, sections 3.3.2.1 to 3.3.2.4. Text comes in upper
case and without white space. Angles are in degrees, both ways.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from signgen.messages import Message, Sentence
from signgen.replay.refusal import RefusedError

NUMBER = re.compile(r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)")
GREATEST_VALUE = 1e9
"""A million metres: no machine's number is greater, and its square is still far from the end of floating
point."""
LAST_PARAMETER = 5399
DEEPEST_NESTING = 60
"""Brackets within brackets; more would only serve to exhaust the reader."""
INTEGER_SLACK = 1e-4
"""How far a value may lie from the integer that it stands for (NIST IR 6556, 3.3.2)."""


class Parameters:
    """The numbered parameters, as far as the program sets them.

    `unset` collects the indices that were read before the program set them: those hold whatever the machine
    has stored, and count as 0.
    """

    __slots__ = ("unset", "values")

    def __init__(self) -> None:
        self.values: dict[int, float] = {}
        self.unset: set[int] = set()

    def read(self, index: int) -> float:
        if index not in self.values:
            self.unset.add(index)
        return self.values.get(index, 0.0)


_PARAMETER = Message("reader.parameter_s_number")


def integer(value: float, words: str, what: Sentence) -> int:
    """The whole number that `value` stands for. Raises: RefusedError when it is further than 0.0001 from one."""
    nearest = round(value)
    if abs(value - nearest) > INTEGER_SLACK:
        raise RefusedError(words, Message("reader.must_whole_number", what=what))
    return nearest


def parameter_index(value: float, words: str) -> int:
    """A parameter's number, 1 to 5399."""
    index = integer(value, words, _PARAMETER)
    if not 1 <= index <= LAST_PARAMETER:
        raise RefusedError(words, Message("reader.parameters_are_numbered_from_1", last_parameter=LAST_PARAMETER))
    return index


def real_value(text: str, at: int, parameters: Parameters, depth: int = 0) -> tuple[float, int]:
    """(value, where the rest of the text begins) of a number, a parameter, an expression or a function of
    one.

    Raises: RefusedError for anything else, and for values that are not finite or beyond a thousand million.
    """
    number = NUMBER.match(text, at)
    if number:
        value, rest = float(number.group()), number.end()
    elif depth > DEEPEST_NESTING:
        raise RefusedError(
            text[max(0, at - 1) :], Message("reader.brackets_are_nested_more_than", deepest_nesting=DEEPEST_NESTING)
        )
    elif text.startswith("#", at):
        index, rest = real_value(text, at + 1, parameters, depth + 1)
        value = parameters.read(parameter_index(index, text[at:rest]))
    elif text.startswith("[", at):
        value, rest = _expression(text, at, parameters, depth)
    else:
        value, rest = _function(text, at, parameters, depth)
    if not abs(value) <= GREATEST_VALUE:
        raise RefusedError(text[max(0, at - 1) : rest], Message("reader.number_larger_than_any_machine"))
    return value, rest


def _expression(text: str, at: int, parameters: Parameters, depth: int) -> tuple[float, int]:
    """Value of `[a op b op ...]`: three levels of precedence, each from left to right."""
    start = at
    value, at = real_value(text, at + 1, parameters, depth + 1)
    values, operators = [value], []
    while not text.startswith("]", at):
        operator = _OPERATOR.match(text, at)
        if not operator:
            raise RefusedError(text[start:], Message("reader.expression_needs_operator_closing_bracket"))
        value, at = real_value(text, operator.end(), parameters, depth + 1)
        operators.append(operator.group())
        values.append(value)
    for level in _LEVELS:
        i = 0
        while i < len(operators):
            if operators[i] in level:
                values[i : i + 2] = [_safely(level[operators.pop(i)], text[start : at + 1], *values[i : i + 2])]
            else:
                i += 1
    return values[0], at + 1


def _function(text: str, at: int, parameters: Parameters, depth: int) -> tuple[float, int]:
    """Value of `sin[30]` and its like, and of `atan[1]/[2]`."""
    name = _FUNCTION.match(text, at)
    if not name:
        raise RefusedError(text[max(0, at - 1) : at + 8], Message("reader.number_missing_cannot_read_here"))
    value, rest = _expression(text, name.end() - 1, parameters, depth)
    if name.group(1) == "ATAN":
        if not text.startswith("/[", rest):
            raise RefusedError(text[at:], Message("reader.atan_needs_two_values_atan"))
        other, rest = _expression(text, rest + 1, parameters, depth)
        return math.degrees(math.atan2(value, other)), rest
    return _safely(_FUNCTIONS[name.group(1)], text[at:rest], value), rest


def _safely(function: Callable[..., float], words: str, *values: float) -> float:
    try:
        result = function(*values)
    except (ValueError, ZeroDivisionError, OverflowError):
        raise RefusedError(words, Message("reader.expression_has_no_value")) from None
    if not abs(result) < math.inf:
        raise RefusedError(words, Message("reader.expression_has_no_value"))
    return float(result)


_FUNCTIONS: dict[str, Callable[[float], float]] = {
    "ABS": abs,
    "ACOS": lambda v: math.degrees(math.acos(v)),
    "ASIN": lambda v: math.degrees(math.asin(v)),
    "COS": lambda v: math.cos(math.radians(v)),
    "EXP": math.exp,
    "FIX": math.floor,
    "FUP": math.ceil,
    "LN": math.log,
    "ROUND": lambda v: math.floor(v + 0.5) if v >= 0 else math.ceil(v - 0.5),
    "SIN": lambda v: math.sin(math.radians(v)),
    "SQRT": math.sqrt,
    "TAN": lambda v: math.tan(math.radians(v)),
}
_LEVELS: tuple[dict[str, Callable[[float, float], float]], ...] = (
    {"**": math.pow},
    {"*": lambda a, b: a * b, "/": lambda a, b: a / b, "MOD": lambda a, b: a % b},
    {
        "+": lambda a, b: a + b,
        "-": lambda a, b: a - b,
        "OR": lambda a, b: float(bool(a) or bool(b)),
        "XOR": lambda a, b: float(bool(a) != bool(b)),
        "AND": lambda a, b: float(bool(a) and bool(b)),
    },
)
_OPERATOR = re.compile(r"\*\*|\*|/|MOD|\+|-|OR|XOR|AND")
_FUNCTION = re.compile(rf"({'|'.join((*_FUNCTIONS, 'ATAN'))})\[")
