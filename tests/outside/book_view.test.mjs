// The page's modules by themselves: camera, layers, cut plane, taking apart, shapes, ticks. node --test
import test from "node:test";
import assert from "node:assert/strict";

const view = new URL("../../templates/book/view/", import.meta.url);
const page = new URL("../../templates/book/page/", import.meta.url);
const { Camera, boxRound, cornersOf } = await import(new URL("camera.js", view));
const { projected, turned } = await import(new URL("vector.js", view));
const { shapesFrom, edgesOf, inflated } = await import(new URL("model.js", view));
const { Layers } = await import(new URL("layers.js", view));
const { moves } = await import(new URL("takeapart.js", view));
const { cutPlane } = await import(new URL("cutplane.js", view));
const { nearest } = await import(new URL("picking.js", view));
const { Ticks } = await import(new URL("ticks.js", page));

const box = { low: [0, -2000, 0], high: [3000, 800, 900] };
const near = (a, b, by = 1e-6) => assert.ok(Math.abs(a - b) < by, `${a} is not ${b}`);

test("all of the box is in the picture, whatever its shape and from wherever it is seen", () => {
  for (const size of [[1200, 400], [390, 700], [500, 500]]) {
    for (const turn of [-3, -0.6, 0, 1.2]) {
      for (const rise of [-1.2, 0, 0.5, 1.5]) {
        const camera = new Camera(box, size);
        Object.assign(camera, { turn, rise });
        camera.fit();
        const seen = cornersOf(box).map((c) => projected(camera.matrix, c));
        const widest = Math.max(...seen.map((p) => Math.max(Math.abs(p[0]), Math.abs(p[1]))));
        assert.ok(widest <= 1 && widest > 0.85, `${size} ${turn} ${rise}: ${widest}`);
        for (const [, , depth, w] of seen) assert.ok(depth > -1 && depth < 1 && w > 0);
      }
    }
  }
});

test("the target stays in the middle of the picture while the eye turns and comes nearer", () => {
  const camera = new Camera(box, [800, 600]);
  camera.orbit(0.7, 0.2);
  camera.zoom(0.5);
  const [x, y] = projected(camera.matrix, camera.target);
  near(x, 0, 1e-5);
  near(y, 0, 1e-5);
});

test("a pan moves what lies at the target by as many pixels as the hand", () => {
  const camera = new Camera(box, [800, 600]);
  const before = [...camera.target];
  camera.pan(80, -30);
  const [x, y] = projected(camera.matrix, before);
  near(x * 400, 80, 1e-3);
  near(-y * 300, -30, 1e-3);
});

test("coming nearer towards a place keeps that place under the hand", () => {
  const camera = new Camera(box, [800, 600]);
  const at = [0.4, -0.2];
  const [across, high] = camera.field;
  const { right, up } = camera.axes;
  const point = camera.target.map((x, i) => x + camera.distance * (at[0] * across * right[i] + at[1] * high * up[i]));
  camera.zoom(0.8, at);
  const [x, y] = projected(camera.matrix, point);
  near(x, at[0], 1e-5);
  near(y, at[1], 1e-5);
});

test("the eye never stands on its head, and odd states are not taken", () => {
  const camera = new Camera(box, [800, 600]);
  camera.orbit(0, 100);
  assert.ok(camera.rise < Math.PI / 2);
  const kept = camera.state;
  camera.state = { ...kept, distance: NaN };
  assert.deepEqual(camera.state, kept);
});

test("shapes come out of their bytes as they went in", () => {
  const bytes = new ArrayBuffer(4 * 6 + 4 * 6);
  // Four corners of a tetrahedron in a box of 100 × 200 × 300 at (10, 20, 30).
  new Uint16Array(bytes, 0, 12).set([0, 0, 0, 65535, 0, 0, 0, 65535, 0, 0, 0, 65535]);
  new Uint16Array(bytes, 24, 12).set([0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3]);
  const [shape] = shapesFrom(bytes, [{ corners: 4, triangles: 4, low: [10, 20, 30], high: [110, 220, 330] }]);
  assert.deepEqual([...shape.points], [10, 20, 30, 110, 20, 30, 10, 220, 30, 10, 20, 330]);
  // All six edges of a tetrahedron are sharp.
  assert.equal(edgesOf(shape).length, 12);
});

test("what is deflated is inflated again", async () => {
  const { deflateSync } = await import("node:zlib");
  const text = deflateSync(Buffer.from("three studs")).toString("base64");
  assert.equal(Buffer.from(await inflated(` ${text}\n`)).toString(), "three studs");
});

