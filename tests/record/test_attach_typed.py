"""attach and attachments at the command line."""

import hashlib
import json
from pathlib import Path
from typing import Any

import pytest

pytestmark = pytest.mark.usefixtures("frozen")
PAPER = b"%PDF-1.4 saponification value 188.4"
DIGEST = hashlib.sha256(PAPER).hexdigest()


@pytest.fixture
def paper(tmp_path: Path) -> str:
    """A certificate in the folder where the commands run."""
    (tmp_path / "coa.pdf").write_bytes(PAPER)
    return "coa.pdf"


def test_a_paper_is_kept_listed_and_comes_out_as_it_went_in(shop: Any, run: Any, paper: str, tmp_path: Path) -> None:
    done = run("attach", paper, "--to", shop.olive, "--kind", "CoA").stdout
    assert done == f"coa.pdf is kept with lot {shop.olive} (SHA-256 {DIGEST[:12]}).\n"
    listed = run("attachments", shop.olive).stdout
    assert listed.startswith(f"1 paper kept with lot {shop.olive}.")
    assert "CoA" in listed
    saved = run("attachment", "save", DIGEST[:12], "-o", "again.pdf").stdout
    assert saved == f"Saved again.pdf, the same as it was kept (SHA-256 {DIGEST[:12]}).\n"
    assert (tmp_path / "again.pdf").read_bytes() == PAPER


def test_json_has_the_whole_digest(shop: Any, run: Any, paper: str) -> None:
    run("attach", paper, "--to", "plain-bar")
    (one,) = json.loads(run("attachments", "--json").stdout)
    assert (one["noun"], one["code"], one["bytes"], one["sha256"]) == ("recipe", "plain-bar", len(PAPER), DIGEST)
    assert run("attachments", shop.olive).stdout.startswith(f"No paper is kept with lot {shop.olive} yet.")


def test_saving_overwrites_nothing_unasked_and_needs_a_name(shop: Any, run: Any, paper: str) -> None:
    run("attach", paper, "--to", shop.olive)
    assert "--force" in run("attachment", "save", DIGEST, "-o", paper, code=2).stderr
    run("attachment", "save", DIGEST, "-o", paper, "--force")
    assert "-o" in run("attachment", "save", DIGEST, code=2).stderr


def test_what_cannot_be_attached_is_said_in_one_line(shop: Any, run: Any, paper: str, tmp_path: Path) -> None:
    assert "cannot be read" in run("attach", "none.pdf", "--to", shop.olive, code=2).stderr
    assert "is a folder" in run("attach", str(tmp_path), "--to", shop.olive, code=2).stderr
    wrong = shop.batch[:-1] + ("1" if shop.batch[-1] != "1" else "2")
    assert f"it would be {shop.batch}" in run("attach", paper, "--to", wrong, code=1).stderr
    run("attach", paper, "--to", shop.batch)
    assert "already, as coa.pdf" in run("attach", paper, "--to", shop.batch, code=1).stderr
