"""One thing that can be asked for, by an option on the command line and by the same word in a sign file.

Borders and hole patterns declare their own options with this type; `spec/keys/` gathers all of them into
the one table from which the command line is built, sign files and lists are read, and sign files are written. Importing
it is cheap.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from operator import attrgetter
from typing import Any, ClassVar, Literal, Protocol, TypeVar

from msgspec import Struct

from signgen.errors import AskError
from signgen.messages import Message, Sentence
from signgen.units import GREATEST_COUNT, POSITIVE, Limits, angle_deg, count, length_mm, number, size_mm

Kind = Literal[
    "length", "size", "angle", "number", "count", "choice", "word", "path", "font", "border", "lines", "flag", "tables",
    "pictures",
]  # fmt: skip

Value = float | int | str | tuple[float, float] | tuple[str, ...] | tuple[Mapping[str, object], ...]
"""What an option is read into: millimetres, degrees, a ratio, a count, a word, a size, lines of text, whether it is
wanted (a bool, which is an int), or tables with keys of their own."""

_SAYS = {"true": True, "yes": True, "on": True, "1": True, "false": False, "no": False, "off": False, "0": False}

_LONGEST_LINE = 200
_MOST_LINES = 40


class Option(Struct, frozen=True, kw_only=True):
    """A word to type, what may follow it and what it means.

    `default` is written as a user would write it and goes through the same reader; where the default depends
    on other things it is None and `otherwise` says in words what happens ('as large as fits'); '' when the option
    is required or its default says all. `choices` belong to the kind 'choice' alone, `table` to 'pictures': the keys of
    a table, of which a bare text is the first.

    `field` names the field of the spec that takes the value as it is read; '' when others make something of it, or
    when the spec keeps it by its name (`SignSpec.more`). `write` gives it back from a finished spec (a line's options
    from a LineSpec), as a sign file would ask for it, None for what is left open; without `write` it is the field.
    `left_open` says so in a comment of the resolved sign file; '' when nothing need be said.

    `needs` is the option without which nothing reads this one; `replaces` are keys of a sign file that fall away when
    this one is given on top of it, on the command line or by a cell.

    `words` are what people call it who do not know its name; `example` is a value to type; `often`: most signs want it,
    so that it stands in the short help.
    """

    name: str
    kind: Kind
    metavar: str
    help: str
    group: str
    default: str | int | float | None = None
    otherwise: str = ""
    required: bool = False
    limits: Limits | None = None
    choices: tuple[str, ...] = ()
    table: tuple[Option, ...] = ()
    field: str = ""
    write: Callable[[Any], object] | None = None
    left_open: str = ""
    needs: str = ""
    replaces: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    example: str = ""
    often: bool = False

    @property
    def is_kept_by_name(self) -> bool:
        """Whether the spec keeps the value by its name, since the row says neither where else nor how it is written."""
        return not self.field and self.write is None

    @property
    def full_help(self) -> str:
        """The help with its default."""
        if self.required:
            return f"{self.help} Required."
        default = self.otherwise or (f"{self.default}" if self.default is not None else "")
        return f"{self.help} Default: {default}." if default else self.help


def written(options: Iterable[Option], spec: object) -> dict[str, object]:
    """What would have to be asked for to get this spec, of those options that are not left open."""
    found: dict[str, object] = {}
    for option in options:
        write = option.write or (attrgetter(option.field) if option.field else None)
        if write is not None and (value := write(spec)) is not None:
            found[option.name] = list(value) if isinstance(value, tuple) else value
    return found


def read_option(option: Option, raw: object) -> Value:
    """The value of an option from what was typed or stood in the file.

    Raises: AskError with one problem, whose `where` is the option's name.
    """
    match option.kind:
        case "length":
            return length_mm(raw, option.name, option.limits or POSITIVE)
        case "size":
            return size_mm(raw, option.name, option.limits or POSITIVE)
        case "angle":
            return angle_deg(raw, option.name, option.limits or Limits(least=-360, greatest=360))
        case "number":
            return number(raw, option.name, option.limits or Limits(least=0, greatest=1e6))
        case "count":
            return count(raw, option.name, option.limits or Limits(least=0, greatest=GREATEST_COUNT))
        case "choice":
            return pick(word(raw, option.name), option.choices, option.name)
        case "lines":
            return lines(raw, option.name)
        case "flag":
            return flag(raw, option.name)
        case "tables":
            return tables(raw, option.name)
        case "pictures":
            return tables(
                [{option.table[0].name: word(raw, option.name)}] if isinstance(raw, str) else raw, option.name
            )
        case _:
            return word(raw, option.name)


def flag(raw: object, where: str) -> bool:
    """Whether something is wanted: true or false, or a text that says so."""
    if isinstance(raw, bool):
        return raw
    if isinstance(raw, str) and raw.strip().casefold() in _SAYS:
        return _SAYS[raw.strip().casefold()]
    raise AskError.at(where, Message("option.neither_yes_nor_no", text=repr(raw)), Message("option.write_true_false"))


def word(raw: object, where: str) -> str:
    """A text of one line, trimmed, not empty. A whole number is taken for its digits, as in `font = 17`."""
    if isinstance(raw, int) and not isinstance(raw, bool):
        return str(raw)
    if not isinstance(raw, str):
        raise AskError.at(where, Message("option.not_text", text=repr(raw)), Message("option.put_quotes"))
    text = raw.strip()
    if not text:
        raise AskError.at(where, Message("option.nothing_stands_here"), Message("option.give_value_leave_option_out"))
    if any(ord(c) < 32 or 0x7F <= ord(c) < 0xA0 or 0xD800 <= ord(c) < 0xE000 for c in text):
        raise AskError.at(
            where, Message("option.holds_control_character", text=repr(text)), Message("option.write_without_tabs")
        )
    return text


def lines(raw: object, where: str) -> tuple[str, ...]:
    """Lines of lettering from a text (which may hold line breaks) or a list; each trimmed, none empty."""
    advice = Message("option.give_each_line_lettering_own")
    parts = [raw] if isinstance(raw, str) else raw
    if not isinstance(parts, list | tuple):
        raise AskError.at(where, Message("option.not_text", text=repr(raw)), advice)
    found: list[str] = []
    for part in parts:
        if not isinstance(part, str):
            raise AskError.at(
                where, Message("option.not_text", text=repr(part)), Message("option.put_every_line_quotes")
            )
        found += part.splitlines() or [""]
    if not any(line.strip() for line in found):
        raise AskError.at(where, Message("option.there_no_text"), advice)
    if len(found) > _MOST_LINES:
        raise AskError.at(
            where,
            Message("option.lines_too_many", count=len(found)),
            Message("option.use_most", most=_MOST_LINES),
        )
    for n, line in enumerate(found, 1):
        if not line.strip():
            raise AskError.at(where, Message("option.line_empty", n=n), Message("option.leave_out_line_spacing_sets"))
        if len(line) > _LONGEST_LINE:
            raise AskError.at(
                where,
                Message("option.line_characters", n=n, count=len(line)),
                Message("option.use_this_many_at_most", most=_LONGEST_LINE),
            )
    return tuple(word(line, where) for line in found)


def tables(raw: object, where: str) -> tuple[Mapping[str, object], ...]:
    """The tables of a sign file that stand under one name; what is in them is for others to read."""
    if not isinstance(raw, list | tuple) or not raw or not all(isinstance(each, Mapping) for each in raw):
        raise AskError.at(where, Message("option.no_table_keys"), Message("option.write_keys_below", where=where))
    if len(raw) > _MOST_LINES:
        raise AskError.at(
            where, Message("option.tables_too_many", count=len(raw)), Message("option.use_most", most=_MOST_LINES)
        )
    return tuple(raw)


def pick(name: str, choices: Iterable[str], where: str, noun: str = "") -> str:
    """The choice that a name means, whatever its case.

    Raises: AskError that offers close matches, or all choices when none is close.
    """
    names = list(choices)
    for choice in names:
        if choice.casefold() == name.casefold():
            return choice
    raise AskError.at(where, Message("option.there_no", kind=noun or where, name=name), did_you_mean(name, names))


class Named(Protocol):
    """A member of an open family that is asked for as NAME, or as NAME:ARGUMENT."""

    name: ClassVar[str]
    argument: ClassVar[str]
    """What stands behind the colon, for people; '' when nothing does."""


_Member = TypeVar("_Member", bound=Named)


def named(asked: str, family: Sequence[type[_Member]], where: str, noun: str = "") -> tuple[type[_Member], str]:
    """The member of a family that 'NAME' or 'NAME:ARGUMENT' means, and the argument.

    Raises: AskError that offers close matches, or when there is an argument too many or too few.
    """
    typed, colon, argument = asked.partition(":")
    name = pick(typed.strip(), (member.name for member in family), where, noun)
    member = next(each for each in family if each.name == name)
    if member.argument and not argument.strip():
        what, remedy = (
            Message("named.too_little", name=name),
            Message("named.write", name=name, argument=member.argument),
        )
        raise AskError.at(where, what, remedy)
    if colon and not member.argument:
        raise AskError.at(where, Message("named.too_much", asked=asked), Message("named.write_alone", name=name))
    return member, argument.strip()


def did_you_mean(name: str, names: Iterable[str]) -> Sentence:
    """A sentence that offers the names close to a misspelt one, or all of them when none is close."""
    known = list(names)
    if close := close_to(name, known):
        return Message("option.did_you_mean", close=close)
    return Message("option.choose_from", known=tuple(known)) if known else ""


def close_to(name: str, names: Iterable[str]) -> tuple[str, ...]:
    """Names that a misspelt one may be, three at most."""
    from difflib import get_close_matches  # only when something is wrong anyway

    by_folded = {each.casefold(): each for each in names}
    return tuple(by_folded[each] for each in get_close_matches(name.casefold(), by_folded, n=3, cutoff=0.6))
