"""What marks a file as a soapledger file, and which version of its schema this program knows."""

APPLICATION_ID = 0x50AB1ED6
SCHEMA_VERSION = 1
