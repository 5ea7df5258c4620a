// Which groups of parts are shown.

/** Switches for the groups; some begin switched off. */
export class Layers {
  constructor(groups, off = []) {
    this.groups = groups;
    this.hidden = new Set(off.filter((g) => groups.includes(g)));
  }

  shows(part) {
    return !this.hidden.has(part.group);
  }

  set(group, shown) {
    if (!this.groups.includes(group)) return;
    if (shown) this.hidden.delete(group);
    else this.hidden.add(group);
  }

  get state() {
    return [...this.hidden];
  }

  set state(hidden) {
    this.hidden = new Set([...hidden].filter((g) => this.groups.includes(g)));
  }
}
