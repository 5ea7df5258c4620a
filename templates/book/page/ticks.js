// Ticks of the checklists, remembered on this device.

/** Where the ticks of an island are kept; pages of other islands have places of their own. */
export class Ticks {
  constructor(name, store) {
    this.name = `build-book ${name}`;
    this.store = store;
  }

  get all() {
    try {
      const kept = JSON.parse(this.store?.getItem(this.name) ?? "[]");
      return new Set(Array.isArray(kept) ? kept : []);
    } catch {
      return new Set();
    }
  }

  set(id, ticked) {
    const all = this.all;
    if (ticked) all.add(id);
    else all.delete(id);
    try {
      this.store?.setItem(this.name, JSON.stringify([...all].sort()));
      return true;
    } catch {
      return false;
    }
  }
}

/** The device's own store; `null` where there is none, as in some private windows. */
export function deviceStore() {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

/** Ties the boxes of a page to its ticks. */
export function tieTicks(root, ticks) {
  const kept = ticks.all;
  for (const box of root.querySelectorAll("input[data-tick]")) {
    box.checked = kept.has(box.dataset.tick);
    box.addEventListener("change", () => ticks.set(box.dataset.tick, box.checked));
  }
}
