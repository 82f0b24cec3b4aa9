"""The way of a recall as a diagram: what was bad at the left, the batches, and where the bars went at the right."""

from typing import NamedTuple

from reportlab.lib.colors import black, white
from reportlab.platypus import Flowable

from ledger.documents.kit.fonts import BOLD, REGULAR, cut_off, draw_text, width
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.views.recall.recall import ReachedBatch, RecallAnswer

MOST = 20  # batches that are drawn each by itself; of more, all of one product are one
_OUTLETS = 14
_LINE = 1.15  # of text, in sizes
_WIDEST = 15  # sizes that a column is wide at most
_LOOP = 14.0  # points at the left of a column for the tie of two in it


class Spot(NamedTuple):
    """One thing in a column: two lines of text, the upper one bold."""

    key: str
    head: str
    line: str


class Way(NamedTuple):
    """The columns from left to right, and what leads to what, by their keys."""

    columns: tuple[tuple[Spot, ...], ...]
    ties: tuple[tuple[str, str], ...]
    summed: bool  # whether batches of one product are drawn as one


def way_of(answer: RecallAnswer) -> Way:
    """What is drawn of an answer."""
    lots = [
        Spot(one.lot_code, one.lot_code, f"{one.material}{f', {one.supplier_lot}' if one.supplier_lot else ''}")
        for one in answer.lots
    ]
    through = [one for one in answer.batches if not one.yields_bars]
    last = [one for one in answer.batches if one.yields_bars]
    summed = len(answer.batches) > MOST
    name = {one.batch_code: _name(one, summed) for one in answer.batches}
    columns = [_spots(group, name, summed) for group in (through, last)]
    shown = {spot.key for group in columns for spot in group} | {spot.key for spot in lots}
    ties = []
    for one in answer.batches:
        before = name.get(one.after, one.after) if one.after else one.first
        if before in shown and before != name[one.batch_code] and one.steps:
            ties.append((before, name[one.batch_code]))
    outlets, to_outlets = _outlets(answer, name)
    turn = {spot.key: place for place, spot in enumerate(columns[1])}
    outlets.sort(key=lambda spot: _middle([turn[one] for one, other in to_outlets if other == spot.key]))
    drawn = tuple(tuple(group) for group in (lots, *columns, outlets) if group)
    return Way(drawn, tuple(dict.fromkeys([*ties, *to_outlets])), summed)


def _middle(places: list[int]) -> float:
    """Where an outlet stands: beside the middle of those it comes from, so that few lines cross."""
    return sum(places) / len(places)


def _name(one: ReachedBatch, summed: bool) -> str:
    return f"{one.product}, {one.yields_bars}" if summed else one.batch_code


def _spots(group: list[ReachedBatch], name: dict[str, str], summed: bool) -> list[Spot]:
    if not summed:
        return [
            Spot(
                one.batch_code,
                one.batch_code,
                f"{count(one.bars_made, 'bar') if one.yields_bars else show_date(one.made_on)}, {one.product}",
            )
            for one in group
        ]
    of: dict[str, list[ReachedBatch]] = {}
    for one in group:
        of.setdefault(name[one.batch_code], []).append(one)
    return [
        Spot(
            key,
            each[0].product,
            count(len(each), "batch", "batches")
            + (f", {count(sum(one.bars_made for one in each), 'bar')}" if each[0].yields_bars else ""),
        )
        for key, each in of.items()
    ]


def _outlets(answer: RecallAnswer, name: dict[str, str]) -> tuple[list[Spot], list[tuple[str, str]]]:
    """Where bars are or went, those that came back taken off nothing: they are on the shelf by then."""
    places = {(one.where, one.detail) for one in answer.bars}
    few = len(places) <= _OUTLETS
    bars: dict[tuple[str, str], int] = {}
    ties = []
    for one in answer.bars:
        if one.where == "came back":
            continue
        where = (one.where, one.detail if few and one.where not in (one.detail, "wasted") else "")
        bars[where] = bars.get(where, 0) + one.count
        ties.append((name[one.batch_code], "/".join(where)))
    spots = [
        Spot("/".join(key), key[1] or key[0], f"{count(many, 'bar')} {key[0]}" if key[1] else count(many, "bar"))
        for key, many in bars.items()
    ]
    return spots, ties


