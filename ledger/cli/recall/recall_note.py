"""soapledger recall note."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say, say_next
from ledger.cli.recall.named import Number
from ledger.errors import BadInput
from ledger.operations.recall.recall_life import Done, note_recall
from ledger.units.quantity import parse_pieces
from ledger.units.words import RecallStepKind

Some = str | None
Told = Annotated[
    list[str] | None, typer.Option("--told", metavar="NAME", help="Who was told: a customer, a complaint.")
]
How = Annotated[Some, typer.Option("--how", metavar="WORDS", help="How: telephone, letter, at the stall.")]
Answered = Annotated[Some, typer.Option("--answered", metavar="NAME", help="Who answered; what, in the words.")]
From = Annotated[Some, typer.Option("--from", metavar="NAME", help="Of whom the bars are that came back or went.")]
Back = Annotated[Some, typer.Option("--returned", metavar="NUMBER", help="Bars that came back.")]
Gone = Annotated[Some, typer.Option("--destroyed", metavar="NUMBER", help="Bars that were destroyed.")]
Notice = Annotated[list[str] | None, typer.Option("--notice", metavar="PLACE", help="Where a notice was put up.")]
Insurer = Annotated[Some, typer.Option("--insurer", metavar="NAME", help="The insurer that was told.")]
Authority = Annotated[Some, typer.Option("--authority", metavar="NAME", help="The authority that was told.")]
Class = Annotated[Some, typer.Option("--class", metavar="CLASS", help="The class that the authority set: I, II, III.")]
LevelSet = Annotated[Some, typer.Option("--level", metavar="LEVEL", help="How many are asked: A, 'B 40', C, D, E.")]

Hazard = Annotated[Some, typer.Option("--hazard", metavar="WORDS", help="What the danger is, as it is known now.")]


def command(
    ctx: typer.Context,
    number: Number,
    words: Annotated[Some, typer.Argument(help="In your own words, in quotes.")] = None,
    told: Told = None,
    how: How = None,
    answered: Answered = None,
    from_: From = None,
    returned: Back = None,
    destroyed: Gone = None,
    notice: Notice = None,
    insurer: Insurer = None,
    authority: Authority = None,
    class_: Class = None,
    level: LevelSet = None,
    hazard: Hazard = None,
    on: On = None,
) -> None:
    """Note who was told, what came back, what was done, e.g. recall note R1 "keeps four" --told tern-hall."""
    if class_ and not authority:
        raise BadInput("Only an authority sets a class; say which: --authority NAME")
    one = answered or (told[0] if told and len(told) == 1 else None)
    done = [Done("told", each, how) for each in told or ()]
    if answered:
        done.append(Done("answered", answered, None if told else how))
    counted: tuple[tuple[RecallStepKind, Some], ...] = (("returned", returned), ("destroyed", destroyed))
    for kind, text in counted:
        if text is not None:
            bars = parse_pieces(text, what=f"the bars {kind}")
            if not bars:
                raise BadInput(f"--{kind} takes a number above zero; leave it out where there were none.")
            done.append(Done(kind, from_ or one, bars=bars))
    done += [Done("notice", place, how) for place in notice or ()]
    if insurer:
        done.append(Done("insurer", insurer, how))
    if authority:
        done.append(Done("class", authority, words=class_) if class_ else Done("authority", authority, how))
    if level:
        done.append(Done("level", words=level))
    if hazard:
        done.append(Done("hazard", words=hazard))
    if from_ and not (returned or destroyed):
        raise BadInput("--from says whose bars came back or were destroyed; add --returned or --destroyed NUMBER.")
    if how and not (told or answered or notice or insurer or authority):
        raise BadInput("--how says how somebody was told; add --told NAME.")
    done = _with_words(done, words)
    here = desk(ctx)
    name = note_recall(here.book(), number, done, on=here.day(on), by=here.who)
    say(f"Recall {name} has the note.")
    if returned:
        say_next("The bars themselves, on the returns shelf: soapledger return CODE=NUMBER --from NAME")
    say_next(f"How it stands: soapledger recall show {name}")


def _with_words(done: list[Done], words: Some) -> list[Done]:
    """The words go with the answer, else with the first thing done that takes any, else they are a note."""
    if not words:
        return done or [Done("note")]
    takes = [place for place, one in enumerate(done) if one.kind not in ("level", "class", "hazard")]
    answers = [place for place in takes if done[place].kind == "answered"]
    if not takes:
        return [*done, Done("note", words=words)]
    place = (answers or takes)[0]
    first = done[place]
    return [*done[:place], Done(first.kind, first.whom, first.how, first.bars, words), *done[place + 1 :]]
