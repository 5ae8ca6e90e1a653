"""What a row asks for: its columns and the sign file (with the options of the command line) together.

A column that is called like a key of the sign file gives that key; an empty cell leaves it to the sign file. Any other
column must be used as `{column}` in a text of the sign file. `{row}` is the row's number, `{serial}` counts the list's
rows from 1 and `{serial:03}` writes three digits; columns of these names go before. `{{` and `}}` stand for braces. A
line of lettering whose columns are all empty is left out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from signgen.batching.names import wrong_names
from signgen.batching.records import Record
from signgen.batching.table import Table
from signgen.errors import AskError, Problem
from signgen.messages import Message
from signgen.option import did_you_mean, read_option
from signgen.spec import keys as sign_keys
from signgen.spec.keys import KEY_BY_NAME, OUT
from signgen.spec.keys.lettering import LINE
from signgen.spec.merge import merged
from signgen.spec.paths import seen_from
from signgen.spec.placeholders import COUNTED, PLACE, column_key, counted, filled_of, texts
from signgen.spec.safe_name import safe_name
from signgen.units import Limits, count

COPIES = "copies"
"""A column of its own: how many times to cut the row's sign."""

MOST_COPIES = Limits(least=1, greatest=10_000)

MOST_COLUMN_PROBLEMS = 12
"""Unknown columns named one by one; a table of a thousand would hide everything else."""


class Task(Struct, frozen=True, kw_only=True):
    """One row's sign: what to ask for, and the name of its folder below the batch's own, safe on every system and
    unlike any other row's, since it starts with the row's number."""

    row: int
    folder: str
    asked: Mapping[str, object]
    copies: int


class Recipe(Struct, frozen=True, kw_only=True):
    """`base` are the keys that stand for every row, placeholders in them; `keys` the column of each key that has one,
    `places` the column of each placeholder. `folder`: where paths in cells are seen from."""

    base: Mapping[str, object]
    keys: Mapping[str, int]
    places: Mapping[str, int]
    copies: int
    copies_column: int | None
    folder: Path

    def for_sheets(self) -> Recipe:
        """The recipe for signs that share sheets: X0 Y0 at the board's corner unless the origin was asked for."""
        return replace(self, base={"origin": "stock", **self.base})

    def task(self, record: Record) -> Task:
        """What a row asks for. Raises: AskError when the row cannot be read; whether what it asks for makes sense is
        for `read_spec` to say."""
        if record.problem:
            raise AskError(record.problem)
        cells = record.cells

        def place(name: str) -> str:
            at = self.places.get(column_key(name))
            return cells[at].strip() if at is not None else counted(name, record.row)

        filled = ((key, value, filled_of(key, value, place)) for key, value in self.base.items())
        base = {key: value for key, before, value in filled if value == before or value != ""}
        own = {key: self._cell(key, cells[at].strip()) for key, at in self.keys.items() if cells[at].strip()}
        asked = merged(base, own)
        name = asked.pop("out", None) if "out" in own else None
        asked.pop("out", None)
        return Task(
            row=record.row,
            folder=f"{record.row:04}-{safe_name(str(name) if name else first_line(_words(asked)))}",
            asked=asked,
            copies=self._copies(cells),
        )

    def _cell(self, key: str, cell: str) -> str:
        """The folder's name in a cell is seen from the batch's own folder."""
        return cell if key == OUT.name else seen_from(self.folder, KEY_BY_NAME[key], cell)

    def _copies(self, cells: tuple[str, ...]) -> int:
        cell = "" if self.copies_column is None else cells[self.copies_column].strip()
        return count(cell, COPIES, MOST_COPIES) if cell else self.copies


def make_recipe(table: Table, base: Mapping[str, object], *, copies: int = 1, ignore_columns: bool = False) -> Recipe:
    """How the table's rows become signs; `base`: the sign file with the command line's options on top.

    Raises: AskError with everything that is wrong whatever the rows hold: columns that mean nothing, placeholders
    without a column, keys that are missing, unknown or wrong in themselves, names of faces, borders, materials and the
    like that there are not. ShopError when the shop's data is wrong.
    """
    columns = {column_key(name): number for number, name in enumerate(table.columns)}
    places, problems = _places(base, columns)
    unknown = [
        name
        for name in table.columns
        if not _is_cell_key(column_key(name)) and column_key(name) != COPIES and column_key(name) not in places
    ]
    if unknown and not ignore_columns:
        problems += _unknown_columns(unknown)
    keys = {key: column for key, column in columns.items() if _is_cell_key(key)}
    problems += _wrong_keys(base, keys)
    problems += wrong_names(_fixed(base, keys))
    if problems:
        raise AskError(problems)
    return Recipe(
        base={key: value for key, value in base.items() if key != "out"},
        keys=keys,
        places={place: columns[place] for place in places},
        copies=copies,
        copies_column=columns.get(COPIES),
        folder=table.path.absolute().parent,
    )


