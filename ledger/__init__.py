"""soapledger: the records of one person who makes soap by hand and sells it."""

__version__ = "0.1.0"
