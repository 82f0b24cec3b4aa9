"""What the commands that erase a person take, ask and say alike."""

from collections.abc import Callable, Sequence
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import confirm, count, say, say_wrapped, table
from ledger.operations.people.erase import erase
from ledger.rows.opened import Rows
from ledger.rows.people import Details
from ledger.units.mentions import Span
from ledger.units.quantity import parse_pieces
from ledger.views.people.erasable import Erasable, Item

Reason = Annotated[str, typer.Option("--reason", help="Why, e.g. asked to be forgotten.")]
Also = Annotated[list[str] | None, typer.Option("--also", help='Other words that name the person, e.g. "Mrs Marsh".')]
Paper = Annotated[list[str] | None, typer.Option("--attachment", help="A paper to erase: how its SHA-256 begins.")]
Leave = Annotated[list[str] | None, typer.Option("--leave", help="The number of one that stays.")]
NameToo = Annotated[bool, typer.Option("--name-too", help="The name is a person's: erase it too.")]

_MOST = 20  # texts that may name the person; a name may be a common word
_WIDE = 44  # signs of a text that a line shows
_WHERE = {
    "entry": "history",
    "movement": "note on stock",
    "recipe_version": "recipe",
    "recipe_figures": "recipe",
    "label_run": "printed label",
    "label_approval": "approved label",
    "complaint_step": "complaint",
    "attachment": "paper",
}


def erase_shown(
    here: Desk,
    find: Callable[[Rows], Erasable],
    *,
    question: str,
    says: str,
    reason: str,
    leave: list[str] | None,
    yes: bool,
) -> None:
    """Show what would be erased and what would not, ask, erase it, say so, and name the copies that hold it still."""
    found = find(here.rows())
    left = [parse_pieces(one, what="the number of what stays") for one in leave or ()]
    if found.found:
        _show(found, left)
        confirm(question, yes)
    done = erase(here.book(), find, reason=reason, leave=left, shown=found)
    say(says)
    if done.code != found.code:
        say(f"The short name is {done.code} now, since the one before named the person.")
    if done.copies:
        say_wrapped(
            f"{count(len(done.copies), 'ledger')} in the same folder may hold it still: "
            f"{', '.join(one.name for one in done.copies)}. Delete what you need no more."
        )
    say_wrapped(
        f"Copies in other folders, and papers and lists made from the ledger, are not known here"
        f"{'' if done.copies else '; none was found beside it'}."
    )


def _show(found: Erasable, left: Sequence[int]) -> None:
    every: list[Details | Item] = [*found.details, *found.items]
    say("This would be erased for good:")
    lines: list[tuple[str, str, str, str]] = []
    for number, one in enumerate(every, 1):
        if number in left:
            continue
        if isinstance(one, Item):
            lines.append((str(number), *_line(one)))
            continue
        told = [text for text in (one.name, one.phone, one.email, one.address, one.health) if text]
        lines.append((str(number), f"{one.noun} {one.code}", str(one.entry), told[0]))
        lines += [("", "", "", text) for text in told[1:]]
    table(("", "where", "entry", "text"), lines, right=(0, 2))
    if any(isinstance(one, Item) and one.text.table.startswith("complaint") for one in every):
        say_wrapped("What was said of a complaint may be needed of a bar that did harm; to keep one: --leave NUMBER")
    _also(found)


def _also(found: Erasable) -> None:
    """What is not erased: what may be hers, what stays and why, what cannot be searched."""
    if found.perhaps:
        say(f"{count(len(found.perhaps), 'text')} may name the same person, and would stay:")
        table(("where", "entry", "text"), [_line(one) for one in found.perhaps[:_MOST]], right=(1,))
        if len(found.perhaps) > _MOST:
            say(f"  and {len(found.perhaps) - _MOST} more")
        say('To erase one as well, give the words that name the person: --also "WORDS"')
    for one in found.alike:
        say_wrapped(f"The same name or number stands with {one.noun} {one.code}, which would stay. If that is the same")
        say(f"person: soapledger {one.noun} erase {one.code} --reason REASON")
    if found.stays:
        named = sorted({f"{_where(one)} (entry {one.text.entry})" for one in found.stays})
        say_wrapped(
            f"Where the name says who did or decided something, or stands on a drum or a label, it stays: "
            f"{', '.join(named[:8])}{f' and {len(named) - 8} more' if len(named) > 8 else ''}. A record of what was "
            "made must tell who; whether it must still is for a person to decide."
        )
    if found.unread:
        say_wrapped(
            f"{count(found.unread, 'paper')} kept here cannot be searched, as a picture or a PDF; look at them with "
            "soapledger attachments, and erase one with --attachment and the beginning of its SHA-256."
        )


def _where(one: Item) -> str:
    return _WHERE.get(one.text.table) or one.text.table.removesuffix("_revision").replace("_", " ")


def _line(one: Item) -> tuple[str, str, str]:
    return _where(one), str(one.text.entry), _short(one.text.text, one.spans)


def _short(text: str, spans: Sequence[Span]) -> str:
    """A text on one line, around the first words that name the person."""
    begin = max(0, spans[0][0] - _WIDE // 3) if spans and len(text) > _WIDE else 0
    part = " ".join(text[begin : begin + _WIDE].split())
    return f"{'…' if begin else ''}{part}{'…' if begin + _WIDE < len(text) else ''}"
