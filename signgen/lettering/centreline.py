"""Faces of outlines as faces of lines."""

from __future__ import annotations

from signgen.errors import AskError
from signgen.lettering.faces import Face


def lined(face: Face) -> Face:
    """A face whose letters are drawn in lines: itself. Raises: AskError for one with outlines."""
    if face.lines_of is None:
        raise AskError.at("font", f"{face.name} is drawn in outlines.", "Use a face of single lines: hershey-sans.")
    return face
