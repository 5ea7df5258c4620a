// What the graphics processor is told.

const HEAD = `#version 300 es
precision highp float;
precision highp int;
`;

/** Where a corner of a part lies: its shape turned, placed and moved. */
const PLACED = `${HEAD}
layout(location = 0) in vec3 corner;
layout(location = 1) in vec4 turn;
layout(location = 2) in vec3 place;
layout(location = 3) in vec3 look;
layout(location = 4) in float number;
layout(location = 5) in float marked;
uniform mat4 sight;
uniform vec3 eye;
uniform float nearer;
out vec3 world;
flat out vec3 colour;
flat out float part;
flat out float chosen;
void main() {
  vec3 t = 2.0 * cross(turn.xyz, corner);
  world = corner + turn.w * t + cross(turn.xyz, t) + place;
  colour = look;
  part = number;
  chosen = marked;
  // An edge is drawn a hair nearer to the eye than the sides that meet in it.
  gl_Position = sight * vec4(mix(world, eye, nearer), 1.0);
}`;

const CUT = `
uniform vec4 cut;
void cutAway(vec3 at) {
  if (dot(at, cut.xyz) > cut.w) discard;
}`;

/** Plain sides in the light of a sky and of a lamp beside the eye; where the plane opens a part, its inside is hatched. */
const SIDES = `${HEAD}
in vec3 world;
flat in vec3 colour;
flat in float part;
flat in float chosen;
uniform vec3 eye;
uniform vec3 lamp;
uniform vec3 accent;
uniform float hatch;
out vec4 seen;
${CUT}
void main() {
  cutAway(world);
  vec3 base = chosen > 0.5 ? mix(accent, colour, 0.15) : colour;
  if (!gl_FrontFacing) {
    float line = mod(gl_FragCoord.x + gl_FragCoord.y, hatch);
    seen = vec4(mix(base * 0.72, vec3(0.1), line < hatch * 0.18 ? 0.75 : 0.0), 1.0);
    return;
  }
  vec3 side = normalize(cross(dFdx(world), dFdy(world)));
  vec3 to = normalize(eye - world);
  if (dot(side, to) < 0.0) side = -side;
  float sky = 0.62 + 0.2 * side.z;
  float light = max(dot(side, lamp), 0.0) * 0.42;
  seen = vec4(base * (sky + light), 1.0);
}`;

const LINES = `${HEAD}
in vec3 world;
flat in float chosen;
uniform vec3 ink;
out vec4 seen;
${CUT}
void main() {
  cutAway(world);
  seen = vec4(ink, chosen > 0.5 ? 1.0 : 0.55);
}`;

/** The number of the part, one more than its place in the list, in red, green and blue. */
const NUMBERS = `${HEAD}
in vec3 world;
flat in float part;
out vec4 seen;
${CUT}
void main() {
  cutAway(world);
  float n = part + 1.0;
  seen = vec4(mod(n, 256.0), mod(floor(n / 256.0), 256.0), floor(n / 65536.0), 255.0) / 255.0;
}`;

function compiled(gl, kind, text) {
  const shader = gl.createShader(kind);
  gl.shaderSource(shader, text);
  gl.compileShader(shader);
  if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS)) throw new Error(gl.getShaderInfoLog(shader) ?? "shader");
  return shader;
}

function program(gl, fragment) {
  const made = gl.createProgram();
  gl.attachShader(made, compiled(gl, gl.VERTEX_SHADER, PLACED));
  gl.attachShader(made, compiled(gl, gl.FRAGMENT_SHADER, fragment));
  gl.linkProgram(made);
  if (!gl.getProgramParameter(made, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(made) ?? "program");
  const uniforms = new Map();
  const at = (name) => {
    if (!uniforms.has(name)) uniforms.set(name, gl.getUniformLocation(made, name));
    return uniforms.get(name);
  };
  return { made, at };
}

/** The three programs: sides, lines and numbers. */
export const programs = (gl) => ({
  sides: program(gl, SIDES),
  lines: program(gl, LINES),
  numbers: program(gl, NUMBERS),
});
