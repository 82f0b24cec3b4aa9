"""A recipe's steps in her own words: read, printed, ticked or answered at the bench, and on the record."""

import json
from pathlib import Path
from typing import Any

import pytest
from making import MADE, batch_of, planned, weighed
from once import once
from shop import PLAIN_BAR, Shop

from ledger.domain.bench.steps import steps
from ledger.domain.recipe.figures import figures_text, recipe_from
from ledger.domain.recipe.reader import read_recipe
from ledger.errors import BadInput
from ledger.operations.recipe.recipes import add_recipe
from ledger.rows.batch import portions_of
from ledger.views.bench.bench import steps_of


def step(text: str, when: str, more: str = "") -> str:
    return f'\n[[step]]\ntext = "{text}"\nwhen = "{when}"\n{more}'


TOWEL = step("Wrap the mould in a towel", "at the pour")
STREAM = step("Lye into the fats in a thin stream", "at mixing")
WARM = step("Warm the fats gently", "in the fats")
FRIDGE = step("Turn the loaf out on its side", "at unmoulding")
FIRST = step(
    "Cook till it looks like mash", "in the cook", 'reading = "cook temperature"\nfrom = "70 C"\nto = "80 C"\n'
)
SECOND = step("Cook till it is clear", "in the cook", 'reading = "cook temperature"\nto = "90 C"\n')
TRACE = step("Blend to trace", "at mixing", 'reading = "trace"\nto = 20\n')


def recipe(*parts: str, process: str = "cold", code: str = "stepped") -> str:
    text = PLAIN_BAR.replace("plain-bar", code).replace("Plain Bar", code.capitalize())
    return text.replace('"cold"', f'"{process}"') + "".join(parts)


def flat(text: str) -> str:
    return " ".join(text.replace("\u00a0", " ").split())


@once
def batch(shop: Shop, *parts: str, process: str = "cold") -> str:
    add_recipe(shop.book, recipe(*parts, process=process), file="s.toml")
    return planned(shop.book, "stepped")


def read_of(run: Any, code: str) -> list[tuple[str, str, str | None, str]]:
    found = json.loads(run("batch", "show", code, "--json").stdout)["readings"]
    return [(flat(one["what"]), flat(one["value"]), one["limit"] and flat(one["limit"]), one["by"]) for one in found]


def letter(shop: Shop, code: str, label: str) -> str:
    return next(one.letter for one in steps_of(shop.rows(), batch_of(shop.book, code)) if one.label == label)


def test_they_are_kept_as_written_and_read_back() -> None:
    found = read_recipe(recipe(WARM, FIRST, SECOND, process="hot"), file="s.toml")
    assert [(one.number, one.text, one.when, one.reading, one.least, one.most) for one in found.steps] == [
        (1, "Warm the fats gently", "in the fats", None, None, None),
        (2, "Cook till it looks like mash", "cook", "cook temperature", 70_000, 80_000),
        (3, "Cook till it is clear", "cook", "cook temperature", None, 90_000),
    ]
    again = recipe_from(figures_text(found), name=found.name, code=found.code, process=found.process)
    assert again == found
    kept = json.loads(figures_text(found))
    del kept["steps"]  # as it was kept before there were any
    assert recipe_from(json.dumps(kept), name="", code="", process="hot").steps == ()


