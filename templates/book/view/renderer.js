// Draws the parts: each shape once to the graphics processor, each part an instance of one.

import { programs } from "./shaders.js";
import { edgesOf } from "./model.js";
import { unit } from "./vector.js";

/** Numbers an instance has: turn 4, place 3, colour 3, part 1, marked 1. */
const FIELDS = [
  [1, 4],
  [2, 3],
  [3, 3],
  [4, 1],
  [5, 1],
];
const WIDE = 12;
/** By such a share of their distance edges lie nearer to the eye: 1 mm at 5 m. */
const NEARER = 2e-4;

export class Renderer {
  /** On a canvas; throws where WebGL 2 is not to be had. */
  constructor(canvas, shapes) {
    const gl = canvas.getContext("webgl2", { alpha: false, antialias: true, preserveDrawingBuffer: true });
    if (!gl) throw new Error("WebGL 2 is not to be had");
    this.gl = gl;
    this.programs = programs(gl);
    this.shapes = shapes.map((shape) => this.uploaded(shape));
    this.instances = gl.createBuffer();
    this.ranges = [];
    gl.enable(gl.DEPTH_TEST);
    gl.depthFunc(gl.LEQUAL);
    gl.blendFunc(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA);
  }

  uploaded(shape) {
    const { gl } = this;
    const buffer = (target, data) => {
      const made = gl.createBuffer();
      gl.bindBuffer(target, made);
      gl.bufferData(target, data, gl.STATIC_DRAW);
      return made;
    };
    const edges = edgesOf(shape);
    gl.bindVertexArray(null);
    const type = (array) => (array instanceof Uint32Array ? gl.UNSIGNED_INT : gl.UNSIGNED_SHORT);
    return {
      corners: buffer(gl.ARRAY_BUFFER, shape.points),
      sides: { buffer: buffer(gl.ELEMENT_ARRAY_BUFFER, shape.indices), count: shape.indices.length, type: type(shape.indices) },
      edges: { buffer: buffer(gl.ELEMENT_ARRAY_BUFFER, edges), count: edges.length, type: type(edges) },
    };
  }

  /**
   * Takes the parts to be drawn: each with its number, shape, turn, place (moves included), colour and whether it is
   * marked.
   */
  take(parts) {
    const sorted = [...parts].sort((a, b) => a.shape - b.shape);
    const data = new Float32Array(sorted.length * WIDE);
    this.ranges = [];
    sorted.forEach((part, i) => {
      data.set([...part.turned, ...part.place, ...part.colour, part.number, part.marked ? 1 : 0], i * WIDE);
      const last = this.ranges.at(-1);
      if (last?.shape === part.shape) last.count += 1;
      else this.ranges.push({ shape: part.shape, first: i, count: 1 });
    });
    const { gl } = this;
    gl.bindBuffer(gl.ARRAY_BUFFER, this.instances);
    gl.bufferData(gl.ARRAY_BUFFER, data, gl.DYNAMIC_DRAW);
  }

  /** Draws into the canvas: sides, then edges over them. */
  draw(camera, { cut, paper, ink, accent, ratio }) {
    const { gl } = this;
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    gl.viewport(0, 0, gl.drawingBufferWidth, gl.drawingBufferHeight);
    gl.clearColor(...paper, 1);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.disable(gl.BLEND);
    const sides = this.use(this.programs.sides, camera, cut);
    const { right, up } = camera.axes;
    const back = camera.back;
    const lamp = unit([0, 1, 2].map((i) => back[i] + 0.5 * right[i] + 0.7 * up[i]));
    gl.uniform3fv(sides.at("lamp"), lamp);
    gl.uniform3fv(sides.at("accent"), accent);
    gl.uniform1f(sides.at("hatch"), 7 * ratio);
    this.all("sides", gl.TRIANGLES);
    gl.enable(gl.BLEND);
    const lines = this.use(this.programs.lines, camera, cut, NEARER);
    gl.uniform3fv(lines.at("ink"), ink);
    this.all("edges", gl.LINES);
  }

  /** Draws the numbers of parts into whatever framebuffer is bound. */
  drawNumbers(camera, cut) {
    const { gl } = this;
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.disable(gl.BLEND);
    this.use(this.programs.numbers, camera, cut);
    this.all("sides", gl.TRIANGLES);
  }

  use(program, camera, cut, nearer = 0) {
    const { gl } = this;
    gl.useProgram(program.made);
    gl.uniformMatrix4fv(program.at("sight"), false, camera.matrix);
    gl.uniform3fv(program.at("eye"), camera.eye);
    gl.uniform1f(program.at("nearer"), nearer);
    gl.uniform4fv(program.at("cut"), cut ?? [0, 0, 0, 1]);
    return program;
  }

  all(what, mode) {
    const { gl } = this;
    for (const { shape, first, count } of this.ranges) {
      const { corners, [what]: drawn } = this.shapes[shape];
      if (drawn.count === 0) continue;
      gl.bindBuffer(gl.ARRAY_BUFFER, corners);
      gl.enableVertexAttribArray(0);
      gl.vertexAttribPointer(0, 3, gl.FLOAT, false, 0, 0);
      gl.bindBuffer(gl.ARRAY_BUFFER, this.instances);
      let at = first * WIDE * 4;
      for (const [location, size] of FIELDS) {
        gl.enableVertexAttribArray(location);
        gl.vertexAttribPointer(location, size, gl.FLOAT, false, WIDE * 4, at);
        gl.vertexAttribDivisor(location, 1);
        at += size * 4;
      }
      gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, drawn.buffer);
      gl.drawElementsInstanced(mode, drawn.count, drawn.type, 0, count);
    }
  }
}
