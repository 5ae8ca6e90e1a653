"""Two folders that change places in one step, where the system can do that.

Source: Linux manual, renameat2(2), RENAME_EXCHANGE; macOS manual, renamex_np(2), RENAME_SWAP. Numbers from the systems'
headers, from memory: AT_FDCWD -100, RENAME_EXCHANGE 1 << 1, RENAME_SWAP 2.
"""

from __future__ import annotations

import os
import stat
import sys
from pathlib import Path

_HERE, _EXCHANGE, _SWAP = -100, 2, 2


def exchanged(one: Path, other: Path) -> bool:
    """Whether two folders changed places; False, and nothing happened, where this system or disk has no such step."""
    if sys.platform not in ("linux", "darwin"):
        return False
    import ctypes

    first, second = os.fsencode(one), os.fsencode(other)
    try:
        library = ctypes.CDLL(None, use_errno=True)
        if sys.platform == "linux":
            return int(library.renameat2(_HERE, first, _HERE, second, _EXCHANGE)) == 0
        return int(library.renamex_np(first, second, _SWAP)) == 0
    except (AttributeError, OSError):
        return False


def may_be_exchanged(place: Path, stage: Path) -> bool:
    """Whether nobody would miss the folder that goes: nothing runs in it here, and the new one has the same owner and
    rights."""
    try:
        here = Path.cwd()
    except OSError:
        return False
    if here == place or place in here.parents:
        return False
    old, new = place.lstat(), stage.lstat()
    if not stat.S_ISDIR(old.st_mode) or (old.st_uid, old.st_gid, old.st_dev) != (new.st_uid, new.st_gid, new.st_dev):
        return False
    if hasattr(os, "listxattr") and set(os.listxattr(place)) != set(os.listxattr(stage)):
        return False  # rights of their own
    stage.chmod(stat.S_IMODE(old.st_mode))
    return True