def test_they_stand_in_the_order_of_work_among_what_is_read_anyway() -> None:
    own = read_recipe(recipe(TOWEL, TRACE, STREAM, WARM, FRIDGE), file="s.toml").steps
    found = steps("cold", makes_lye=True, gives_bars=True, own=own)
    assert [one.label for one in found] == [
        "Bench, tools and moulds clean", "Scale reads the test weight", "Warm the fats gently", "Lye temperature",
        "Fats temperature", "Blend to trace", "Lye into the fats in a thin stream", "Emulsion after", "Poured at",
        "Weight in the mould", "Wrap the mould in a towel", "Unmoulded at", "Weight of the loaf",
        "Turn the loaf out on its side",
    ]  # fmt: skip
    assert [one.letter for one in found] == list("abcdefghijklmn")
    # of a dough that is divided, the pour is of the portions
    dough = steps("cold", makes_lye=True, gives_bars=False, own=own)
    portion = steps("portion", makes_lye=False, gives_bars=True, own=own)
    assert [one.label for one in dough if one.own] == [
        "Warm the fats gently", "Blend to trace", "Lye into the fats in a thin stream",
    ]  # fmt: skip
    assert [one.label for one in portion if one.own] == ["Wrap the mould in a towel", "Turn the loaf out on its side"]


def test_the_letters_go_on_after_z() -> None:
    own = read_recipe(recipe(*(step(f"Step {n}", "at the start") for n in range(1, 31))), file="s.toml").steps
    found = [one.letter for one in steps("cold", makes_lye=True, gives_bars=True, own=own)]
    assert found[25:28] == ["z", "aa", "ab"]
    assert len(set(found)) == len(found) == 40  # 30 of hers and 10


@pytest.mark.parametrize(
    ("part", "says"),
    [
        ('\n[[step]]\nwhen = "at trace"\n', 'text is missing; write text = "…".'),
        ('\n[[step]]\ntext = "Stir"\n', 'when is missing; write when = "…".'),
        (step("x" * 201, "at trace"), "this step has 201 letters; write two of 200 at the most."),
        (step("Stir", "at tea"), "when = 'at tea' is no time in the cold process; write one of \"in the fats\", "),
        (step("Stir", "in the cook"), "when = 'in the cook' is no time in the cold process"),
        (step("Stir", "at mixing", 'reading = "trce"\n'), "'trce' is nothing read at a step; did you mean trace?"),
        (step("Stir", "at mixing", 'reading = "bar weight"\n'), "'bar weight' is nothing read at a step; "),
        (step("Stir", "at mixing", 'reading = "step"\n'), "'step' is nothing read at a step; "),
        (TRACE + TRACE, "the trace is read once in a batch, and stands here a second time."),
        (
            step("Stir", "at mixing", "to = 5\n"),
            "to is a limit of a reading that is a figure; name it, or take to out.",
        ),
        (step("Stir", "at mixing", 'reading = "mixed"\nfrom = "9:00"\n'), "from is a limit of a reading that is a"),
        (step("Stir", "at mixing", 'reading = "trace"\nfrom = 9\nto = 8\n'), "from is the lower limit and to the"),
        (step("Stir", "at mixing", 'reading = "lye temperature"\nto = 50\n'), "50 degrees of which kind?"),
        (step("Stir", "at mixing", 'reading = "lye temperature"\nto = "500 C"\n'), "to = 500 C cannot be; look at"),
        (step("Stir", "at mixing", 'reading = "trace"\nto = []\n'), "[step]"),
        (step("Stir", "at mixing", "reading = 7\n"), "reading is a word, in quotes"),
        (step("Stir", "at mixing", "how = 7\n"), "'how' is not known here"),
    ],
)
def test_what_no_step_can_be_is_said_with_its_place(part: str, says: str) -> None:
    with pytest.raises(BadInput) as caught:
        read_recipe(recipe(part), file="s.toml")
    said = str(caught.value)
    assert says in said
    assert said.startswith("s.toml, line ")
    assert "\n" not in said


def test_two_hundred_letters_and_equal_limits_are_taken() -> None:
    part = step("x" * 200, "at mixing", 'reading = "trace"\nfrom = 8\nto = 8\n')
    assert [(one.least, one.most) for one in read_recipe(recipe(part), file="s.toml").steps] == [(8, 8)]


