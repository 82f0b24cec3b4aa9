"""Her picture: shapes of an SVG, dots of a PNG, and nothing that reaches beyond the file."""

import io
from dataclasses import replace

import pytest
from PIL import Image

from ledger.documents.kit.layout import label_layout
from ledger.documents.kit.sheets import SheetLayout
from ledger.documents.label.doubts import look_doubts
from ledger.documents.label.labels import draw_labels
from ledger.documents.label.picture import dots_an_inch, one_colour, picture_doubts, read_picture
from ledger.documents.label.svg import read_svg
from ledger.documents.label.svg_path import path_steps
from ledger.errors import Refused
from ledger.views.label.picture import LabelPicture

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10">'
INCH = 72.0


def svg(inside: str, head: str = HEAD) -> bytes:
    return f"{head}{inside}</svg>".encode()


def png(wide: int, high: int, ink: str = "black") -> LabelPicture:
    image = Image.new("RGB", (wide, high), "white")
    image.paste(ink, (0, 0, wide // 2, high))
    out = io.BytesIO()
    image.save(out, "PNG")
    return LabelPicture("wave.png", "", out.getvalue())


BOMB = (
    '<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>' + HEAD + "<text>&b;</text></svg>"
).encode()
HOSTILE = {
    "entities": (BOMB, "document type or entities"),
    "outer entity": (
        b'<!DOCTYPE svg SYSTEM "file:///etc/passwd">' + svg("<path d='M0 0L1 1'/>"),
        "document type or entities",
    ),
    "image from outside": (
        svg('<image xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="http://a.example/a.png"/>'),
        "'href'",
    ),
    "use of another file": (svg('<use href="other.svg#a"/>'), "'href'"),
    "script": (svg("<script>alert(1)</script>"), "has a 'script'"),
    "attribute that acts": (svg('<path d="M0 0L1 1" onload="a()"/>'), "'onload'"),
    "style sheet": (svg("<style>@import url(http://a.example)</style>"), "has a 'style'"),
    "style sheet named": (b"<?xml-stylesheet href='http://a.example'?>" + svg("<path d='M0 0L1 1'/>"), "entities"),
    "fill from outside": (svg('<path d="M0 0L1 1" fill="url(http://a.example)"/>'), "no plain colour"),
    "text": (svg("<text>Soap</text>"), "has a 'text'"),
    "foreign parts": (svg("<foreignObject/>"), "has a 'foreignObject'"),
    "too many parts": (svg("<g/>" * 5_001), "more than 5000 parts"),
    "too deep": (svg("<g>" * 61 + "</g>" * 61), "more than 5000 parts"),
    "not whole": (svg("<g>"), "cannot be read: line 1"),
    "nothing": (svg(""), "nothing to draw"),
    "no size": (svg("<path d='M0 0L1 1'/>", '<svg xmlns="http://www.w3.org/2000/svg">'), "where a plain length"),
    "a path that is not whole": (svg('<path d="M0 0 L1"/>'), "a path that cannot be drawn"),
    "a length without an end": (svg(f'<rect width="1e{"9" * 9}" height="1"/>'), "where a plain length belongs"),
    "half transparent": (svg('<path d="M0 0L1 1" style="fill:red;opacity:.5"/>'), "partly transparent"),
}


@pytest.mark.parametrize("what", HOSTILE)
def test_an_svg_that_is_more_than_shapes_is_refused_by_its_name(what: str) -> None:
    content, said = HOSTILE[what]
    with pytest.raises(Refused) as caught:
        read_svg(content, "wave.svg")
    assert said in str(caught.value)
    assert str(caught.value).startswith("The picture wave.svg ")
    assert "\n" not in str(caught.value)


def test_what_an_editor_writes_beside_the_drawing_is_passed_over() -> None:
    noted = '<metadata><a href="x"/></metadata><e:view xmlns:e="urn:editor" href="x"/><title>Wave</title>'
    assert len(read_svg(svg(noted + '<rect width="4" height="2"/>'), "wave.svg").shapes) == 1


def test_shapes_are_moved_and_turned_as_their_groups_say() -> None:
    """A quarter turn about (5, 5) takes (1, 2) to (8, 1), since the height runs down; scale 2 then doubles."""
    inside = '<g transform="scale(2)"><path transform="rotate(90 5 5)" d="M1 2h1" stroke="#f00" stroke-width="1"/></g>'
    (shape,) = read_svg(svg(inside), "wave.svg").shapes
    (_, (first,)), (_, (second,)) = shape.steps
    assert first == pytest.approx((16, 2))
    assert second == pytest.approx((16, 4))
    assert (shape.fill, shape.stroke, shape.stroke_wide) == ("#000000", "#ff0000", pytest.approx(2))


def test_a_path_is_read_with_its_short_forms() -> None:
    assert path_steps("M1 1 2 2v3h-1z") == (
        ("M", ((1, 1),)), ("L", ((2, 2),)), ("L", ((2, 5),)), ("L", ((1, 5),)), ("Z", ()),
    )  # fmt: skip
    # the second control of S mirrors the first: (2, 0) about (2, 2) is (2, 4)... and of Q two thirds of the way
    assert path_steps("M0 0C0 0 2 0 2 2S4 4 4 2")[2] == ("C", ((2, 4), (4, 4), (4, 2)))
    assert path_steps("M0 0Q3 3 6 0")[1][1] == (pytest.approx((2, 2)), pytest.approx((4, 2)), (6, 0))


def test_an_arc_ends_where_it_says_and_keeps_its_radius() -> None:
    steps = path_steps("M10 0A10 10 0 01-10 0")  # flags without spaces; half a circle, in two quarters
    assert [kind for kind, _ in steps] == ["M", "C", "C"]
    middle, end = steps[1][1][2], steps[2][1][2]
    assert middle == pytest.approx((0, 10))
    assert end == pytest.approx((-10, 0))


@pytest.mark.parametrize(("dots", "said"), [(299, 1), (300, 0), (301, 0)])
def test_a_png_is_held_to_300_dots_an_inch_as_it_is_printed(dots: int, said: int) -> None:
    picture = png(dots, dots)
    assert dots_an_inch(picture, INCH, INCH) == pytest.approx(dots)
    doubts = picture_doubts(picture, INCH, INCH, black=False)
    assert len(doubts) == said
    if said:
        assert doubts == (
            "wave.png has 299 dots an inch at 25 × 25 mm, and under 300 its edges are seen; save it with 300 × 300 "
            "dots, or as an SVG.",
        )


def test_the_side_that_fills_its_place_tells_the_resolution() -> None:
    """600 × 300 dots in a square inch: an inch wide, half an inch high."""
    assert dots_an_inch(png(600, 300), INCH, INCH) == pytest.approx(600)


@pytest.mark.parametrize(("ink", "one"), [("black", True), ("#777777", False)])
def test_a_png_of_black_on_white_prints_in_one_colour_and_greys_do_not(ink: str, one: bool) -> None:
    assert one_colour(png(300, 300, ink)) is one
    assert bool(picture_doubts(png(300, 300, ink), INCH, INCH, black=True)) is not one
    assert picture_doubts(png(300, 300, ink), INCH, INCH, black=False) == ()


def test_an_svg_of_one_ink_on_white_prints_in_one_colour() -> None:
    ground = '<rect width="10" height="10" fill="white"/>'
    one = LabelPicture("wave.svg", "", svg(ground + '<circle r="2" fill="#124"/>'))
    two = LabelPicture("wave.svg", "", svg('<circle r="2" fill="#124"/><circle r="1" fill="tomato"/>'))
    assert (one_colour(one), one_colour(two)) == (True, False)


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"GIF89a", "neither an SVG nor a PNG"),
        (b"\x89PNG\r\n\x1a\n" + b"\0" * 40, "cannot be read to its end"),
        (png(300, 300).content[:200], "cannot be read to its end"),
        (b"\x89PNG\r\n\x1a\n" + b"\0" * 5_000_000, "larger than 5 MB"),
    ],
    ids=("gif", "no-png", "cut-off", "large"),
)
def test_what_is_no_picture_is_refused_in_a_line(content: bytes, said: str) -> None:
    with pytest.raises(Refused, match=said):
        read_picture(LabelPicture("wave", "", content))


