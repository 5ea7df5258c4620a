// Vectors of three numbers, turns as unit quaternions [x, y, z, w], and 4 × 4 matrices in columns, as WebGL takes them.

export const add = (a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a, k) => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a, b) => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const length = (a) => Math.hypot(a[0], a[1], a[2]);
export const unit = (a) => {
  const size = length(a);
  return size > 0 ? scale(a, 1 / size) : [0, 0, 1];
};
export const clamp = (x, low, high) => Math.min(Math.max(x, low), high);

/** A vector turned by a unit quaternion. */
export function turned(q, v) {
  const t = scale(cross(q, v), 2);
  return add(add(v, scale(t, q[3])), cross(q, t));
}

/** The product a · b: b is applied first. */
export function multiply(a, b) {
  const product = new Float32Array(16);
  for (let column = 0; column < 4; column += 1) {
    for (let row = 0; row < 4; row += 1) {
      let sum = 0;
      for (let k = 0; k < 4; k += 1) sum += a[k * 4 + row] * b[column * 4 + k];
      product[column * 4 + row] = sum;
    }
  }
  return product;
}

/** From the world to an eye that looks at a target: x to the right, y up, −z ahead. */
export function lookingAt(eye, target, up) {
  const back = unit(sub(eye, target));
  const right = unit(cross(up, back));
  const top = cross(back, right);
  return new Float32Array([
    right[0], top[0], back[0], 0,
    right[1], top[1], back[1], 0,
    right[2], top[2], back[2], 0,
    -dot(right, eye), -dot(top, eye), -dot(back, eye), 1,
  ]);
}

/** A lens: the half of what it takes in, as the tangent, across and up; and from how near to how far it sees. */
export function perspective(across, up, near, far) {
  return new Float32Array([
    1 / across, 0, 0, 0,
    0, 1 / up, 0, 0,
    0, 0, (far + near) / (near - far), -1,
    0, 0, (2 * far * near) / (near - far), 0,
  ]);
}

/** Where a point of the world comes to lie: x and y from −1 to 1 across the picture, z its depth, w its distance. */
export function projected(matrix, p) {
  const at = (row) => matrix[row] * p[0] + matrix[4 + row] * p[1] + matrix[8 + row] * p[2] + matrix[12 + row];
  const w = at(3);
  return [at(0) / w, at(1) / w, at(2) / w, w];
}
