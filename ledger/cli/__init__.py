"""One file per noun: parse, call one operation or view, show the answer."""
