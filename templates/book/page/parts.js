// What a part is, in words, and the list of all parts.

/** Shows what a part is and where it is on the cut list. */
export function describe(place, part) {
  place.replaceChildren();
  const line = (text, strong) => {
    const p = document.createElement("p");
    if (strong) {
      const bold = document.createElement("strong");
      bold.textContent = strong;
      p.append(bold, ` ${text}`);
    } else {
      p.textContent = text;
    }
    place.append(p);
  };
  for (const row of document.querySelectorAll("tr.found")) row.classList.remove("found");
  if (!part) {
    line("Tap a part to see what it is.");
    return;
  }
  line(part.kind, part.mark);
  line([part.section, part.length].filter(Boolean).join(", "));
  line([part.material, part.where].filter(Boolean).join(", "));
  const row = rowOf(part.mark);
  if (!row) return;
  row.classList.add("found");
  const table = row.closest("table");
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = `Go to it in ${row.closest("details").querySelector("summary").textContent.replace(/ \(\d+\)$/, "").toLowerCase()}`;
  button.addEventListener("click", () => {
    row.closest("details").open = true;
    row.scrollIntoView({ block: "center" });
    table.closest(".scroll").focus({ preventScroll: true });
  });
  place.append(button);
}

const rowOf = (mark) => document.querySelector(`tr[data-mark="${CSS.escape(mark)}"]`);

/** At most so many parts are listed at once: a finger does not scroll past a thousand. */
const LISTED = 120;

/** The list of parts by what is typed; `choose` is told a part's number. */
export function listParts(parts, { find, count, list }, choose) {
  const show = () => {
    const wanted = find.value.trim().toLowerCase();
    const named = parts.map((part, number) => ({ part, number }));
    const found = named.filter(({ part }) => `${part.mark} ${part.kind} ${part.where}`.toLowerCase().includes(wanted));
    count.textContent = found.length > LISTED ? `${found.length} parts, the first ${LISTED} listed` : `${found.length} parts`;
    list.replaceChildren(
      ...found.slice(0, LISTED).map(({ part, number }) => {
        const item = document.createElement("li");
        const button = document.createElement("button");
        button.type = "button";
        button.textContent = `${part.mark} ${part.kind}`;
        button.addEventListener("click", () => choose(number));
        item.append(button);
        return item;
      }),
    );
  };
  find.addEventListener("input", show);
  show();
}
