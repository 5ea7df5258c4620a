"""The stroked lines of a PDF page, read operator by operator by a PDF library."""

import math

import numpy as np
import pikepdf

MM = 25.4 / 72


def strokes(page):
    """Stroked lines of a page as (width in mm, dashed, points in mm from the lower left corner), curves as chords."""
    found, stack = [], []
    ctm, width, dashed, paths = np.eye(3), 1.0, False, []
    for operands, operator in pikepdf.parse_content_stream(page):
        name = str(operator)
        # A dash pattern is an array, text is a string: neither is a number.
        values = [float(o) for o in operands if not isinstance(o, (pikepdf.Array, pikepdf.Name, pikepdf.String, pikepdf.Dictionary))]
        points = [tuple((np.array([x, y, 1.0]) @ ctm)[:2] * MM) for x, y in zip(values[::2], values[1::2])]
        if name == "q":
            stack.append((ctm, width, dashed))
        elif name == "Q":
            ctm, width, dashed = stack.pop()
        elif name == "cm":
            a, b, c, d, e, f = values
            ctm = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ ctm
        elif name == "w":
            width = values[0] * math.sqrt(abs(np.linalg.det(ctm))) * MM
        elif name == "d":
            dashed = len(operands[0]) > 0
        elif name == "m":
            paths.append(points)
        elif name == "l":
            paths[-1].append(points[0])
        elif name == "c":
            t = np.linspace(0, 1, 17)[1:, None]
            p0, (p1, p2, p3) = np.array(paths[-1][-1]), np.array(points)
            curve = (1 - t) ** 3 * p0 + 3 * t * (1 - t) ** 2 * p1 + 3 * t**2 * (1 - t) * p2 + t**3 * p3
            paths[-1].extend(map(tuple, curve))
        elif name == "h":
            paths[-1].append(paths[-1][0])
        elif name in ("S", "s", "B"):
            found += [(width, dashed, p) for p in paths]
            paths = []
        elif name in ("f", "f*", "n"):
            paths = []
        assert name not in ("v", "y", "re"), f"{name} is not read here"
    return found
