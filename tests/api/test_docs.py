"""What is offered explains itself: every public thing says what it is, with an example that runs."""

from __future__ import annotations

import doctest
import inspect

import pytest

import signgen

OFFERED = [name for name in signgen.__all__ if not name.startswith("__")]


@pytest.mark.parametrize("name", OFFERED)
def test_it_has_an_example_that_runs(name: str) -> None:
    """`tests/test_doctests.py` runs them."""
    thing = getattr(signgen, name)
    assert thing.__doc__
    assert doctest.DocTestParser().get_examples(thing.__doc__), f"{name} has no example"


@pytest.mark.parametrize("name", OFFERED)
def test_all_that_it_has_is_explained(name: str) -> None:
    thing = getattr(signgen, name)
    if not inspect.isclass(thing):
        return
    for member, value in vars(thing).items():
        if not member.startswith("_") and (inspect.isfunction(value) or isinstance(value, property)):
            assert value.__doc__, f"{name}.{member}"


@pytest.mark.parametrize("name", [name for name in OFFERED if inspect.isfunction(getattr(signgen, name))])
def test_functions_say_what_they_raise_and_in_which_units(name: str) -> None:
    about = inspect.getdoc(getattr(signgen, name)) or ""
    assert "Raises: " in about
    assert "millimetres" in about


@pytest.mark.parametrize("name", ["Program", "check", "read_program"])
def test_what_is_read_by_published_rules_names_them(name: str) -> None:
    assert "NIST IR 6556" in (inspect.getdoc(getattr(signgen, name)) or "")
