"""Materials by the words that people use."""

from importlib.resources import files

import pytest

from signgen.errors import AskError
from signgen.messages.de import LANGUAGE as GERMAN
from signgen.messages.en import LANGUAGE as ENGLISH
from signgen.shop.load import load_shop
from signgen.shop.named import material_named, refused

SHOP = load_shop(None)


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("oak", "hardwood"), ("Eiche", "hardwood"), ("PINE", "softwood"), ("douglas-fir", "softwood"),
        ("birch ply", "birch-plywood"), ("MDF", "mdf"), ("hardwood", "hardwood"), ("aluminum", "aluminium"),
    ],
)  # fmt: skip
def test_finds_a_material_by_other_words(said, name):
    assert material_named(SHOP, said).name == name


def test_says_why_slate_is_not_cut():
    with pytest.raises(AskError, match=r"^material: Slate is not cut here: .*dust scars the lungs\. Use another"):
        material_named(SHOP, "Slate")


def test_offers_close_words():
    with pytest.raises(AskError, match=r"There is no material 'walnutt'\. Did you mean walnut"):
        material_named(SHOP, "walnutt")


def test_every_word_means_one_thing_and_every_refusal_has_its_reason():
    words = [word.casefold() for m in SHOP.materials for word in (m.name, *m.also)]
    words += [word.casefold() for each in refused().values() for word in each]
    assert len(words) == len(set(words))
    for reason in refused():
        assert f"unfit.{reason}" in ENGLISH.table
        assert f"unfit.{reason}" in GERMAN.table


def test_a_material_of_ones_own_goes_before(tmp_path):
    shipped = (files("signgen.shop") / "data" / "materials.toml").read_text(encoding="utf-8")
    own = shipped[shipped.index("[material.hardwood]") : shipped.index("[material.acrylic]")]
    file = tmp_path / "shop.toml"
    file.write_text(own.replace("[material.hardwood]", "[material.slate]\nlabel = 'Slate'"), encoding="utf-8")
    assert material_named(load_shop(file), "slate").name == "slate"
