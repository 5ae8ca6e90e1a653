"""The only module that writes to disk: a folder comes to its new state as a whole, or not at all."""

from __future__ import annotations

import contextlib
import json
import os
import shutil
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from signgen.errors import AskError, SignGenError
from signgen.pipeline import REPORT

STAGE, ASIDE = ".signgen-stage-", "-old"
"""How names begin that wait beside their places, and end when an older state was set aside there."""


def write_folder(out: Path, files: Mapping[str, bytes]) -> None:
    """Bring the folder `out` to hold exactly `files` and whatever in it is not ours.

    Files that an earlier make wrote there are replaced or removed; anything else is left alone. Everything is first
    written beside its place, so a full disk or a refused permission leaves the old state. `files` must hold
    report.json, whose key `files` names all of them.

    Raises: AskError when the folder cannot be written, or when a file in it that is not ours stands in the way.
    """
    try:
        earlier = files_of_earlier_make(out)
        in_the_way = [name for name in files if name not in earlier and (out / name).exists()]
    except OSError as error:  # a name that is too long
        raise _unwritable(out, error) from None
    if in_the_way:
        raise AskError.at(
            "out",
            f"{out} already holds {', '.join(in_the_way)}, which signgen did not write there.",
            "Choose another folder, or move the file away.",
        )
    try:
        with _folders(out), _swap(out, files) as swap:
            swap.replace([name for name in files if name != REPORT])
            swap.remove([name for name in earlier if name not in files])
            swap.replace([REPORT])
    except OSError as error:
        raise _unwritable(out, error) from error


def _unwritable(out: Path, error: OSError) -> AskError:
    what = f"{out} cannot be written: {error.strerror or error}."
    return AskError.at("out", what, "Choose a folder that you may write to.")


def write_files(out: Path, files: Mapping[str, bytes], where: str) -> None:
    """Bring the named files into the folder `out`, in place of those of the same names; all of them or none.

    Raises: AskError, naming the option `where`, when the folder cannot be written.
    """
    try:
        with _folders(out), _swap(out, files) as swap:
            swap.replace(list(files))
    except OSError as error:
        raise AskError.at(
            where, f"{out} cannot be written: {error.strerror or error}.", "Choose a folder that you may write to."
        ) from error


def place_folder(out: Path, files: Mapping[str, bytes]) -> None:
    """The same as `write_folder`, by one renaming of a folder made beside `out`: a process that is ended in the middle
    leaves the old folder, or none, and something that `sweep` takes away. Where files that are not ours lie in the
    folder, it is `write_folder` that leaves them alone.

    Raises: AskError as `write_folder` does.
    """
    if out.exists() and (not out.is_dir() or {path.name for path in out.iterdir()} - set(files_of_earlier_make(out))):
        write_folder(out, files)
        return
    stage = out.with_name(f"{STAGE}{out.name}-{_unused()}")
    aside = stage.with_name(f"{stage.name}{ASIDE}")
    try:
        try:
            stage.mkdir(parents=True)
            for name, content in files.items():
                _write(stage / name, [content])
            if out.exists():
                out.replace(aside)
            stage.replace(out)
            _remove_tree(aside)
        except BaseException:
            _remove_tree(stage)
            raise
    except OSError as error:
        raise _refused(out, error) from error


def remove_folder(out: Path) -> None:
    """Take away what an earlier make wrote into a folder, and the folder when nothing else lies in it."""
    for name in files_of_earlier_make(out):
        (out / name).unlink(missing_ok=True)
    with contextlib.suppress(OSError):
        out.rmdir()


def sweep(out: Path) -> None:
    """Take away what `place_folder` and `write_file` left in a folder when they were ended; an old folder that was set
    aside for a new one that never came goes back to its place."""
    for left in sorted(out.glob(f"{STAGE}*")):
        place = out / left.name.removeprefix(STAGE).removesuffix(ASIDE)[:-9]
        if left.name.endswith(ASIDE) and not place.exists():
            left.replace(place)
        else:
            _remove_tree(left)


def write_file(path: Path, parts: Iterable[bytes]) -> None:
    """A whole file or none: written beside its place, part by part, and renamed. Raises: AskError."""
    stage = path.with_name(f"{STAGE}{path.name}-{_unused()}")
    try:
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            _write(stage, parts)
            stage.replace(path)
        except BaseException:
            stage.unlink(missing_ok=True)
            raise
    except OSError as error:
        raise _refused(path, error) from error


def _write(path: Path, parts: Iterable[bytes]) -> None:
    with path.open("wb") as stream:
        stream.writelines(parts)
        stream.flush()
        os.fsync(stream.fileno())


def _remove_tree(path: Path) -> None:
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path, ignore_errors=True)
    else:
        path.unlink(missing_ok=True)


def _refused(path: Path, error: OSError) -> SignGenError:
    what = f"{path} cannot be written: {error.strerror or error}."
    return AskError.at("out", what, "Choose a folder that you may write to, on a disk with room.")


def files_of_earlier_make(out: Path) -> tuple[str, ...]:
    """Names that the report in a folder lists as its own and that are there; () when there is no report of ours.

    A name that would lead out of the folder is never ours.
    """
    try:
        report = json.loads((out / REPORT).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return ()
    if not isinstance(report, dict) or report.get("format") != "signgen-report":
        return ()
    listed = report.get("files", [])
    names = [name for name in listed if isinstance(name, str)] if isinstance(listed, list) else []
    return tuple(name for name in names if name == Path(name).name and (out / name).is_file())


@contextlib.contextmanager
def _folders(out: Path) -> Iterator[None]:
    """Make the folder and those above it; on failure take away again those that were made."""
    missing = [folder for folder in (out, *out.parents) if not folder.exists()]
    try:
        out.mkdir(parents=True, exist_ok=True)
        yield
    except BaseException:
        for folder in missing:
            with contextlib.suppress(OSError):
                folder.rmdir()
        raise


class _Swap:
    """New files waiting beside their places, and old ones set aside until all is done."""

    def __init__(self, out: Path) -> None:
        self.out = out
        self.mark = f".signgen-{_unused()}"
        self.placed: list[str] = []
        self.aside: list[str] = []

    def waiting(self, name: str) -> Path:
        return self.out / f"{self.mark}-new-{name}"

    def kept(self, name: str) -> Path:
        return self.out / f"{self.mark}-old-{name}"

    def replace(self, names: list[str]) -> None:
        for name in names:
            if (self.out / name).exists():
                self.remove([name])
            self.waiting(name).replace(self.out / name)
            self.placed.append(name)

    def remove(self, names: list[str]) -> None:
        for name in names:
            (self.out / name).replace(self.kept(name))
            self.aside.append(name)

    def undo(self) -> None:
        for name in self.placed:
            (self.out / name).unlink(missing_ok=True)
        for name in self.aside:
            self.kept(name).replace(self.out / name)


def _unused() -> str:
    """Part of a name that nobody has given before. `secrets` has the same, and imports hashes and ciphers for it."""
    return os.urandom(4).hex()


@contextlib.contextmanager
def _swap(out: Path, files: Mapping[str, bytes]) -> Iterator[_Swap]:
    swap = _Swap(out)
    try:
        for name, content in files.items():
            with swap.waiting(name).open("wb") as stream:
                stream.write(content)
                stream.flush()
                os.fsync(stream.fileno())
        yield swap
    except BaseException:
        swap.undo()
        raise
    finally:
        for name in files:
            swap.waiting(name).unlink(missing_ok=True)
        for name in swap.aside:
            swap.kept(name).unlink(missing_ok=True)
