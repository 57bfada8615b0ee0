"""Write the manual pages: `python -m bathwright.rules docs/rules`."""

import sys
from pathlib import Path

from bathwright.rules import BY_CODE, page


def main(folder: Path) -> None:
    """Write one page a rule into the folder, and take pages away that have no rule."""
    folder.mkdir(parents=True, exist_ok=True)
    for old in folder.glob("*.md"):
        if old.stem not in BY_CODE:
            old.unlink()
    for code in BY_CODE:
        (folder / f"{code}.md").write_text(page(code) or "", encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
