"""What a rehearsed recall found, in words: how long it took, and whether it adds up."""

from ledger.units.wording import count
from ledger.views.recall.recall import RecallAnswer
from ledger.views.recall.recall_words import grams_words


def rehearsed_words(answer: RecallAnswer, took_ms: int) -> str:
    """Answered in 0.04 s: 3 batches, 71 bars made, 71 told of, none unexplained; and each lot's own sum."""
    bars = [one for one in answer.batches if one.yields_bars]
    off = sum(abs(one.unexplained) for one in answer.differences)
    known = answer.totals.made - answer.totals.unexplained
    said = (
        f"Answered in {max(took_ms, 10) / 1000:.2f} s: {count(len(bars), 'batch', 'batches')}, "
        f"{count(answer.totals.made, 'bar')} made, {known} told of, {off or 'none'} unexplained; "
        f"{count(len(answer.call), 'telephone call')}."
    )
    return " ".join([said, *(f"Lot {one.lot_code}: {grams_words(one, answer.units)}." for one in answer.lots)])