def test_her_picture_stands_in_its_place_and_nowhere_else(label, read) -> None:
    """A red square in the place of label-wrap.toml: 6.5 to 48.5 by 56.7 to 71 mm, so 14.3 mm about its middle."""
    picture = LabelPicture("red.svg", "", svg('<rect width="10" height="10" fill="#f00"/>'))
    layout = label_layout("wrap")
    page = SheetLayout("alone", "roll", 1, 1, 0, 0, 170, 110, 170, 110, cut_marks=False)
    data = draw_labels(replace(label, picture=picture), layout, page, count=1)
    dots = 72 / 25.4 * 4
    red, green, _ = read(data).image(scale=4).convert("RGB").split()
    found = Image.eval(green, lambda n: 255 * (n < 60)).point(lambda n: n)
    red_alone = Image.composite(red.point(lambda n: 255 * (n > 200)), Image.new("L", red.size), found)
    assert [edge / dots for edge in red_alone.getbbox()] == pytest.approx([20.35, 56.7, 34.65, 71], abs=0.2)


def test_a_layout_without_a_place_says_that_her_picture_is_not_on_it(label) -> None:
    picture = LabelPicture("wave.svg", "", svg('<circle r="2"/>'))
    assert look_doubts(replace(label, picture=picture), label_layout("small")) == (
        "The layout 'small, two panels' has no place for a picture, so wave.svg is not on it.",
    )


def test_a_pale_colour_is_said_to_be_pale(label) -> None:
    (said,) = look_doubts(replace(label, colour="#f4eec0"), label_layout("band"))
    assert said.startswith("The colour #f4eec0 stands out from white paper by 1.2 to 1")
    assert look_doubts(replace(label, colour="#5b6f4e"), label_layout("band")) == ()
