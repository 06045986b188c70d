"""glTF 2.0 in one file (GLB): a solid with colours and the lines on it, for any program that shows solids."""

from __future__ import annotations

import json
import struct
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tapeline.export.solid import Solid

__all__ = ["glb"]

# The numbers of the specification (Khronos glTF 2.0, sections 3.6.2 and 5).
_FLOAT, _UNSIGNED = 5126, 5125
_VERTICES, _INDICES = 34962, 34963
_TRIANGLES, _LINE_STRIP = 4, 3


def glb(solids: list[Solid]) -> bytes:
    """Solids and their lines as a binary glTF file: metres, y up, z to the front, as the format has it.

    Each line is a node of its own, named as it is, so that it can be hidden.

    Raises:
        ValueError: There is nothing to write.
    """
    if not solids:
        raise ValueError("there is no solid to write")
    file = _File()
    for solid in solids:
        # Colours of corners are amounts of light (3.9.2); eight bits of those would be too few in the dark.
        colours = np.column_stack([_linear(solid.colours / 255), np.ones(len(solid.colours))])
        primitive = {
            "attributes": {
                "POSITION": file.points(solid.vertices / 1000),
                "NORMAL": file.add(solid.normals.astype("<f4"), _FLOAT, "VEC3", _VERTICES),
                "COLOR_0": file.add(colours.astype("<f4"), _FLOAT, "VEC4", _VERTICES),
            },
            "indices": file.add(solid.triangles.astype("<u4").ravel(), _UNSIGNED, "SCALAR", _INDICES),
            "mode": _TRIANGLES,
            "material": file.material("cloth", (1.0, 1.0, 1.0)),
        }
        file.node(solid.name, primitive)
        for line in solid.lines:
            red, green, blue = _linear(np.array(line.colour) / 255).tolist()
            material = file.material("line " + "-".join(map(str, line.colour)), (red, green, blue))
            strip = {"attributes": {"POSITION": file.points(line.points / 1000)}, "mode": _LINE_STRIP}
            file.node(line.name, {**strip, "material": material})
    return file.bytes()


def _linear(value: NDArray[np.float64]) -> NDArray[np.float64]:
    """A colour as the eye sees it, as an amount of light (IEC 61966-2-1)."""
    return np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)


class _File:
    """The parts of the file while it is put together."""

    def __init__(self) -> None:
        self.data = bytearray()
        self.views: list[dict[str, Any]] = []
        self.accessors: list[dict[str, Any]] = []
        self.materials: list[dict[str, Any]] = []
        self.meshes: list[dict[str, Any]] = []
        self.nodes: list[dict[str, Any]] = []

    def add(self, values: NDArray[Any], kind: int, shape: str, target: int) -> int:
        """An array; answers its number."""
        raw = values.tobytes()
        self.views.append({"buffer": 0, "byteOffset": len(self.data), "byteLength": len(raw), "target": target})
        self.data += raw + b"\0" * (-len(raw) % 4)
        self.accessors.append(
            {"bufferView": len(self.views) - 1, "componentType": kind, "count": len(values), "type": shape}
        )
        return len(self.accessors) - 1

    def points(self, points: NDArray[np.float64]) -> int:
        """Places, with their ends, which the format asks for."""
        small = points.astype("<f4")
        number = self.add(small, _FLOAT, "VEC3", _VERTICES)
        self.accessors[number] |= {"min": small.min(axis=0).tolist(), "max": small.max(axis=0).tolist()}
        return number

    def material(self, name: str, colour: tuple[float, float, float]) -> int:
        """A dull material; one that is there already is used again."""
        made = {
            "name": name,
            "pbrMetallicRoughness": {"baseColorFactor": [*colour, 1.0], "metallicFactor": 0.0, "roughnessFactor": 0.9},
        }
        if made not in self.materials:
            self.materials.append(made)
        return self.materials.index(made)

    def node(self, name: str, primitive: dict[str, Any]) -> None:
        """A mesh of one part, shown."""
        self.meshes.append({"name": name, "primitives": [primitive]})
        self.nodes.append({"name": name, "mesh": len(self.meshes) - 1})

    def bytes(self) -> bytes:
        """Header, JSON chunk, binary chunk."""
        table = {
            "asset": {"version": "2.0", "generator": "Tapeline"},
            "scene": 0,
            "scenes": [{"nodes": list(range(len(self.nodes)))}],
            "nodes": self.nodes,
            "meshes": self.meshes,
            "materials": self.materials,
            "accessors": self.accessors,
            "bufferViews": self.views,
            "buffers": [{"byteLength": len(self.data)}],
        }
        text = json.dumps(table, separators=(",", ":")).encode()
        text += b" " * (-len(text) % 4)
        size = 12 + 8 + len(text) + 8 + len(self.data)
        return (
            struct.pack("<4sII", b"glTF", 2, size)
            + struct.pack("<I4s", len(text), b"JSON")
            + text
            + struct.pack("<I4s", len(self.data), b"BIN\0")
            + bytes(self.data)
        )
