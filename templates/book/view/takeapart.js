// How far each part is moved when the island is taken apart, the last built first.

import { add, clamp, scale, sub } from "./vector.js";

/**
 * The moves of all parts. `amount` goes from 0, built, to 1, apart: the groups leave one after the other, those that are
 * built last first, each upwards or out of its face.
 */
export function moves(parts, groups, middle, size, amount) {
  const order = [...groups].reverse();
  const each = 1 / order.length;
  // Neighbours overlap a little in time, so that the hand on the slider sees something move all the time.
  const progress = (group) => {
    const begins = order.indexOf(group) * each * 0.9;
    return smooth(clamp((amount - begins) / (each * 1.5), 0, 1));
  };
  const shares = new Map(groups.map((g) => [g, progress(g)]));
  return parts.map((part) => scale(way(part, groups, middle, size), shares.get(part.group) ?? 0));
}

const smooth = (t) => t * t * (3 - 2 * t);

/** The whole way of one part. */
function way(part, groups, middle, size) {
  const rank = groups.indexOf(part.group) / Math.max(1, groups.length - 1);
  if (part.outward) {
    const out = [part.outward[0], part.outward[1], 0];
    return scale(out, size * (0.08 + 0.22 * rank));
  }
  const up = [0, 0, size * 0.5 * rank];
  // What lies on the counter spreads a little too, so that no piece hides another.
  const aside = sub(part.middle, middle);
  return add(up, scale([aside[0], aside[1], 0], 0.1 * rank));
}
