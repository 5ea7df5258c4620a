// The picture of the island: camera, layers, cut plane and taking apart on one canvas, drawn when something changed.

import { add } from "./vector.js";
import { Camera, boxRound } from "./camera.js";
import { listen } from "./gestures.js";
import { boxOf, placedAt } from "./model.js";
import { Renderer } from "./renderer.js";
import { Picking } from "./picking.js";
import { Layers } from "./layers.js";
import { moves } from "./takeapart.js";
import { cutPlane } from "./cutplane.js";

export class IslandView {
  /** `data` has parts, groups, looks and views; `tapped` is told the number of a part, or `null`. */
  constructor(canvas, data, shapes, { tapped }) {
    this.canvas = canvas;
    this.renderer = new Renderer(canvas, shapes);
    this.picking = new Picking(this.renderer);
    this.layers = new Layers(data.groups.map((g) => g.name), ["forms"]);
    this.apart = 0;
    this.cut = { way: 0, share: 0 };
    this.chosen = null;
    this.waiting = false;
    this.tapped = tapped;
    this.show(data, shapes);
    this.camera = new Camera(this.box, [canvas.clientWidth, canvas.clientHeight]);
    if (data.views[0]) this.camera.look(data.views.find((v) => v.name === "corner") ?? data.views[0]);
    this.home = this.camera.state;
    listen(canvas, this.camera, {
      changed: () => this.drawSoon(),
      tapped: (place) => this.tap(place),
      home: () => this.look(null),
    });
    new ResizeObserver(() => this.resized()).observe(canvas);
    canvas.addEventListener("webglcontextlost", (event) => event.preventDefault());
    this.resized();
  }

  /** Takes parts and shapes, at first or anew. */
  show(data, shapes) {
    this.data = data;
    this.box = boxOf(data.parts, shapes);
    this.size = Math.hypot(...this.box.high.map((x, i) => x - this.box.low[i]));
    this.middle = this.box.high.map((x, i) => (x + this.box.low[i]) / 2);
    for (const part of data.parts) {
      const shape = shapes[part.shape];
      part.middle = placedAt(part, shape.low.map((x, i) => (x + shape.high[i]) / 2));
    }
    if (this.camera) this.camera.box = this.box;
    this.takeParts();
  }

  /** Another island in the same picture: the eye, the plane, the layers stay. */
  replace(data, shapes) {
    const { gl } = this.renderer;
    for (const { corners, sides, edges } of this.renderer.shapes) {
      [corners, sides.buffer, edges.buffer].forEach((buffer) => gl.deleteBuffer(buffer));
    }
    this.renderer.shapes = shapes.map((shape) => this.renderer.uploaded(shape));
    const mark = this.chosen === null ? null : this.data.parts[this.chosen]?.mark;
    this.chosen = null;
    const found = data.parts.findIndex((p) => p.mark === mark);
    if (found >= 0) this.chosen = found;
    this.show(data, shapes);
  }

  takeParts() {
    const { parts, groups, looks } = this.data;
    const moved = moves(parts, groups.map((g) => g.name), this.middle, this.size, this.apart);
    this.moved = moved;
    const drawn = parts.map((part, number) => ({
      number,
      shape: part.shape,
      turned: part.turned,
      place: add(part.at, moved[number]),
      colour: looks[part.look].rgb,
      marked: number === this.chosen,
    }));
    this.renderer.take(drawn.filter((_, i) => this.layers.shows(parts[i])));
    this.drawSoon();
  }

  /** How many times larger the island is for being taken apart. */
  get spread() {
    const middles = this.data.parts.map((part, i) => add(part.middle, this.moved[i]));
    const { low, high } = boxRound([...middles, this.box.low, this.box.high]);
    return Math.hypot(...high.map((x, i) => x - low[i])) / this.size;
  }

  resized() {
    const ratio = Math.min(window.devicePixelRatio || 1, 2);
    const size = [this.canvas.clientWidth, this.canvas.clientHeight];
    this.canvas.width = Math.max(1, Math.round(size[0] * ratio));
    this.canvas.height = Math.max(1, Math.round(size[1] * ratio));
    this.ratio = ratio;
    this.camera.size = size;
    this.draw();
  }

  drawSoon() {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame(() => {
      this.waiting = false;
      this.draw();
    });
  }

  draw() {
    if (!this.camera) return;
    const style = getComputedStyle(this.canvas);
    const colour = (name, usual) => rgb(style.getPropertyValue(name)) ?? usual;
    this.renderer.draw(this.camera, {
      cut: this.plane,
      paper: colour("--picture", [0.93, 0.92, 0.89]),
      ink: colour("--picture-ink", [0.1, 0.1, 0.1]),
      accent: colour("--picture-mark", [0.8, 0.3, 0.1]),
      ratio: this.ratio,
    });
  }

  get plane() {
    return cutPlane(this.cut.way, this.cut.share, this.box);
  }

  tap([x, y]) {
    const number = this.picking.at(this.camera, this.plane, [x * this.ratio, y * this.ratio]);
    this.choose(number);
    this.tapped(number);
  }

  /** Marks a part by its number, or none. */
  choose(number) {
    this.chosen = number;
    this.takeParts();
  }

  /** Takes the island apart by a share; the eye steps back as it grows, and comes nearer as it shrinks. */
  setApart(amount) {
    const before = this.spread;
    this.apart = amount;
    this.takeParts();
    this.camera.distance *= this.spread / before;
  }

  setCut(way, share) {
    this.cut = { way, share };
    this.drawSoon();
  }

  setLayer(group, shown) {
    this.layers.set(group, shown);
    this.takeParts();
  }

  /** Looks from a named view; `null` for the first one. */
  look(view) {
    if (view) this.camera.look(view);
    else this.camera.state = this.home;
    this.drawSoon();
  }

  /** What there is to remember of the picture. */
  get state() {
    return { camera: this.camera.state, apart: this.apart, cut: this.cut, hidden: this.layers.state };
  }

  set state(state) {
    this.camera.state = state.camera;
    this.apart = state.apart;
    this.cut = state.cut;
    this.layers.state = state.hidden;
    this.takeParts();
  }
}

/** A colour of the page such as `#1d2326` as three shares. */
function rgb(text) {
  const found = /^\s*#([0-9a-f]{6})\s*$/i.exec(text);
  if (!found) return null;
  return [0, 2, 4].map((i) => parseInt(found[1].slice(i, i + 2), 16) / 255);
}
