"""The net quantity as it is printed; conversions are cut off, never rounded up."""

from fractions import Fraction

# 16 CFR 500.8 and 500.9 (2015 edition, read): 1 oz = 28.3495 g "and none others".
_OUNCE_MG = Fraction("28349.5")


def metric(net_mg: int) -> str:
    """Grams, whole where they are: 100 g, 99.5 g."""
    grams = Fraction(net_mg, 1000)
    tenths = net_mg // 100
    return f"{int(grams)} g" if grams.denominator == 1 else f"{tenths // 10}.{tenths % 10} g"


def dual(net_mg: int) -> str:
    """Ounces to two decimals with grams behind, both cut off (16 CFR 500.6-500.9, 500.19; read, 2015)."""
    hundredths = int(net_mg * 100 / _OUNCE_MG)
    ounces = f"{hundredths // 100}.{hundredths % 100:02d}".rstrip("0").rstrip(".")
    grams = net_mg // 1000 if net_mg >= 100_000 else Fraction(net_mg // 100, 10)
    shown = f"{float(grams):g}"
    return f"Net Wt {ounces} oz ({shown} g)"
