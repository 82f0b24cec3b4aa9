"""Writing a document: whole or not at all."""

from pathlib import Path

import pytest

from ledger.documents.kit.files import write_file
from ledger.errors import BadInput


def test_an_existing_file_is_kept_unless_forced(tmp_path: Path) -> None:
    path = tmp_path / "record.pdf"
    write_file(path, b"first", force=False)
    with pytest.raises(BadInput, match=r"record\.pdf exists already; .*--force"):
        write_file(path, b"second", force=False)
    assert path.read_bytes() == b"first"
    write_file(path, b"second", force=True)
    assert [one.name for one in tmp_path.iterdir()] == ["record.pdf"]
    assert path.read_bytes() == b"second"


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="There is no folder"):
        write_file(tmp_path / "none" / "record.pdf", b"", force=False)