@pytest.mark.parametrize(
    ("process", "times"),
    [
        ("cold", "in the fats, with the lye, at trace, at the start, at mixing, at the pour, at unmoulding"),
        ("hot", "in the fats, with the lye, at trace, after the cook, at the start, at mixing, in the cook, at the "
                "pour, at unmoulding"),
        ("rebatch", "in the pot, at the start, in the cook, at the pour, at unmoulding"),
        ("infusion", "in the pot, at the start"),
        ("blend", "in the pot, at the start"),
    ],
)  # fmt: skip
def test_each_process_has_its_times(process: str, times: str) -> None:
    heads = {
        "rebatch": '[[rework]]\nmaterial = "offcuts"\ngrams = 400\n',
        "infusion": '[infusion]\nyields = "petal oil"\n[[part]]\nmaterial = "olive"\ngrams = 5\n',
        "blend": '[blend]\nyields = "mix"\n[[part]]\nmaterial = "olive"\ngrams = 5\n',
    }
    head = (
        f'name = "A"\ncode = "a"\nprocess = "{process}"\n{heads[process]}'
        if process in heads
        else recipe(process=process)
    )
    every = head + "".join(step("Stir", when) for when in times.split(", "))
    assert len(read_recipe(every, file="s.toml").steps) == len(times.split(", "))
    with pytest.raises(BadInput) as caught:
        read_recipe(head + step("Stir", "packing"), file="s.toml")
    assert str(caught.value).endswith("write one of " + ", ".join(f'"{one}"' for one in times.split(", ")) + ".")


def test_by_flag_they_are_ticked_and_answered_and_stand_on_the_record(shop: Shop, run: Any) -> None:
    code = batch(shop, WARM, FIRST, SECOND, process="hot")
    warm, first, second = (
        letter(shop, code, one)
        for one in ("Warm the fats gently", "Cook till it looks like mash", "Cook till it is clear")
    )
    run("batch", "log", code, "--line", f"{warm}=y", "--line", f"{second}=90 C")
    assert read_of(run, code) == [
        ("Warm the fats gently", "done", None, "Nuala"),
        ("Cook till it is clear (cook temperature)", "90.0 °C", "at most 90.0 °C", "Nuala"),
    ]
    not_logged = json.loads(run("batch", "show", code, "--json").stdout)["not_logged"]
    assert "Cook till it looks like mash" in not_logged
    assert "Warm the fats gently" not in not_logged
    # once; a correction keeps both
    said = flat(run("batch", "log", code, "--line", f"{warm}=n", code=1).stderr)
    assert f"The step 'Warm the fats gently' of batch {code} was booked already; to correct it, add --correct" in said
    run("batch", "log", code, "--line", f"{warm}=n", "--correct")
    said = flat(run("batch", "log", code, "--line", f"{first}=75 C", "--correct", code=1).stderr)
    assert "The step 'Cook till it looks like mash' of batch" in said
    assert [one[1] for one in read_of(run, code) if one[0].startswith("Warm")] == ["done", "not done"]
    assert "Warm the fats gently" in run("batch", "show", code).stdout


def test_a_tick_without_its_step_is_asked_for(shop: Shop, run: Any) -> None:
    code = batch(shop, WARM)
    said = flat(run("batch", "log", code, "--reading", "step=y", code=2).stderr)
    assert "Which step? Write its letter on the worksheet: --line 'd=yes'." in said


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("70 C", None),
        ("80 C", None),
        ("69.9 C", "Cook till it looks like mash: cook temperature 69.9 °C, 0.1 °C under 70.0 °C"),
        ("80.1 C", "Cook till it looks like mash: cook temperature 80.1 °C, 0.1 °C over 80.0 °C"),
        ("-", None),
    ],
)
def test_outside_its_limits_opens_a_deviation(shop: Shop, run: Any, typed: str, says: str | None) -> None:
    code = batch(shop, FIRST, SECOND, process="hot")
    run("batch", "log", code, "--line", f"{letter(shop, code, 'Cook till it looks like mash')}={typed}")
    found = json.loads(run("batch", "show", code, "--json").stdout)["deviations"]
    assert [flat(one["found"]) for one in found] == ([says] if says else [])


