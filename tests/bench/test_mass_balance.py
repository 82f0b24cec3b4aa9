"""What went into a batch and came out of it again, worked out by hand."""

from ledger.domain.bench.mass_balance import MassBalance


def test_all_that_was_weighed_out_and_the_water_cooked_off_is_accounted_for() -> None:
    """1500 g in: 120 g cooked off, 1290 g of bars, 60 g of offcuts and 20 g of waste leave 10 g, 6 667 ppm of it."""
    made = MassBalance(1_500_000, 120_000, 1_380_000, 1_370_000, 1_290_000, 60_000, 20_000)
    assert (made.loss_mg, made.loss_ppm) == (10_000, 6_667)
    assert MassBalance(1_500_000, None, None, None, 1_290_000).loss_mg == 210_000


def test_nothing_is_said_of_a_loss_while_nothing_came_out() -> None:
    poured = MassBalance(1_500_000, 120_000, 1_380_000)
    assert (poured.loss_mg, poured.loss_ppm) == (None, None)
    assert MassBalance(0, out_mg=0).loss_ppm is None
