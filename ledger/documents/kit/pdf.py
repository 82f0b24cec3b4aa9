"""The PDF file that every paper is: its faces embedded, and said in it what it is, whose, and in which language."""

import io
from typing import Any, NamedTuple

from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fonts import REGULAR, register

LANGUAGE = "en"  # what every paper but a label is written in, so that it can be read aloud


class About(NamedTuple):
    """What a file says of itself."""

    title: str
    author: str  # her business
    subject: str
    language: str = LANGUAGE


def as_file(about: About) -> dict[str, Any]:
    """What a document set by reportlab is begun with.

    A page begins in the first face: reportlab's own beginning declares Helvetica, which is in no file.
    """
    register()
    return {
        "title": about.title,
        "author": about.author,
        "subject": about.subject,
        "creator": "soapledger",
        "lang": about.language,
        "initialFontName": REGULAR,
        "displayDocTitle": True,
        "invariant": 1,
    }


def new_canvas(out: io.BytesIO, size: tuple[float, float], about: About) -> Canvas:
    """A canvas of a page size in points; equal drawing gives equal bytes under one version."""
    register()
    canvas = Canvas(out, pagesize=size, invariant=1, initialFontName=REGULAR, lang=about.language)
    canvas.setTitle(about.title)
    canvas.setAuthor(about.author)
    canvas.setSubject(about.subject)
    canvas.setCreator("soapledger")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    return canvas