def test_a_correction_to_within_closes_the_deviation_of_its_step_alone(shop: Shop, run: Any) -> None:
    code = batch(shop, FIRST, SECOND, process="hot")
    first, second = (letter(shop, code, f"Cook till it {how}") for how in ("looks like mash", "is clear"))
    run("batch", "log", code, "--line", f"{first}=95 C", "--line", f"{second}=95 C")
    run("batch", "log", code, "--line", f"{first}=75 C", "--correct")
    found = json.loads(run("batch", "show", code, "--json").stdout)["deviations"]
    assert [(one["subject"], one["verdict"]) for one in found] == [("step 1", "corrected"), ("step 2", None)]


def test_a_reading_that_is_taken_anyway_is_taken_once_in_her_words(shop: Shop, run: Any) -> None:
    code = batch(shop, TRACE)
    run("batch", "log", code, "--reading", "trace=21 min")
    assert read_of(run, code) == [("Blend to trace (trace)", "21 min", "at most 20 min", "Nuala")]
    said = run("batch", "log", code, "--line", f"{letter(shop, code, 'Blend to trace')}=8 min", code=1).stderr
    assert "The step 'Blend to trace'" in said


def test_at_the_prompt_enter_never_ticks_a_step_in_her_words(shop: Shop, run: Any) -> None:
    code = batch(shop, WARM, STREAM, TRACE)
    typed = ["y", "", "600 g", "400 g", "", "y", "293.6 g", "146.8 g", "48 C", "48 C"]
    said = run("batch", "log", code, input="\n".join([*typed, "", "y", "25", "q"]) + "\n").stderr
    shown = flat(said)
    assert "c. Warm the fats gently (yes or no): Enter books" in shown.replace("no):Enter", "no): Enter")
    assert "Lye into the fats in a thin stream (yes or no)" in shown
    assert "Enter books nothing here now. Type y or n; s skips" in shown
    assert "Blend to trace (trace, at most 20 min; minutes; Enter: still open)" in shown
    assert "Outside: Blend to trace: trace 25 min, 5 min over 20 min." in shown
    assert [one[:2] for one in read_of(run, code) if "(" in one[0] or one[1] == "done"] == [
        ("Warm the fats gently", "done"),
        ("Lye into the fats in a thin stream", "done"),
        ("Blend to trace (trace)", "25 min"),
    ]


@pytest.mark.usefixtures("shop")
def test_a_recipe_without_steps_asks_what_it_always_did(run: Any, shop: Shop) -> None:
    plain = planned(shop.book)
    own = steps_of(shop.rows(), batch_of(shop.book, plain))
    assert "".join(one.letter for one in own) == "abcdefghij"
    assert not any(one.own for one in own)
    assert "what is done" not in run("recipe", "show", "plain").stdout


@pytest.mark.usefixtures("frozen")
def test_what_is_done_after_the_pour_is_of_its_own_day(shop: Shop, run: Any) -> None:
    code = batch(shop, FRIDGE, TOWEL)
    weighed(shop.book, code)  # on 6 May
    run("batch", "log", code, "--line", f"{letter(shop, code, 'Turn the loaf out on its side')}=y")
    run("batch", "log", code, "--line", f"{letter(shop, code, 'Wrap the mould in a towel')}=y")
    found = json.loads(run("batch", "show", code, "--json").stdout)["readings"]
    days = {one["what"]: one["on"] for one in found}
    assert days["Turn the loaf out on its side"] == "2026-06-01"
    assert days["Wrap the mould in a towel"] == MADE.isoformat()


