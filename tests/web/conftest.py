from collections.abc import Iterator

import pytest

from tests.browsing import browser as browser
from tests.web.asking import Site, site


@pytest.fixture(scope="session")
def page() -> Iterator[Site]:
    """One page for all tests that leave it as it was."""
    with site() as found:
        yield found
