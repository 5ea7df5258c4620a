// The live view: the picture follows the file, and inputs write into it.

import { inflated, shapesFrom } from "../view/model.js";
import { moved } from "./numbers.js";

/** A number that is moved by keys is written when the keys rest so long, milliseconds. */
const REST = 180;

/** The island as the server gives it, ready for the picture. */
async function asked() {
  const answer = await fetch("island", { cache: "no-store" });
  const said = await answer.json();
  const shapes = said.island ? shapesFrom(await inflated(said.island.packed), said.island.shapes) : null;
  return { ...said, shapes };
}

/** What is wrong with the file now, over the last good island. */
function showReport(report) {
  const place = document.getElementById("live");
  place.replaceChildren();
  place.className = report ? "broken" : "";
  if (!report) return;
  const title = document.createElement("h2");
  title.textContent = "The file cannot be built as it is";
  const text = document.createElement("pre");
  text.textContent = report;
  place.append(title, "The last island that could be built stays below.", text);
}

/** Puts the chapters of a new page in place of the old ones, but for the picture, and keeps what is open. */
function replaceChapters(page, refreshed) {
  for (const section of document.querySelectorAll("main > section")) {
    if (section.id === "island") continue;
    const fresh = page.getElementById(section.id);
    if (!fresh) continue;
    if (section.id === "numbers") replaceInputs(section, fresh);
    else {
      const opened = [...section.querySelectorAll("details")].map((d) => d.open);
      section.replaceChildren(...fresh.childNodes);
      section.querySelectorAll("details").forEach((d, i) => (d.open = opened[i] ?? d.open));
    }
  }
  const sheets = document.getElementById("sheet-data");
  sheets.textContent = page.getElementById("sheet-data").textContent;
  refreshed();
}

/** New figures, and new values for inputs that nobody is writing in; other inputs when there are others. */
function replaceInputs(section, fresh) {
  section.querySelector("#figures").innerHTML = fresh.querySelector("#figures").innerHTML;
  const keys = (root) => [...root.querySelectorAll("[data-key]")].map((i) => i.dataset.key).join("\n");
  if (keys(section) === keys(fresh)) {
    for (const input of section.querySelectorAll("[data-key]")) {
      const other = fresh.querySelector(`[data-key="${CSS.escape(input.dataset.key)}"]`);
      if (input !== document.activeElement) input.value = other.value;
    }
    return;
  }
  const open = new Set([...section.querySelectorAll("details[open]")].map((d) => d.dataset.group));
  const all = section.querySelector("#numbers-all");
  all.replaceChildren(...fresh.querySelector("#numbers-all").childNodes);
  all.querySelectorAll("details").forEach((d) => (d.open = open.has(d.dataset.group)));
}

/** Listens for news and for inputs; `refreshed` ties what new chapters need. */
export function goLive(view, { refreshed, shown }) {
  const numbers = document.getElementById("numbers");
  if (!numbers) return;
  const say = document.getElementById("numbers-say");
  let seen = null;
  // By which the text is known that was written last, until the picture of it has come.
  let awaited = null;
  let pageOf = null;
  let asking = false;
  let again = false;
  const look = async () => {
    if (asking) {
      again = true;
      return;
    }
    asking = true;
    try {
      do {
        again = false;
        await take();
      } while (again);
    } finally {
      asking = false;
    }
  };
  const take = async () => {
    const said = await asked();
    showReport(said.report);
    if (said.seen !== seen && said.island && !said.report) {
      view?.replace(said.island, said.shapes);
      document.getElementById("findings-all").innerHTML = said.findings;
      shown();
      document.documentElement.dataset.shown = said.seen;
    }
    seen = said.seen;
    if (seen === awaited) awaited = null;
    if (said.page_of && said.page_of !== pageOf) {
      if (pageOf !== null) {
        const text = await (await fetch("./", { cache: "no-store" })).text();
        replaceChapters(new DOMParser().parseFromString(text, "text/html"), refreshed);
      }
      pageOf = said.page_of;
    }
    document.documentElement.dataset.seen = said.seen;
  };
  const write = async (path, body) => {
    const answer = await fetch(path, { method: "POST", headers: { "x-token": numbers.dataset.token }, body });
    const text = await answer.text();
    say.textContent = answer.ok ? "Written." : `Not written: ${text}`;
    awaited = answer.ok ? text : null;
    if (!answer.ok) look();
  };
  numbers.addEventListener("change", async (event) => {
    const input = event.target.closest("[data-key]");
    if (input) await write("change", JSON.stringify({ key: input.dataset.key, value: input.value, seen: awaited ?? seen }));
  });
  let rests = 0;
  numbers.addEventListener("keydown", (event) => {
    const up = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    const input = event.target.closest("input[data-key]");
    const next = up && input && moved(input.value, input.selectionStart, up);
    if (!next) return;
    event.preventDefault();
    input.value = next.text;
    input.setSelectionRange(next.at, next.at);
    clearTimeout(rests);
    rests = setTimeout(() => input.dispatchEvent(new Event("change", { bubbles: true })), REST);
  });
  document.getElementById("undo").addEventListener("click", () => write("undo", ""));
  const events = new EventSource("events");
  events.onmessage = look;
  events.onopen = look;
}