def _is_cell_key(name: str) -> bool:
    """Whether a cell can give this key: no cell holds tables."""
    return name in KEY_BY_NAME and name != LINE.name


def first_line(text: object) -> str:
    """The first line of lettering that holds something, of a text or a list of them; '' when there is none."""
    parts = text if isinstance(text, list | tuple) else [text]
    return next((line.strip() for part in parts for line in str(part or "").splitlines() if line.strip()), "")


def _words(asked: Mapping[str, object]) -> object:
    """The lines of lettering, be they in one list or in tables of their own."""
    tables = asked.get(LINE.name)
    if not isinstance(tables, list):
        return asked.get("text")
    return [table.get("text") for table in tables if isinstance(table, Mapping)]


def _places(base: Mapping[str, object], columns: Mapping[str, int]) -> tuple[set[str], list[Problem]]:
    """Columns used as placeholders in the base, and what is wrong with placeholders."""
    places: set[str] = set()
    problems = []
    for key, value in base.items():
        for match in (match for text in texts(value) for match in PLACE.finditer(text)):
            if match[0] in ("{{", "}}"):
                continue
            name = column_key(match[1] or "")
            if match[1] is None:
                problems.append(
                    Problem(
                        where=key, what=Message("batching.lone", brace=match[0]), remedy=Message("batching.write_brace")
                    )
                )
            elif name in columns:
                places.add(name)
            elif COUNTED.fullmatch(match[1].casefold()):
                continue
            else:
                close = did_you_mean(name, list(columns)[:MOST_COLUMN_PROBLEMS])
                remedy = Message("batching.braces_cut_are", close=close)
                what = Message("batching.list_has_no_column", column=match[1].strip(), place=match[0])
                problems.append(Problem(where=key, what=what, remedy=remedy))
    return places, problems


def _unknown_columns(names: list[str]) -> Iterator[Problem]:
    for name in names[:MOST_COLUMN_PROBLEMS]:
        close = did_you_mean(column_key(name), [*KEY_BY_NAME, COPIES])
        hint = close if isinstance(close, Message) and close.key == "option.did_you_mean" else ""
        use = Message("batching.use_in_text_sign_file", name=name)
        yield Problem(
            where=name,
            what=Message("batching.column_no_key_sign_file"),
            remedy=Message("batching.hint_and_use", hint=hint, use=use) if hint else use,
        )
    if len(names) > MOST_COLUMN_PROBLEMS:
        more = len(names) - MOST_COLUMN_PROBLEMS
        yield Problem(
            where="columns",
            what=Message("batching.more_columns_are_unknown", more=more),
            remedy=Message("batching.give_ignore_columns"),
        )


def _fixed(base: Mapping[str, object], columns: Mapping[str, int]) -> dict[str, object]:
    """The keys of the base that are the same for every row; a shop that is not is None."""
    fixed: dict[str, object] = {
        key: value
        for key, value in base.items()
        if key not in columns and not any(PLACE.search(text) for text in texts(value))
    }
    if "shop" not in fixed and ("shop" in base or "shop" in columns):
        fixed["shop"] = None
    return fixed


def _wrong_keys(base: Mapping[str, object], columns: Mapping[str, int]) -> Iterator[Problem]:
    """What is wrong with the base in every row alike."""
    for key in sign_keys.KEYS:
        said = key.name in base or key.name in columns or (key.name == "text" and LINE.name in base)
        if key.required and not said:
            remedy = Message("batching.give_list_column_say_in", key=key.name)
            yield Problem(where=key.name, what=Message("batching.missing"), remedy=remedy)
    for name, value in base.items():
        option = KEY_BY_NAME.get(name)
        if option is None:
            yield Problem(
                where=name, what=Message("batching.there_no_such_key"), remedy=did_you_mean(name, KEY_BY_NAME)
            )
        elif not any(PLACE.search(text) for text in texts(value)):
            try:
                read_option(option, value)
            except AskError as error:
                yield from error.problems
