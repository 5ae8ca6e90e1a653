"""Settings and made jobs that all tests share."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import settings

from signgen.job.facts import JobFacts
from tests.by_hand import build_facts
from tests.schemas.strict import watch

# Deadlines would assert wall-clock time, which belongs into tests/bench; derandomised, so that two runs test the same.
settings.register_profile("signgen", deadline=None, derandomize=True)
settings.load_profile("signgen")

watch()  # every report of every test is held against its schema


@pytest.fixture(scope="session")
def make_facts() -> Callable[..., JobFacts]:
    return build_facts


@pytest.fixture(scope="session")
def facts() -> JobFacts:
    return build_facts()
