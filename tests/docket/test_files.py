"""Files that are no dockets: one clear report each."""

from __future__ import annotations

from pathlib import Path

import pytest

from tapeline.docket import read_docket
from tapeline.docket.file import MOST_BYTES
from tapeline.problems import InputError

DOCKET = '[wearer]\nname = "Mârit"\nfigure = "woman"\nsize = "88"\n'


def refused(path: Path) -> tuple[str, str]:
    """Code and words of the one problem with a file."""
    with pytest.raises(InputError) as error:
        read_docket(path)
    assert len(error.value.problems) == 1
    assert error.value.problems[0].hint.endswith("Nothing was drafted.")
    return error.value.problems[0].code, error.value.problems[0].says


@pytest.mark.parametrize(
    ("data", "code", "says"),
    [
        pytest.param(b"", "docket-empty", "is empty", id="empty"),
        pytest.param(b"# nothing\n\n", "docket-empty", "is empty", id="remarks only"),
        pytest.param(b"Dear Marit,\n", "docket-not-toml", "line 1 is not TOML", id="a letter"),
        pytest.param(b"x = \x00\x01\x02", "docket-not-text", "is not text", id="binary"),
        pytest.param(b"\x89PNG\r\n\x1a\n\xff", "docket-not-text", "byte 0x89 in line 1", id="a picture"),
        pytest.param(DOCKET.encode("latin-1"), "docket-not-text", "byte 0xe2 in line 2", id="latin-1"),
        pytest.param(DOCKET.encode("utf-16"), "docket-not-text", "UTF-16", id="utf-16"),
        pytest.param(b"#" * (MOST_BYTES + 1), "docket-too-large", "larger than 256 kB", id="large"),
        pytest.param(b"a = " + b"[" * 9000 + b"]" * 9000, "docket-too-deep", "without end", id="deep lists"),
        pytest.param(b"a = " + b"{a=" * 9000 + b"1" + b"}" * 9000, "docket-too-deep", "without end", id="deep tables"),
        pytest.param(b"a = 1\na = 2\n", "docket-not-toml", "cannot overwrite", id="a key twice"),
        pytest.param(b"a = " + b"9" * 5000, "docket-not-toml", "thousands of digits", id="a number without end"),
        pytest.param(b'a = "never closed\n', "docket-not-toml", "line 1 is not TOML", id="an open quote"),
    ],
)
def test_what_is_no_docket_is_refused(tmp_path: Path, data: bytes, code: str, says: str) -> None:
    """Whatever the bytes, the report says what they are not, and what to do."""
    path = tmp_path / "a.toml"
    path.write_bytes(data)
    found, words = refused(path)
    assert found == code
    assert says in words


def test_a_file_that_is_not_there_is_answered_with_its_neighbours(tmp_path: Path) -> None:
    """The folder's dockets are named: one of them was probably meant."""
    (tmp_path / "marit.toml").write_text(DOCKET, encoding="utf-8")
    with pytest.raises(InputError) as error:
        read_docket(tmp_path / "merit.toml")
    assert error.value.problems[0].code == "docket-missing"
    assert "marit.toml" in error.value.problems[0].hint


def test_a_folder_is_refused(tmp_path: Path) -> None:
    """A folder is called a folder."""
    code, says = refused(tmp_path)
    assert (code, says) == ("docket-is-folder", f"{tmp_path} is a folder, not a docket")


def test_an_unreadable_file_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without the right to read it, that is what is said (the right is taken away for the test: root has it always)."""
    path = tmp_path / "a.toml"
    path.write_text(DOCKET, encoding="utf-8")

    def no(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", no)
    code, says = refused(path)
    assert (code, says) == ("docket-unreadable", f"{path} cannot be read: permission denied")


def test_a_name_that_no_file_can_have_is_refused() -> None:
    """A zero byte in a name is no fault of ours."""
    assert refused(Path("a\0.toml"))[0] == "docket-unreadable"


@pytest.mark.parametrize(
    "data",
    [
        pytest.param(b"\xef\xbb\xbf" + DOCKET.encode(), id="byte order mark"),
        pytest.param(DOCKET.replace("\n", "\r\n").encode(), id="carriage returns"),
        pytest.param(DOCKET.rstrip("\n").encode(), id="no end of line"),
    ],
)
def test_what_editors_add_is_passed_over(tmp_path: Path, data: bytes) -> None:
    """A mark in front, or other ends of lines, make no difference."""
    path = tmp_path / "a.toml"
    path.write_bytes(data)
    assert read_docket(path).wearer.name == "Mârit"