test("a quarter turn about the upright takes x to y", () => {
  const half = Math.SQRT1_2;
  turned([0, 0, half, half], [1, 0, 0]).forEach((c, i) => near(c, [0, 1, 0][i]));
});

test("layers hide and show, and know no others", () => {
  const layers = new Layers(["framing", "forms"], ["forms", "roof"]);
  assert.ok(layers.shows({ group: "framing" }) && !layers.shows({ group: "forms" }));
  layers.set("roof", false);
  layers.set("forms", true);
  assert.deepEqual(layers.state, []);
});

test("nothing moves while it is built; apart, the last built is farthest, the frame stays", () => {
  const groups = ["framing", "counter", "appliances"];
  const parts = groups.map((group) => ({ group, middle: [0, 0, 0] }));
  for (const move of moves(parts, groups, [0, 0, 0], 1000, 0)) assert.equal(Math.hypot(...move), 0);
  const apart = moves(parts, groups, [0, 0, 0], 1000, 1).map((m) => Math.hypot(...m));
  assert.equal(apart[0], 0);
  assert.ok(apart[2] > apart[1] && apart[1] > 0);
  // At a third of the way the appliances are under way and the counter has hardly begun.
  const third = moves(parts, groups, [0, 0, 0], 1000, 0.3).map((m) => Math.hypot(...m));
  assert.ok(third[2] > 200 && third[1] < third[2] / 4);
});

test("the cut plane goes from one side of the box to the other", () => {
  assert.equal(cutPlane(0, 0, box), null);
  assert.deepEqual(cutPlane(0, 0.25, box), [1, 0, 0, 2250]);
  assert.deepEqual(cutPlane(1, 1, box), [0, -1, 0, -800]);
  assert.equal(cutPlane(9, 0.5, box), null);
});

test("the pixel nearest to the finger counts", () => {
  const pixels = new Uint8Array(3 * 3 * 4);
  pixels[0] = 5;
  pixels[(3 * 1 + 2) * 4 + 1] = 1;
  assert.equal(nearest(pixels, 3, [2, 2]), 255);
  assert.equal(nearest(pixels, 3, [0, 0]), 4);
  assert.equal(nearest(new Uint8Array(36), 3, [1, 1]), null);
});

test("ticks are kept by island, and a broken store costs nothing", () => {
  const kept = new Map();
  const store = { getItem: (k) => kept.get(k) ?? null, setItem: (k, v) => kept.set(k, v) };
  new Ticks("garden", store).set("pour", true);
  assert.ok(new Ticks("garden", store).all.has("pour") && !new Ticks("yard", store).all.has("pour"));
  kept.set("build-book garden", "{broken");
  assert.equal(new Ticks("garden", store).all.size, 0);
  assert.equal(new Ticks("garden", null).set("pour", true), true);
  const full = { getItem: () => null, setItem: () => { throw new Error("full"); } };
  assert.equal(new Ticks("garden", full).set("pour", true), false);
});

test("a box round points is the smallest", () => {
  assert.deepEqual(boxRound([[1, 5, 3], [2, 4, 9]]), { low: [1, 4, 3], high: [2, 5, 9] });
});

const { moved } = await import(new URL("numbers.js", page));

test("a key moves the number at the cursor and leaves the rest", () => {
  const cases = [
    ["10 ft", 0, 1, "11 ft"], ["10 ft 6 in", 9, -1, "10 ft 5 in"], ["10 ft 6 in", 3, 1, "11 ft 6 in"], ["10'-6\"", 5, 1, "10'-7\""],
    ["3.50 m", 2, 1, "3.51 m"], ["3-1/2 in", 8, 1, "4 in"], ["3-1/2 in", 8, -1, "3 in"], ["1/4 in", 1, 1, "2/4 in"], ["1/4 in", 1, -1, "0 in"],
    ["-7.5 in", 3, 1, "-7.4 in"], ["-0.1", 4, 1, "-0.0"], ["2026-03-09", 10, 1, "2026-03-10"], ["9 mm", 4, 1, "10 mm"], ["ca. 5", 0, 1, "ca. 6"],
  ];
  for (const [text, at, by, wanted] of cases) assert.equal(moved(text, at, by)?.text, wanted, text);
  for (const text of ["", "sand", "0 in", "1/0 in"]) assert.equal(moved(text, 0, -1), null, text);
  assert.equal(moved("9 mm", 4, 1).at, 2);
});
