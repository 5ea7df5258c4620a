// Fingers, mouse and keys on the picture, told to a camera.

const TURN = 0.008;
const STEP = Math.PI / 18;
const PRESSED_STILL = 6;

/**
 * Listens on a canvas. `changed` is called when the camera moved, `tapped` with the place of a tap in pixels of the page
 * from the canvas's upper left corner.
 */
export function listen(canvas, camera, { changed, tapped, home }) {
  const down = new Map();
  let travelled = 0;
  const place = (event) => {
    const box = canvas.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  };
  const share = ([x, y]) => [(2 * x) / canvas.clientWidth - 1, 1 - (2 * y) / canvas.clientHeight];

  canvas.addEventListener("pointerdown", (event) => {
    canvas.setPointerCapture(event.pointerId);
    if (down.size === 0) travelled = 0;
    down.set(event.pointerId, place(event));
  });
  canvas.addEventListener("pointermove", (event) => {
    const before = down.get(event.pointerId);
    if (!before) return;
    const now = place(event);
    const [x, y] = [now[0] - before[0], now[1] - before[1]];
    travelled += Math.hypot(x, y);
    if (down.size === 1) {
      const pans = event.shiftKey || event.buttons > 1;
      if (pans) camera.pan(x, y);
      else camera.orbit(-x * TURN, y * TURN);
    } else {
      pinch(down, event.pointerId, now, camera, share);
    }
    down.set(event.pointerId, now);
    changed();
  });
  const up = (event) => {
    const was = down.delete(event.pointerId);
    if (was && event.type === "pointerup" && down.size === 0 && travelled < PRESSED_STILL) tapped(place(event));
  };
  canvas.addEventListener("pointerup", up);
  canvas.addEventListener("pointercancel", up);
  canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  canvas.addEventListener(
    "wheel",
    (event) => {
      // The page scrolls past a picture that nobody works with.
      if (document.activeElement !== canvas && !event.ctrlKey) return;
      event.preventDefault();
      const lines = event.deltaMode === 1 ? 30 : 1;
      camera.zoom(Math.exp((event.deltaY * lines) / 900), share(place(event)));
      changed();
    },
    { passive: false },
  );
  canvas.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const key = keyed(event.key, event.shiftKey, camera, home);
    if (!key) return;
    event.preventDefault();
    changed();
  });
}

/** Two fingers: the picture follows the middle between them and grows with their distance. */
function pinch(down, id, now, camera, share) {
  const other = [...down].find(([key]) => key !== id)[1];
  const before = down.get(id);
  const middle = [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2];
  camera.pan((now[0] - before[0]) / 2, (now[1] - before[1]) / 2);
  const apart = (p) => Math.hypot(p[0] - other[0], p[1] - other[1]);
  if (apart(now) > 1) camera.zoom(apart(before) / apart(now), share(middle));
}

function keyed(key, shift, camera, home) {
  const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  const arrow = arrows[key];
  if (arrow && shift) camera.pan(-arrow[0] * 40, -arrow[1] * 40);
  else if (arrow) camera.orbit(arrow[0] * STEP, -arrow[1] * STEP);
  else if (key === "+" || key === "=") camera.zoom(1 / 1.2);
  else if (key === "-" || key === "_") camera.zoom(1.2);
  else if (key === "Home" || key === "0") home();
  else return false;
  return true;
}
