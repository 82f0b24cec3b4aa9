"""The currencies a ledger may be kept in, with how many decimals each has."""

# ISO 4217, list one. The codes as the iso-codes project publishes them (in pycountry 26.2.16, read 2026-11-28; a test
# compares), their minor units as OpenJDK 17.0.15 ships them (java.util.Currency, read 2026-11-28). Left out: units of
# account, funds, metals and codes for tests, in which nobody is paid.
_OF_DECIMALS = {
    0: """
        BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF
    """,
    2: """
        AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY
        COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF
        IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR
        MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG
        SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VED VES
        WST XCD XCG YER ZAR ZMW ZWG
    """,
    3: """
        BHD IQD JOD KWD LYD OMR TND
    """,
}
# Withdrawn, but a ledger begun before may be kept in it: Bulgaria took the euro on 2026-01-01 (OpenJDK, as above).
_WITHDRAWN = {"BGN": 2}

_CURRENT = {code: number for number, codes in _OF_DECIMALS.items() for code in codes.split()}
DECIMALS: dict[str, int] = _CURRENT | _WITHDRAWN

# What is written beside an amount for a currency, in small letters: the currency signs of Unicode (block 20A0, and $,
# £, ¥) and the abbreviations in daily use where they are known to us (common practice, from memory, unverified). One
# sign may be that of several; it is read as the ledger's own where it is one of them.
SIGNS: dict[str, tuple[str, ...]] = {
    sign: tuple(codes.split())
    for sign, codes in {
        "€": "EUR",
        "£": "GBP EGP FKP GIP SHP SSP SYP LBP SDG",
        "$": "USD AUD CAD NZD SGD HKD TWD MXN ARS CLP COP UYU BSD BBD BMD BND BZD CVE DOP FJD GYD JMD KYD LRD NAD NIO "
        "SBD SRD TTD XCD",
        "us$": "USD",
        "a$": "AUD",
        "c$": "CAD",
        "nz$": "NZD",
        "r$": "BRL",
        "¥": "JPY CNY",
        "₹": "INR",
        "₺": "TRY",
        "₴": "UAH",
        "₽": "RUB",
        "₩": "KRW KPW",
        "₪": "ILS",
        "₫": "VND",
        "₱": "PHP",
        "₦": "NGN",
        "₵": "GHS",
        "₡": "CRC",
        "₲": "PYG",
        "₸": "KZT",
        "₭": "LAK",
        "₮": "MNT",
        "₼": "AZN",
        "₾": "GEL",
        "kr": "SEK NOK DKK ISK",
        "kr.": "SEK NOK DKK ISK",
        "zł": "PLN",
        "kč": "CZK",
        "ft": "HUF",
        "fr.": "CHF",
        "sfr.": "CHF",
        "лв": "BGN",
        "лв.": "BGN",
    }.items()
}
