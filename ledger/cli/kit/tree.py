"""The tree of commands: each is loaded and built when it is named, and takes its values without pydantic."""

import re
from collections.abc import Iterator, MutableMapping
from functools import cache
from pathlib import Path
from typing import Any, get_args, get_origin

import typer
from typer.core import TyperCommand, TyperGroup
from typer.main import get_command_from_info
from typer.models import CommandInfo

from ledger.cli.commands import EVERY, WORK, inside
from ledger.cli.kit.heard import hear
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import TAKES
from ledger.cli.kit.show import say
from ledger.errors import BadInput
from ledger.units.signs import composed, refuse_unseen

_TYPED = (str, bool, Path)
_FILES = {"pass": "pass_", "return": "return_"}  # words that cannot name a module
_NAMED = {"help_option_names": ["-h", "--help"]}


class _Plain:
    """How a text that was typed becomes the value of a parameter: as it stands.

    What it means (a date, a weight, a batch) is read by the trade's own words later, and typer would load pydantic
    for it, which is 40 % of a read.
    """

    def __init__(self, make: type, many: bool) -> None:
        self._make, self._many = make, many

    def coerce(self, value: Any, param: Any, ctx: Any) -> Any:  # noqa: ARG002
        """The value, or the values, made of what was typed. Raises BadInput for nothing, or no text."""
        if value is None:
            return () if self._many else None
        if value != param.default:
            value = [self._typed(one, param) for one in value] if self._many else self._typed(value, param)
        return [self._make(one) for one in value] if self._many else self._make(value)

    def _typed(self, value: Any, param: Any) -> Any:
        """What was typed, on one line, in one form of Unicode; the name of a file in the form that it has."""
        if not isinstance(value, str):
            return value
        name = param.opts[0] if param.opts[0].startswith("-") else param.metavar
        text = _seen(value, name, param.required, of_file=self._make is Path)
        return text if self._make is Path or name == "--ledger" else hear(composed(text))


def _seen(value: str, name: str, required: bool, *, of_file: bool) -> str:
    """What was typed, on one line. Raises BadInput for nothing, and for a sign that nobody sees."""
    if not value.strip():
        raise BadInput(f"{name} is empty; write what it is{'' if required else ', or leave it out'}.")
    try:
        value.encode()
    except UnicodeEncodeError:
        raise BadInput(
            f"{name} holds a sign that is not UTF-8; type it again on a terminal that writes UTF-8."
        ) from None
    text = " ".join(value.split()) if any(sign in value for sign in "\t\n\r\v\f") else value
    instead = "give the file another name" if of_file else "type it again without it"
    refuse_unseen(text, name, instead=instead)
    return text


def _plainly(parameter: Any) -> Any:
    wanted = parameter.type_descriptor.annotation
    many = get_origin(wanted) is list
    make = get_args(wanted)[0] if many else wanted
    assert make in _TYPED, f"{parameter.name} takes {make}; a command takes texts, files and yes-or-no"
    plain = _Plain(make, many)
    parameter.get_runtime_param = lambda: plain
    if parameter.opts[0].startswith("-"):
        if parameter.metavar is None and make is not bool:
            parameter.metavar = TAKES.get(parameter.opts[0], "TEXT")
        return parameter
    name = TAKES.get(parameter.name, parameter.name.rstrip("_").upper())
    parameter.metavar = (parameter.metavar or name) + ("..." if many else "")
    usage = [parameter.metavar if parameter.required else f"[{parameter.metavar}]"]
    parameter.get_usage_pieces = lambda _: usage
    parameter.display_type_rich = lambda ctx: None  # noqa: ARG005  # its kind is its name
    return parameter


def _help(ctx: Any, _: Any, asked: bool) -> None:
    if asked and not ctx.resilient_parsing:
        say(ctx.get_help())
        ctx.exit()


class _Plainly:
    """What commands and groups share: plain values."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for parameter in self.params:  # type: ignore[attr-defined]
            _plainly(parameter)

    def get_help_option(self, ctx: Any) -> Any:
        """The option that shows the help, taken as plainly."""
        option = super().get_help_option(ctx)  # type: ignore[misc]
        option.callback = _help
        return _plainly(option)


class Command(_Plainly, TyperCommand):
    """One command."""


class _Shelf(MutableMapping[str, Any]):
    """The commands of a group by their words, each built when it is first taken."""

    def __init__(self, group: str) -> None:
        self._group = group

    def __iter__(self) -> Iterator[str]:
        return iter(inside(self._group))

    def __len__(self) -> int:
        return len(inside(self._group))

    def __contains__(self, word: object) -> bool:
        return word in inside(self._group)

    def __getitem__(self, word: str) -> Any:
        words = f"{self._group} {word}".strip()
        if words not in EVERY or word not in self:
            raise KeyError(word)
        return _built(words)

    def __setitem__(self, word: str, command: Any) -> None:
        raise TypeError("a command stands in ledger/cli/commands.py")

    __delitem__ = __getitem__


_RECALL = re.compile(r"[Rr]\d+")
# The words that a code or a number in the place of a command may want: those of a recall's number, and of any other.
_MEANT = (("show",), ("lot", "show", "check"))


class Group(_Plainly, TyperGroup):
    """A group of commands; called alone, it shows its help."""

    def __init__(self, *, name: str | None = None, **kwargs: Any) -> None:
        super().__init__(name=name, **{**kwargs, "context_settings": _NAMED})
        self.words = "" if name == "soapledger" else name or ""
        self.commands = _Shelf(self.words)

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        """The words of the command; none: the help is the answer."""
        if not args and not ctx.resilient_parsing:
            say(ctx.get_help())
            ctx.exit()
        return super().parse_args(ctx, args)

    def resolve_command(self, ctx: Any, args: list[str]) -> Any:
        """The command that is named; where a code or a number stands in its place, what to write is said."""
        try:
            return super().resolve_command(ctx, args)
        except typer.TyperException as error:
            word = next((one for one in _MEANT[_RECALL.fullmatch(args[0]) is None] if one in self.commands), None)
            if self.words and word and any(sign.isdigit() for sign in args[0]) and hasattr(error, "message"):
                error.message = f"{args[0]!r} is no command; write soapledger {self.words} {word} {args[0]!r}."
            raise

    def format_commands(self, ctx: Any, formatter: Any) -> None:  # noqa: ARG002
        """Each command with its line, under the headings of the work where there are several."""
        wide = max(len(one) for one in inside(self.words))
        for heading, lines in WORK.items():
            mine = [word for word in inside(self.words) if f"{self.words} {word}".strip() in lines]
            if mine:
                with formatter.section("Commands" if self.words else heading):
                    formatter.write_dl(
                        [(word.ljust(wide), lines[f"{self.words} {word}".strip()].line) for word in mine]
                    )


@cache
def _built(words: str) -> Any:
    """The command that is called by some words. It is loaded now."""
    if inside(words):
        return Group(name=words, help=f"{EVERY[words].line}.", rich_markup_mode=None)
    name = words.replace(" ", "_").replace("-", "_")
    module = loaded(f"cli.{EVERY[words].subject}.{_FILES.get(name, name)}")
    settings = getattr(module, "SETTINGS", None)
    info = CommandInfo(words.rsplit(" ", 1)[-1], cls=Command, callback=module.command, context_settings=settings)
    return get_command_from_info(info, pretty_exceptions_short=False, rich_markup_mode=None)
