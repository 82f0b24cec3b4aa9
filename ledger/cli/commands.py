"""Every command there is, in the order of the work: the words that call it, the subject it lies in, one line of help.

The command `batch plan` of the subject `bench` is the function `command` of `ledger/cli/bench/batch_plan.py`. A new
command is one line here and that file.
"""

from typing import NamedTuple


class Listed(NamedTuple):
    """One command, or a group of commands, as a list of them shows it."""

    subject: str  # the folder its file lies in
    line: str


# By the headings that the help is ordered under.
WORK: dict[str, dict[str, Listed]] = {
    "Set up": {
        "init": Listed("house", "Start a ledger in this folder, or change its settings"),
        "demo": Listed("season", "Play the season of an invented soapworks into DIR"),
        "supplier": Listed("people", "Who you buy from, and your own garden"),
        "supplier add": Listed("people", "Add a supplier"),
        "supplier edit": Listed("people", "Change what is known of a supplier"),
        "supplier list": Listed("people", "List the suppliers with their telephone numbers"),
        "supplier show": Listed("people", "Show one supplier, how to reach it"),
        "supplier erase": Listed("people", "Erase whom to ask for at a supplier"),
        "customer": Listed("people", "The shops and people your bars go to"),
        "customer add": Listed("people", "Add a customer"),
        "customer edit": Listed("people", "Change what is known of a customer"),
        "customer list": Listed("people", "List the customers and how many bars each has"),
        "customer show": Listed("people", "Show one customer and how to reach them"),
        "customer erase": Listed("people", "Erase a customer's details, and whatever names the person, for good"),
        "material": Listed("material", "Fats, lye, essential oils, wrappers and the rest"),
        "material add": Listed("material", "Add a material"),
        "material edit": Listed("material", "Change what is known of a material"),
        "material contains": Listed("material", "State what an oil or fragrance contains"),
        "material means": Listed("material", "Say what a name in a statement is"),
        "material peroxide": Listed("material", "State the peroxide value of an oil"),
        "material limit": Listed("material", "State how much a certificate allows on the skin"),
        "material list": Listed("material", "List the materials"),
        "material show": Listed("material", "Show one material, each figure with where it comes from"),
        "equipment": Listed("tools", "Scales, thermometers, pH meters"),
        "equipment add": Listed("tools", "Add an item"),
        "equipment edit": Listed("tools", "Change what is known of an item, or retire it"),
        "equipment list": Listed("tools", "List the scales, thermometers and pH meters"),
        "equipment show": Listed("tools", "Show one item with its checks"),
        "equipment check": Listed("tools", "Book what an item showed against something known"),
        "recipe": Listed("recipe", "Your recipes, small text files"),
        "recipe add": Listed("recipe", "Add a recipe from its file"),
        "recipe revise": Listed("recipe", "Book the next version of a recipe from its changed file"),
        "recipe list": Listed("recipe", "List the recipes"),
        "recipe show": Listed("recipe", "Show a recipe worked out in grams"),
        "recipe scale": Listed("recipe", "Scale a recipe to a mould, to so many bars"),
        "recipe print": Listed("recipe", "Print a recipe as a sheet of one page"),
        "recipe assess": Listed("release", "Book the safety assessment of a product"),
        "recipe word": Listed("record", "Book the assessor's word on what the report does not name"),
        "recipe assessment": Listed("release", "Lay a recipe or a batch beside its safety assessment"),
    },
    "Stock": {
        "receive": Listed("stock", "Book a delivery as new lots"),
        "stock": Listed("stock", "Show what is on hand, first to expire first"),
        "lot": Listed("stock", "One lot: what is known of it, and what you decide"),
        "lot show": Listed("stock", "Show one lot: where it came from"),
        "lot accept": Listed("stock", "Accept lots that were looked at"),
        "lot reject": Listed("stock", "Reject lots: they are kept apart"),
        "lot hold": Listed("stock", "Put lots, or the bars of a batch, on hold"),
        "lot count": Listed("stock", "Book what a count or a weighing of the container found"),
        "lot waste": Listed("stock", "Book what was spilt, spoilt or thrown away"),
        "lot label": Listed("label", "Print labels for jars, drums and rolls, with their status"),
        "lot combine": Listed("stock", "Pour lots of one material together"),
    },
    "Make": {
        "batch": Listed("bench", "A batch, from the plan to the cut"),
        "batch plan": Listed("bench", "Plan a batch from the lots in hand and print its worksheet"),
        "batch log": Listed("bench", "Log what was weighed and read, line by line"),
        "batch correct": Listed("bench", "Say what can be done about a wrong weight"),
        "batch divide": Listed("bench", "Divide the dough at trace into its portions"),
        "batch cut": Listed("bench", "Book the bars cut from a loaf"),
        "batch strain": Listed("bench", "End an infusion: book the oil strained off"),
        "batch fill": Listed("bench", "End a blend of fats or a stock lye"),
        "batch note": Listed("bench", "Note what was seen or went wrong"),
        "batch decide": Listed("bench", "Decide about a deviation"),
        "batch discard": Listed("bench", "Give up a batch before it is cut"),
        "batch list": Listed("bench", "List the batches, the latest last"),
        "batch show": Listed("record", "Show the record of a batch, or print it"),
        "cure": Listed("cure", "The cure rack: what is ready, what has days to go"),
        "cure list": Listed("cure", "List the batches on the rack, the first ready first"),
        "cure weigh": Listed("cure", "Book what marked bars weigh"),
        "cure show": Listed("cure", "Show how the bars of a batch dry"),
        "cure calendar": Listed("cure", "Write the days of the rack as a calendar file"),
        "pass": Listed("release", "Pass cured bars for packing"),
        "release": Listed("release", "Release packed bars, by name: only then may they leave"),
        "samples": Listed("release", "List the retained samples"),
        "reject": Listed("release", "Reject the bars of a batch"),
        "rework": Listed("release", "Book rejected bars back in by weight, on hold, for a rebatch"),
    },
    "Sell": {
        "label": Listed("label", "Labels: what they say, and printing them"),
        "label check": Listed("label", "Check what a label says, particular by particular"),
        "label approve": Listed("label", "Approve, by name, what the label of a batch says"),
        "label band": Listed("label", "Approve, by name, what stands on bands that a printer made"),
        "label block": Listed("label", "Write the law's text of an approved label as outlines"),
        "label try": Listed("label", "Print one label in each layout on three sheets, to choose from"),
        "label print": Listed("label", "Print a sheet of labels"),
        "label reprint": Listed("label", "Print more labels of an earlier run"),
        "label runs": Listed("label", "List the print runs"),
        "label count": Listed("label", "Book back the labels spoiled and unused"),
        "label bare": Listed("label", "Settle once, by name, that a product is sold without a label"),
        "label due": Listed("label", "List stock whose printed label stops being usable"),
        "label ticket": Listed("label", "Print price cards"),
        "label rack": Listed("label", "Print a card for the curing rack"),
        "label try-sheet": Listed("label", "Print the outlines of a sheet"),
        "stall": Listed("sell", "A market stall"),
        "stall add": Listed("sell", "Add a stall"),
        "stall out": Listed("sell", "Take released bars to a stall"),
        "stall back": Listed("sell", "Close a stall day: say what came back of each batch"),
        "stall list": Listed("sell", "List the stalls and what stands at each"),
        "dispatch": Listed("sell", "Send released bars to a shop or a person"),
        "return": Listed("sell", "Book bars that came back, on the returns shelf"),
        "resell": Listed("sell", "Put bars from the returns shelf back on sale"),
        "gift": Listed("sell", "Give released bars away"),
        "cost": Listed("cost", "Show what a batch cost, lot by lot"),
    },
    "Answer": {
        "trace": Listed("recall", "Go back from the code on a bar to every supplier's lot"),
        "recall": Listed("recall", "A lot or a bar is bad: which bars, where, whom to call"),
        "recall of": Listed("recall", "Answer for anything, several at once"),
        "recall lot": Listed("recall", "Answer for one or several lot numbers"),
        "recall bar": Listed("recall", "Answer for the batch of a bar"),
        "recall open": Listed("recall", "Open a recall and hold all that is here"),
        "recall show": Listed("recall", "Show a recall as it stands, or print its report"),
        "recall list": Listed("recall", "List the recalls, open, closed and rehearsed"),
        "recall note": Listed("recall", "Note who was told, what came back, what was done"),
        "recall notice": Listed("recall", "Draft a notice for a customer, a shop or a stall"),
        "recall close": Listed("recall", "Close a recall, by name, with its conclusion"),
        "recall rehearse": Listed("recall", "Rehearse a recall, as the yearly exercise"),
        "complaint": Listed("complaint", "What customers report"),
        "complaint add": Listed("complaint", "Book a complaint"),
        "complaint note": Listed("complaint", "Note what was done about a complaint"),
        "complaint close": Listed("complaint", "Close a complaint"),
        "complaint list": Listed("complaint", "List the complaints, open and closed"),
        "complaint show": Listed("complaint", "Show one complaint with who reported it"),
        "complaint erase": Listed("complaint", "Erase who reported it and what was said"),
    },
    "Keep": {
        "attach": Listed("record", "Keep a certificate, safety sheet or photograph"),
        "attachments": Listed("record", "List the papers kept with something"),
        "attachment": Listed("record", "One paper kept in the ledger"),
        "attachment save": Listed("record", "Save one kept paper as a file"),
        "upkeep": Listed("tools", "Cleaning, training, supplier approval, self-inspection"),
        "upkeep add": Listed("tools", "Note what was done"),
        "upkeep list": Listed("tools", "List what was done, with what is due or overdue first"),
        "check": Listed("keep", "Prove that nothing in the ledger was changed or lost"),
        "seal": Listed("keep", "Print a few signs that prove later what the ledger held"),
        "undo": Listed("keep", "Take back an entry by another one; both stay to be read"),
        "history": Listed("keep", "List what was written, entry by entry, the latest last"),
        "backup": Listed("keep", "Copy the whole ledger and check the copy"),
        "archive": Listed("keep", "Write the whole ledger as a folder that needs no program"),
        "restore": Listed("keep", "Make the ledger again from a copy, in a new file"),
    },
}
EVERY: dict[str, Listed] = {words: one for lines in WORK.values() for words, one in lines.items()}


def inside(group: str) -> tuple[str, ...]:
    """The words that follow those of a group; of the empty one, what stands on the root."""
    start = f"{group} " if group else ""
    return tuple(
        words.removeprefix(start) for words in EVERY if words.startswith(start) and " " not in words[len(start) :]
    )
