// The island's parts and shapes, read from what the page carries.

import { add, turned } from "./vector.js";
import { boxRound, cornersOf } from "./camera.js";

/** The bytes of a text in base 64, inflated. */
export async function inflated(text) {
  const bytes = Uint8Array.from(atob(text.trim()), (c) => c.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"));
  return new Response(stream).arrayBuffer();
}

/**
 * Shapes from one run of bytes. Each shape says how many corners and triangles it has and the box it fills; its corners
 * are three 16-bit shares of that box, its triangles three 16-bit or, beyond 65,535 corners, 32-bit numbers of corners.
 * Every array begins at a multiple of four bytes.
 */
export function shapesFrom(buffer, listed) {
  let at = 0;
  const take = (Type, count) => {
    const array = new Type(buffer, at, count);
    at += Math.ceil(array.byteLength / 4) * 4;
    return array;
  };
  return listed.map(({ corners, triangles, low, high }) => {
    const shares = take(Uint16Array, corners * 3);
    const Index = corners > 65535 ? Uint32Array : Uint16Array;
    const indices = take(Index, triangles * 3);
    const points = new Float32Array(shares.length);
    for (let i = 0; i < shares.length; i += 1) {
      const axis = i % 3;
      points[i] = low[axis] + ((high[axis] - low[axis]) * shares[i]) / 65535;
    }
    return { points, indices, low, high };
  });
}

/** A point of a shape where a part has it. */
export const placedAt = (part, p) => add(turned(part.turned, p), part.at);

/** The box round some parts as they are built. */
export function boxOf(parts, shapes) {
  const corners = parts.flatMap((part) => cornersOf(shapes[part.shape]).map((c) => placedAt(part, c)));
  return boxRound(corners);
}

/** The edges of a shape where its sides turn by more than about 20 degrees: pairs of corner numbers. */
export function edgesOf({ points, indices }) {
  const same = firstOfEach(points);
  const normals = new Map();
  const edges = [];
  for (let t = 0; t < indices.length; t += 3) {
    const corners = [indices[t], indices[t + 1], indices[t + 2]];
    const normal = normalOf(points, corners);
    for (let k = 0; k < 3; k += 1) {
      const a = same[corners[k]];
      const b = same[corners[(k + 1) % 3]];
      const key = a < b ? a * 1048576 + b : b * 1048576 + a;
      const other = normals.get(key);
      if (other === undefined) normals.set(key, normal);
      else if (other[0] * normal[0] + other[1] * normal[1] + other[2] * normal[2] < 0.94) edges.push(a, b);
    }
  }
  const Index = points.length / 3 > 65535 ? Uint32Array : Uint16Array;
  return new Index(edges);
}

/** For each corner the number of the first one at the same place. */
function firstOfEach(points) {
  const known = new Map();
  const first = new Uint32Array(points.length / 3);
  for (let i = 0; i < first.length; i += 1) {
    const key = `${points[i * 3]} ${points[i * 3 + 1]} ${points[i * 3 + 2]}`;
    const at = known.get(key);
    if (at === undefined) known.set(key, i);
    first[i] = at ?? i;
  }
  return first;
}

function normalOf(points, [a, b, c]) {
  const edge = (from, to) => [0, 1, 2].map((i) => points[to * 3 + i] - points[from * 3 + i]);
  const [u, v] = [edge(a, b), edge(a, c)];
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const size = Math.hypot(...n) || 1;
  return n.map((x) => x / size);
}
