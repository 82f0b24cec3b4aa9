"""What two commits say of the same season: screens, JSON and papers beside each other, byte for byte.

    python tests/benchmarks/compare.py REV1 REV2 [--help-too] [--only NOUN ...] [--keep DIR] [--lines 8]

Each commit is checked out as a worktree of its own ('.' is this checkout as it stands), plays `demo` with the clock
standing still and the salts drawn from a seed, and asks every reading command of every code in the season (see
screens.py). Exit 1 when anything differs. The product draws every PDF with reportlab's `invariant`, so papers are
compared by their bytes; where those differ, it is said whether their text and the pictures of their pages differ too.
"""

import argparse
import difflib
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import pypdfium2

HERE = Path(__file__).parents[2]
SCREENS = Path(__file__).with_name("screens.py")


def checkout(rev: str, folder: Path) -> Path:
    """A worktree of a commit; this checkout for '.'."""
    if rev == ".":
        return HERE
    subprocess.run(["git", "-C", str(HERE), "worktree", "add", "-q", "--detach", str(folder), rev], check=True)
    return folder


def play(tree: Path, out: Path, more: list[str]) -> subprocess.Popen[bytes]:
    """Start one commit writing down all it says."""
    environment = {**os.environ, "PYTHONPATH": str(tree), "PYTHONHASHSEED": "0", "TZ": "UTC"}
    return subprocess.Popen([sys.executable, str(SCREENS), str(tree), str(out), *more], env=environment)


def files(folder: Path) -> dict[str, bytes]:
    """Every file below a folder; the ledger itself is not a paper."""
    found = sorted(path for path in folder.rglob("*") if path.is_file() and path.suffix != ".db")
    return {str(path.relative_to(folder)): path.read_bytes() for path in found}


def pages(paper: bytes) -> tuple[str, list[bytes]]:
    """The text of a PDF and the pictures of its pages."""
    document = pypdfium2.PdfDocument(paper)
    text = "\n".join(page.get_textpage().get_text_range() for page in document)
    return text, [page.render(scale=2).to_pil().tobytes() for page in document]


def difference(name: str, one: bytes, other: bytes, lines: int) -> str:
    """What differs in a file, in so many lines at most."""
    if name.endswith(".pdf"):
        (text, pictures), (other_text, other_pictures) = pages(one), pages(other)
        said = "its text differs" if text != other_text else "its text is the same"
        seen = "its pages look different" if pictures != other_pictures else "its pages look the same"
        return f"{name}: {said}, {seen}" + shown(text, other_text, lines)
    return name + shown(one.decode("utf-8", "replace"), other.decode("utf-8", "replace"), lines)


def shown(one: str, other: str, lines: int) -> str:
    """The lines that differ."""
    found = [
        line
        for line in difflib.unified_diff(one.splitlines(), other.splitlines(), lineterm="", n=0)
        if line[:1] in "+-" and line[:3] not in ("+++", "---")
    ]
    more = [f"    … and {len(found) - lines} lines more"] if len(found) > lines else []
    return "".join(f"\n{line}" for line in [*(f"    {line}" for line in found[:lines]), *more])


def compare(one: dict[str, bytes], other: dict[str, bytes], lines: int) -> list[str]:
    """Every file that stands on one side alone, or reads differently."""
    found = [f"{name}: only in the first" for name in one if name not in other]
    found += [f"{name}: only in the second" for name in other if name not in one]
    both = [name for name in one if name in other and one[name] != other[name]]
    return found + [difference(name, one[name], other[name], lines) for name in both]


def main() -> int:
    """Play both commits, print what differs, and say so with the exit code."""
    parser = argparse.ArgumentParser(description="What two commits say of the same season.")
    parser.add_argument("revs", nargs=2, metavar="REV")
    parser.add_argument("--help-too", action="store_true", help="also what every command says of itself")
    parser.add_argument("--only", nargs="+", default=[], metavar="NOUN", help="only what these are asked")
    parser.add_argument("--keep", type=Path, help="keep what both said in this folder")
    parser.add_argument("--lines", type=int, default=8, help="lines shown of each difference")
    asked = parser.parse_args()
    room = Path(tempfile.mkdtemp(prefix="soapledger-compare-"))
    more = [*(["--help-too"] if asked.help_too else []), *(["--only", *asked.only] if asked.only else [])]
    made = []
    try:
        outs = [room / "said-1", room / "said-2"]
        running = []
        for number, rev in enumerate(asked.revs):
            made.append(checkout(rev, room / f"tree-{number + 1}"))
            running.append(play(made[-1], outs[number], more))
        codes = [one.wait() for one in running]
        if any(codes):
            print(f"A commit could not be played to its end (exit {codes}).")
            return 2
        one, other = files(outs[0]), files(outs[1])
        found = compare(one, other, asked.lines)
        if asked.keep:
            for out in outs:
                shutil.copytree(out, asked.keep / out.name, dirs_exist_ok=True)
    finally:
        for tree in made:
            if tree != HERE:
                subprocess.run(["git", "-C", str(HERE), "worktree", "remove", "--force", str(tree)], check=False)
        shutil.rmtree(room, ignore_errors=True)
    papers = sum(name.endswith((".pdf", ".ics", ".csv")) for name in one)
    print("\n".join(found))
    print(f"{len(one)} files of {asked.revs[0]} ({papers} of them papers), {len(found)} differ from {asked.revs[1]}.")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