def test_on_the_worksheet_and_the_sheet_in_order_and_not_scaled(shop: Shop, run: Any, read: Any) -> None:
    code = batch(shop, WARM, FIRST, process="hot")
    run("batch", "show", code, "--worksheet", "-o", "w.pdf")
    found = flat(read(Path("w.pdf").read_bytes()).text())
    assert found.index("Warm the fats gently") < found.index("sodium hydroxide") < found.index("Cook till it looks")
    assert "cook temperature, 70.0 °C to 80.0 °C" in found
    run("recipe", "print", "stepped", "-o", "r.pdf", "--fats", "2000 g")
    sheet = flat(read(Path("r.pdf").read_bytes()).text())
    assert sheet.index("Warm the fats gently") < sheet.index("sodium hydroxide")
    assert "Cook till it looks like mash (cook temperature, 70.0 °C to 80.0 °C)" in sheet
    said = flat(run("recipe", "show", "stepped", "--fats", "2000 g").stdout)
    assert "in the cook Cook till it looks like mash (cook temperature, 70.0 °C to 80.0 °C)" in said


def test_a_revision_that_changes_them_says_so_and_batches_keep_theirs(shop: Shop, run: Any) -> None:
    code = batch(shop, WARM)
    Path("s.toml").write_text(recipe(STREAM, TOWEL), encoding="utf-8")
    said = flat(run("recipe", "revise", "stepped", "s.toml").stdout)
    assert "step 1: in the fats, Warm the fats gently → at mixing, Lye into the fats in a thin stream" in said
    assert "step 2: not given → at the pour, Wrap the mould in a towel" in said
    mine = steps_of(shop.rows(), batch_of(shop.book, code))
    assert [one.label for one in mine if one.own] == ["Warm the fats gently"]


def test_in_the_cook_hers_come_before_its_end_and_from_a_second_stage_on_after_it() -> None:
    start, end = (step(f"Again {way}", "in the cook", f'reading = "second cook {way}"\n') for way in ("start", "end"))
    own = read_recipe(recipe(step("Stir", "in the cook"), start, end, process="hot"), file="s.toml").steps
    found = [one.label for one in steps("hot", makes_lye=True, gives_bars=True, own=own) if one.when == "cook"]
    assert found == [
        "Pot with the dough", "Cook from", "Check in the cook", "Stir", "Cook to", "Again start", "Again end",
        "Pot after the cook", "Before the fragrance goes in",
    ]  # fmt: skip


def test_a_long_step_keeps_to_the_screen_and_stands_in_full_on_paper(shop: Shop, run: Any, read: Any) -> None:
    long = " ".join(["stirring"] * 22)  # 197 letters
    code = batch(shop, step(long, "at trace"))
    run("batch", "log", code, "--line", f"{letter(shop, code, long)}=y")
    for words in (("recipe", "show", "stepped"), ("batch", "show", code)):
        assert max(len(line) for line in run(*words).stdout.splitlines()) <= 80
    assert long in flat(run("recipe", "show", "stepped").stdout)
    run("batch", "show", code, "-o", "r.pdf")
    assert long in flat(read(Path("r.pdf").read_bytes()).text())


def test_a_portion_asks_for_what_is_done_at_its_pour(shop: Shop, run: Any) -> None:
    halves = "".join(f'\n[[portion]]\nname = "{name}"\npercent = 50\nbars = 5\n' for name in ("one", "two"))
    text = recipe(WARM, TOWEL, halves).replace("bars = 10\n", "")
    add_recipe(shop.book, text, file="s.toml")
    whole = planned(shop.book, "stepped")
    first = portions_of(shop.rows(), batch_of(shop.book, whole).id)[0].code
    assert [one.label for one in steps_of(shop.rows(), batch_of(shop.book, whole)) if one.own] == [
        "Warm the fats gently"
    ]
    own = [one for one in steps_of(shop.rows(), batch_of(shop.book, first)) if one.own]
    assert [one.label for one in own] == ["Wrap the mould in a towel"]
    run("batch", "log", first, "--line", f"{own[0].letter}=y")
    assert [one[:2] for one in read_of(run, first)] == [("Wrap the mould in a towel", "done")]
