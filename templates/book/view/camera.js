// The eye: it looks at a target from a distance, turned about the upright axis and raised above level.

import { add, clamp, cross, dot, lookingAt, multiply, perspective, projected, scale, sub, unit } from "./vector.js";

/** What the picture takes in along its shorter side: 40 degrees, as a usual lens. */
const FIELD = Math.tan((20 * Math.PI) / 180);
/** Straight down the eye would lose which way is up. */
const STEEPEST = (88 * Math.PI) / 180;
/** The island is given so much air round it. */
const AIR = 1.05;

/** The box round some points: { low, high }. */
export function boxRound(points) {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const p of points) {
    for (let i = 0; i < 3; i += 1) {
      low[i] = Math.min(low[i], p[i]);
      high[i] = Math.max(high[i], p[i]);
    }
  }
  return { low, high };
}

/** The eight corners of a box. */
export function cornersOf(box) {
  const pick = (k, i) => ((k >> i) & 1 ? box.high[i] : box.low[i]);
  return [0, 1, 2, 3, 4, 5, 6, 7].map((k) => [pick(k, 0), pick(k, 1), pick(k, 2)]);
}

export class Camera {
  /** An eye that sees a box; `size` is the picture's width and height. */
  constructor(box, size) {
    this.box = box;
    this.size = size;
    this.turn = -0.6;
    this.rise = 0.5;
    this.target = scale(add(box.low, box.high), 0.5);
    this.distance = 1;
    this.fit();
  }

  /** From the target towards the eye. */
  get back() {
    const level = Math.cos(this.rise);
    return [Math.sin(this.turn) * level, -Math.cos(this.turn) * level, Math.sin(this.rise)];
  }

  get eye() {
    return add(this.target, scale(this.back, this.distance));
  }

  /** The tangents of half of what is seen, across and up. */
  get field() {
    const [width, height] = this.size;
    const shorter = Math.max(1, Math.min(width, height));
    return [(FIELD * width) / shorter, (FIELD * height) / shorter];
  }

  /** The directions of the picture: to the right and up. */
  get axes() {
    const right = unit(cross([0, 0, 1], this.back));
    return { right, up: cross(this.back, right) };
  }

  /** From the world to the picture. */
  get matrix() {
    const [across, up] = this.field;
    const size = this.reach;
    const near = Math.max(this.distance - size, this.distance / 500);
    const lens = perspective(across, up, near, this.distance + size);
    return multiply(lens, lookingAt(this.eye, this.target, [0, 0, 1]));
  }

  /** How far from the target anything may lie. */
  get reach() {
    const far = cornersOf(this.box).map((c) => Math.hypot(...sub(c, this.target)));
    return Math.max(...far) * 1.5 + 1;
  }

  /** Steps back until all of the box is seen, the box in the middle of the picture. */
  fit() {
    this.target = scale(add(this.box.low, this.box.high), 0.5);
    // What is near looks larger, so that the middle of the box is not the middle of its picture: a few steps find it.
    for (let step = 0; step < 4; step += 1) {
      this.stepBack();
      const seen = cornersOf(this.box).map((c) => projected(this.matrix, c));
      const middle = (i) => (Math.min(...seen.map((p) => p[i])) + Math.max(...seen.map((p) => p[i]))) / 2;
      const [across, high] = this.field;
      const { right, up } = this.axes;
      const aside = scale(right, middle(0) * across * this.distance);
      this.target = add(this.target, add(aside, scale(up, middle(1) * high * this.distance)));
    }
    this.stepBack();
  }

  /** The least distance at which all of the box is seen. */
  stepBack() {
    const { right, up } = this.axes;
    const back = this.back;
    const [across, high] = this.field;
    const needed = cornersOf(this.box).map((c) => {
      const from = sub(c, this.target);
      const aside = Math.max(Math.abs(dot(from, right)) / across, Math.abs(dot(from, up)) / high);
      return dot(from, back) + aside * AIR;
    });
    this.distance = Math.max(...needed, 1);
  }

  /** Looks from a named view. */
  look(view) {
    const back = sub(view.eye, view.target);
    const level = Math.hypot(back[0], back[1]);
    this.rise = clamp(Math.atan2(back[2], level), -STEEPEST, STEEPEST);
    this.turn = level > 1e-6 * Math.abs(back[2]) ? Math.atan2(back[0], -back[1]) : 0;
    this.fit();
  }

  /** Turns the eye about the target, radians. */
  orbit(turn, rise) {
    this.turn += turn;
    this.rise = clamp(this.rise + rise, -STEEPEST, STEEPEST);
  }

  /** Moves the target with the picture, in pixels of it. */
  pan(right, down) {
    const [across, high] = this.field;
    const axes = this.axes;
    const [width, height] = this.size;
    const aside = (-right / Math.max(1, width)) * 2 * across * this.distance;
    const up = (down / Math.max(1, height)) * 2 * high * this.distance;
    const moved = add(this.target, add(scale(axes.right, aside), scale(axes.up, up)));
    // The target stays near the island, so that nobody gets lost.
    const room = Math.hypot(...sub(this.box.high, this.box.low));
    this.target = moved.map((x, i) => clamp(x, this.box.low[i] - room, this.box.high[i] + room));
  }

  /** Comes nearer (factor < 1) or goes away, towards a place of the picture given from −1 to 1. */
  zoom(factor, at = [0, 0]) {
    const size = Math.hypot(...sub(this.box.high, this.box.low));
    const distance = clamp(this.distance * factor, size / 60, size * 6);
    const share = 1 - distance / this.distance;
    const [across, high] = this.field;
    const axes = this.axes;
    const aside = scale(axes.right, at[0] * across * this.distance * share);
    const up = scale(axes.up, at[1] * high * this.distance * share);
    this.target = add(this.target, add(aside, up));
    this.distance = distance;
  }

  /** What there is to remember of it. */
  get state() {
    return { turn: this.turn, rise: this.rise, target: [...this.target], distance: this.distance };
  }

  set state(state) {
    const numbers = [state.turn, state.rise, state.distance, ...state.target];
    if (numbers.length === 6 && numbers.every(Number.isFinite)) {
      Object.assign(this, { ...state, target: [...state.target] });
    }
  }
}
