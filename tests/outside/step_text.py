"""The text of a STEP file read entity by entity: nothing is mended, so that a face or an edge the wrong way round shows."""

import re

import numpy as np

INSTANCE = re.compile(r"^#(\d+)=([A-Z0-9_]+)\((.*)\);$", re.MULTILINE)
SAMPLES = 24


class StepText:
    """Entities by number: their kind, the numbers they name, and the plain numbers they hold."""

    def __init__(self, text):
        self.entities = {int(n): (kind, body) for n, kind, body in INSTANCE.findall(text)}

    def of(self, kind):
        return [n for n, (k, _) in self.entities.items() if k == kind]

    def kind(self, number):
        return self.entities[number][0]

    def refs(self, number):
        return [int(r) for r in re.findall(r"#(\d+)", self.entities[number][1])]

    def reals(self, number):
        """What follows the name and the entities named."""
        body = re.sub(r"^'[^']*'", "", self.entities[number][1])
        return np.array([float(r) for r in re.findall(r"(?<![#\d.])-?\d+\.\d*(?:E[+-]?\d+)?", body)])

    def says(self, number):
        """The truth value at its end."""
        return self.entities[number][1].endswith(".T.")

    def axes(self, number):
        """Origin and the directions x, y and z of a placement, as rows."""
        origin, z, x = (self.reals(r) for r in self.refs(number))
        return origin, np.array([x, np.cross(z, x), z])

    def edge(self, number):
        """Points along an edge, from its first corner to its last."""
        start, end, curve = self.refs(number)
        assert self.says(number)
        first, last = (self.reals(self.refs(v)[0]) for v in (start, end))
        if self.kind(curve) == "LINE":
            return np.linspace(first, last, 2)
        origin, frame = self.axes(self.refs(curve)[0])
        radii = self.reals(curve)
        half = np.array([radii[0], radii[-1]])
        angles = [np.arctan2(*((frame[:2] @ (p - origin)) / half)[::-1]) for p in (first, last)]
        turn = (angles[1] - angles[0]) % (2 * np.pi)
        at = angles[0] + np.linspace(0, turn, SAMPLES)
        points = origin + np.cos(at)[:, None] * half[0] * frame[0] + np.sin(at)[:, None] * half[1] * frame[1]
        assert np.allclose(points[[0, -1]], [first, last], atol=1e-6), number
        return points

    def bound(self, number):
        """Points round a bound, as it is travelled."""
        assert self.says(number)
        rows = []
        for oriented in self.refs(self.refs(number)[0]):
            points = self.edge(self.refs(oriented)[0])
            rows.append(points if self.says(oriented) else points[::-1])
        for here, following in zip(rows, rows[1:] + rows[:1]):
            assert np.allclose(here[-1], following[0], atol=1e-9), number
        return np.concatenate(rows)

    def faces(self, shell):
        """Surface, sense and bounds of each face of a shell."""
        for face in self.refs(shell):
            *bounds, surface = self.refs(face)
            yield surface, self.says(face), [self.bound(b) for b in bounds]

    def flat(self, surface, points):
        """A surface's own coordinates of points, u and v with u × v along its normal."""
        kind = self.kind(surface)
        if kind == "SURFACE_OF_REVOLUTION":
            return self._turned(surface, points)
        origin, frame = self.axes(self.refs(surface)[0])
        x, y, z = frame @ (points - origin).T
        if kind == "PLANE":
            assert np.abs(z).max() < 1e-6
            return np.array([x, y]).T
        reach, sizes = np.hypot(x, y), self.reals(surface)
        if kind == "CYLINDRICAL_SURFACE":
            off, v = reach - sizes[0], z
        elif kind == "CONICAL_SURFACE":
            off, v = reach - sizes[0] - z * np.tan(sizes[1]), z
        elif kind == "SPHERICAL_SURFACE":
            off, v = np.hypot(reach, z) - sizes[0], np.arctan2(z, reach)
        else:
            assert kind == "TOROIDAL_SURFACE", kind
            off, v = np.hypot(reach - sizes[0], z) - sizes[1], np.unwrap(np.arctan2(z, reach - sizes[0]))
        assert np.abs(off).max() < 1e-6, (surface, np.abs(off).max())
        return unwrapped(np.arctan2(y, x), v, reach)

    def _turned(self, surface, points):
        circle, axis = self.refs(surface)
        foot, z = (self.reals(r) for r in self.refs(axis))
        centre, frame = self.axes(self.refs(circle)[0])
        tube = self.reals(circle)[0]
        x = frame[0]
        height = (points - foot) @ z
        out = points - foot - height[:, None] * z
        reach = np.linalg.norm(out, axis=1)
        radius, middle = (centre - foot) @ x, (centre - foot) @ z
        off = np.hypot(reach - radius, height - middle) - tube
        assert np.abs(off).max() < 1e-6
        v = np.unwrap(np.arctan2(height - middle, reach - radius))
        return unwrapped(np.arctan2(out @ np.cross(z, x), out @ x), v, reach)


def unwrapped(angle, v, reach):
    """Points without a jump where the angle passes a full turn; on the axis there is no angle."""
    real = reach > 1e-6
    return np.array([np.unwrap(angle[real]), v[real]]).T


def area(points):
    """Signed, counter-clockwise positive."""
    x, y = points.T
    return float(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2
