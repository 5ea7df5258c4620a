// A plane that cuts the picture open.

/** The ways a plane may stand: its normal, and its name for people. What lies on the normal's side is cut away. */
export const WAYS = [
  { name: "from the right", normal: [1, 0, 0] },
  { name: "from the front", normal: [0, -1, 0] },
  { name: "from above", normal: [0, 0, 1] },
];

/**
 * The plane as [x, y, z, distance]: what lies beyond the distance along the normal is not drawn. `share` goes from 0,
 * nothing cut away, to 1, all of the box; `null` for no plane.
 */
export function cutPlane(way, share, box) {
  const chosen = WAYS[way];
  if (!chosen || !(share > 0)) return null;
  const { normal } = chosen;
  const along = [box.low, box.high].map((p) => p[0] * normal[0] + p[1] * normal[1] + p[2] * normal[2]);
  const [low, high] = [Math.min(...along), Math.max(...along)];
  return [...normal, high - (high - low) * Math.min(share, 1)];
}
