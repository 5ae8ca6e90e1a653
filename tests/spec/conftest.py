import pytest

from signgen.shop.load import load_shop


@pytest.fixture(scope="session")
def shop():
    return load_shop()


@pytest.fixture
def house_number():
    """The house number's command line, as the command line hands it over."""
    return {
        "text": ["17", "Larkspur Lane"], "size": "220x140", "thickness": "12", "material": "birch-plywood",
        "holes": "corners", "hole-diameter": "7", "inset": "14",
    }  # fmt: skip
