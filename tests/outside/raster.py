"""Triangles drawn into a depth buffer, and edges held against it, with nothing but numpy.

A view looks along -z: larger z is nearer. Pixels are squares of `size` millimetres; a pixel belongs to the triangle that is
nearest at its middle.
"""

import numpy as np

# Triangles seen more edge on than this are left out: they cover next to nothing, and their depth is ill conditioned.
STEEP = 0.02

# Edges where surfaces meet at more than this are creases, degrees.
CREASE = 25.0


def expanded(counts):
    """For counts 2, 0, 3: which item each belongs to (0 0 2 2 2) and its number there (0 1 0 1 2)."""
    item = np.repeat(np.arange(len(counts)), counts)
    return item, np.arange(len(item)) - np.repeat(np.cumsum(counts) - counts, counts)


class Depth:
    """A depth buffer that remembers which triangle is nearest at each pixel."""

    def __init__(self, triangles, size, margin=3):
        normal = np.cross(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0])
        length = np.linalg.norm(normal, axis=1)
        front = normal[:, 2] > STEEP * np.maximum(length, 1e-12)
        tri, normal = triangles[front], normal[front]
        low = triangles[:, :, :2].min((0, 1))
        high = triangles[:, :, :2].max((0, 1))
        self.size = size
        self.origin = low - margin * size
        self.shape = tuple(np.ceil((high - low) / size).astype(int) + 2 * margin)[::-1]
        # z = a + b x + c y on each triangle's plane.
        self.slope = -normal[:, :2] / normal[:, 2:]
        self.at_origin = tri[:, 0, 2] - np.einsum("ij,ij->i", self.slope, tri[:, 0, :2])
        self.nearest = tri[:, :, 2].max(1)
        self.id = np.full(self.shape[0] * self.shape[1], -1, dtype=np.int32)
        self._fill(tri)

    def _fill(self, tri):
        z = np.full(self.id.shape, -np.inf)
        for start in range(0, len(tri), 20000):
            pixel, depth, number = self._pixels(tri[start : start + 20000], start)
            np.maximum.at(z, pixel, depth)
            won = depth >= z[pixel]
            self.id[pixel[won]] = number[won]

    def _pixels(self, tri, start):
        """Every pixel whose middle lies in each triangle: the pixel, its depth, the triangle's number."""
        flat = (tri[:, :, :2] - self.origin) / self.size - 0.5
        first = np.ceil(flat[:, :, 1].min(1)).astype(int)
        rows = np.maximum(np.floor(flat[:, :, 1].max(1)).astype(int) - first + 1, 0)
        item, step = expanded(rows)
        y = first[item] + step
        left, right = np.full(len(y), np.inf), np.full(len(y), -np.inf)
        for k in range(3):
            a, b = flat[item, k], flat[item, (k + 1) % 3]
            rise = b[:, 1] - a[:, 1]
            meets = (np.minimum(a[:, 1], b[:, 1]) <= y) & (y <= np.maximum(a[:, 1], b[:, 1])) & (rise != 0)
            with np.errstate(divide="ignore", invalid="ignore"):
                x = a[:, 0] + (y - a[:, 1]) / rise * (b[:, 0] - a[:, 0])
            left = np.where(meets, np.minimum(left, x), left)
            right = np.where(meets, np.maximum(right, x), right)
        some = left <= right
        item, y, left, right = item[some], y[some], left[some], right[some]
        first = np.ceil(left).astype(int)
        span, step = expanded(np.maximum(np.floor(right).astype(int) - first + 1, 0))
        x = first[span] + step
        number = item[span] + start
        at = (np.stack([x, y[span]], 1) + 0.5) * self.size + self.origin
        depth = self.at_origin[number] + np.einsum("ij,ij->i", self.slope[number], at)
        return y[span] * self.shape[1] + x, np.minimum(depth, self.nearest[number]), number

    def cell(self, points):
        """Row and column of the pixel that each point lies in."""
        at = np.floor((points[:, :2] - self.origin) / self.size).astype(int)
        return np.clip(at[:, 1], 1, self.shape[0] - 2), np.clip(at[:, 0], 1, self.shape[1] - 2)

    def hiders(self, points, tolerance):
        """In how many of the nine pixels round each point something nearer than the point is seen.

        What is seen there is held against the point on its own plane, at the point itself: a surface that slopes away from an
        edge does not hide it, however coarse the pixels are.
        """
        row, column = self.cell(points)
        count = np.zeros(len(points), dtype=int)
        for dy in (-1, 0, 1):
            for dx in (-1, 0, 1):
                number = self.id[(row + dy) * self.shape[1] + column + dx]
                plane = self.at_origin[number] + np.einsum("ij,ij->i", self.slope[number], points[:, :2])
                depth = np.minimum(plane, self.nearest[number])
                count += (number >= 0) & (depth > points[:, 2] + tolerance)
        return count

    def marked(self, points):
        """A picture of the pixels that points lie in, each one grown by a pixel all round."""
        picture = np.zeros(self.shape, dtype=bool)
        row, column = self.cell(points)
        for dy in (-1, 0, 1):
            for dx in (-1, 0, 1):
                picture[row + dy, column + dx] = True
        return picture

    def on(self, picture, points):
        row, column = self.cell(points)
        return picture[row, column]


class Edges:
    """The edges of one closed mesh: their ends and the normals of the two triangles beside each."""

    def __init__(self, mesh):
        self.points = np.asarray(mesh.vertices)
        faces = np.asarray(mesh.faces)
        self.triangles = self.points[faces]
        normal = np.cross(self.triangles[:, 1] - self.triangles[:, 0], self.triangles[:, 2] - self.triangles[:, 0])
        normal /= np.maximum(np.linalg.norm(normal, axis=1, keepdims=True), 1e-12)
        sides = np.sort(faces[:, [[0, 1], [1, 2], [2, 0]]].reshape(-1, 2), axis=1)
        of = np.repeat(np.arange(len(faces)), 3)
        order = np.lexsort((sides[:, 1], sides[:, 0]))
        sides, of = sides[order], of[order]
        assert (sides[0::2] == sides[1::2]).all(), "every edge belongs to two triangles"
        self.ends = self.points[sides[0::2]]
        self.normals = np.stack([normal[of[0::2]], normal[of[1::2]]], 1)
        cosine = np.einsum("ij,ij->i", self.normals[:, 0], self.normals[:, 1])
        self.creased = cosine < np.cos(np.radians(CREASE))
        # Inside a plane no edge can ever show.
        bent = cosine < 1 - 1e-7
        self.ends, self.normals, self.creased = self.ends[bent], self.normals[bent], self.creased[bent]


def sampled(ends, step):
    """Points along edges, a step apart at most, their ends included; and which edge each is on."""
    length = np.linalg.norm((ends[:, 1] - ends[:, 0])[:, :2], axis=1)
    count = np.maximum(np.ceil(length / step).astype(int), 1) + 1
    edge, k = expanded(count)
    t = (k / (count[edge] - 1))[:, None]
    return ends[edge, 0] * (1 - t) + ends[edge, 1] * t, edge