class End(NamedTuple):
    """Where a text stands, and the right edge of its column, in points."""

    left: float
    right: float
    y: float
    edge: float
    head: str
    line: str


class WayDrawn(Flowable):
    """The diagram; the texts are ends of the lines, without boxes."""

    def __init__(self, way: Way, size: float, wide: float, high: float) -> None:
        super().__init__()
        self.way, self.size, self.width = way, size, wide
        most = max((len(column) for column in way.columns), default=1)
        self.row = min(3.4 * size, high / most)
        self.height = most * self.row

    def wrap(self, *_room: float) -> tuple[float, float]:
        """As wide and high as it is."""
        return self.width, self.height

    def draw(self) -> None:
        """Draw a line for each tie, then every text in its column over it, on white so that no line runs through it."""
        size = self.size * min(1.0, self.row / (2.5 * self.size))
        rooms, gap = self._rooms(size)
        ends: dict[str, End] = {}
        left = _LOOP
        for column, room in zip(self.way.columns, rooms, strict=True):
            spare = self.height - len(column) * self.row
            for turn, spot in enumerate(column):
                y = self.height - spare / 2 - (turn + 0.5) * self.row
                head = cut_off(spot.head, BOLD, size, room)
                line = cut_off(spot.line, REGULAR, size, room)
                long = max(width(head, BOLD, size), width(line, REGULAR, size))
                ends[spot.key] = End(left, left + long, y, left + room, head, line)
            left += room + gap
        self.canv.setStrokeColor(black)
        self.canv.setLineWidth(0.5)
        for one, other in self.way.ties:
            if one in ends and other in ends:
                self._tie(ends[one], ends[other])
        for end in ends.values():
            self.canv.setFillColor(white)
            self.canv.rect(end.left - 2, end.y - 1.2 * size, end.right - end.left + 4, 2.2 * size, stroke=0, fill=1)
            self.canv.setFillColor(black)
            draw_text(self.canv, end.left, end.y + 0.12 * size, end.head, BOLD, size)
            draw_text(self.canv, end.left, end.y + (0.12 - _LINE) * size, end.line, REGULAR, size)

    def _rooms(self, size: float) -> tuple[list[float], float]:
        """How wide each column is, and the space between two: as its texts are, and narrower where they do not fit."""
        rooms = [
            min(_WIDEST * size, max(width(text, BOLD, size) for spot in column for text in (spot.head, spot.line)))
            for column in self.way.columns
        ]
        between = max(len(rooms) - 1, 1)
        free = self.width - _LOOP - 5 * self.size * between
        share = min(1.0, free / sum(rooms)) if rooms else 1.0
        rooms = [room * share for room in rooms]
        return rooms, min((self.width - _LOOP - sum(rooms)) / between, 16 * self.size)

    def _tie(self, one: "End", other: "End") -> None:
        """Level up to the edge of its column, then bent; within a column, as bars that were grated, along its left."""
        y, z = one.y, other.y
        path = self.canv.beginPath()
        if one.left >= other.left:
            path.moveTo(one.left - 3, y)
            path.curveTo(one.left - _LOOP - 6, y, other.left - _LOOP - 6, z, other.left - 3, z)
        else:
            bend = (other.left - 3 - one.edge) / 2
            path.moveTo(one.right + 3, y)
            path.lineTo(one.edge, y)
            path.curveTo(one.edge + bend, y, other.left - 3 - bend, z, other.left - 3, z)
        self.canv.drawPath(path, stroke=1, fill=0)
