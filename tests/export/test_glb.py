"""The glTF file, read back from the specification alone: header, chunks, accessors (Khronos, glTF 2.0)."""

from __future__ import annotations

import json
import struct
from typing import Any

import numpy as np
import pytest

from tapeline.export.glb import glb
from tapeline.export.solid import Drawn, Solid

KINDS: dict[int, np.dtype[Any]] = {5125: np.dtype("<u4"), 5126: np.dtype("<f4")}
WIDTHS = {"SCALAR": 1, "VEC3": 3, "VEC4": 4}


def tetrahedron() -> Solid:
    """Four corners 100 mm along the axes, each of its own colour, with a line along an edge."""
    vertices = np.array([[0.0, 0, 0], [100, 0, 0], [0, 100, 0], [0, 0, 100]])
    triangles = np.array([[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3]])
    colours = np.array([[255, 0, 0], [0, 255, 0], [0, 0, 255], [10, 20, 30]], np.uint8)
    return Solid("body", vertices, triangles, colours, (Drawn("edge", vertices[:2], (255, 255, 255)),))


def read(data: bytes) -> tuple[dict[str, Any], list[np.ndarray[Any, Any]]]:
    """The table of a GLB file, and its arrays."""
    magic, version, size = struct.unpack_from("<4sII", data)
    assert (magic, version, size) == (b"glTF", 2, len(data))
    length, kind = struct.unpack_from("<I4s", data, 12)
    assert kind == b"JSON"
    table = json.loads(data[20 : 20 + length])
    binary, kind = struct.unpack_from("<I4s", data, 20 + length)
    assert kind == b"BIN\0"
    assert (length % 4, binary % 4) == (0, 0)
    body = data[28 + length :]
    assert len(body) == binary == table["buffers"][0]["byteLength"]
    arrays = []
    for accessor in table["accessors"]:
        view = table["bufferViews"][accessor["bufferView"]]
        assert view["byteOffset"] % 4 == 0
        raw = body[view["byteOffset"] : view["byteOffset"] + view["byteLength"]]
        values = np.frombuffer(raw, KINDS[accessor["componentType"]]).reshape(-1, WIDTHS[accessor["type"]])
        assert len(values) == accessor["count"]
        arrays.append(values)
    return table, arrays


def seen(light: np.ndarray[Any, Any]) -> np.ndarray[Any, Any]:
    """Amounts of light, as which glTF has colours of corners (3.9.2), as the eye sees them (IEC 61966-2-1)."""
    return np.where(light <= 0.0031308, light * 12.92, 1.055 * light.astype(float) ** (1 / 2.4) - 0.055)


def test_a_solid_comes_back() -> None:
    """Corners in metres, triangles, colours and outward normals are what was written; the ends are said."""
    solid = tetrahedron()
    table, arrays = read(glb([solid]))
    part = table["meshes"][0]["primitives"][0]
    names = part["attributes"]
    assert arrays[names["POSITION"]] * 1000 == pytest.approx(solid.vertices)
    assert arrays[part["indices"]].reshape(-1, 3).tolist() == solid.triangles.tolist()
    assert seen(arrays[names["COLOR_0"]][:, :3]) * 255 == pytest.approx(solid.colours.astype(float), abs=0.01)
    assert arrays[names["NORMAL"]] == pytest.approx(solid.normals, abs=1e-6)
    assert table["accessors"][names["POSITION"]]["max"] == pytest.approx([0.1, 0.1, 0.1])


def test_lines_are_nodes_of_their_own() -> None:
    """A tape can be hidden by its name."""
    table, arrays = read(glb([tetrahedron()]))
    assert [node["name"] for node in table["nodes"]] == ["body", "edge"]
    strip = table["meshes"][1]["primitives"][0]
    assert strip["mode"] == 3
    assert arrays[strip["attributes"]["POSITION"]] == pytest.approx(np.array([[0, 0, 0], [0.1, 0, 0]]))


def test_nothing_is_refused() -> None:
    """A file without a solid would be no glTF."""
    with pytest.raises(ValueError, match="no solid"):
        glb([])
