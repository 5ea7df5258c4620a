// Puts the page together.

import { inflated, shapesFrom } from "../view/model.js";
import { IslandView } from "../view/island.js";
import { WAYS } from "../view/cutplane.js";
import { forgetSheets, openSheets, sheetImage } from "./sheets.js";
import { Ticks, deviceStore, tieTicks } from "./ticks.js";
import { describe, listParts } from "./parts.js";
import { goLive } from "./live.js";

const by = (id) => document.getElementById(id);

/** The island's data and its shapes as the page carries them. */
export async function carried() {
  const data = JSON.parse(by("island-data").textContent);
  const shapes = shapesFrom(await inflated(by("island-shapes").textContent), data.shapes);
  return { data, shapes };
}

function element(name, properties = {}, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}

/** Buttons that look from the named views. */
function viewButtons(view) {
  const buttons = view.data.views.map((named) => {
    const button = element("button", { type: "button", textContent: named.name });
    button.addEventListener("click", () => view.look(named));
    return button;
  });
  document.querySelector(".views").replaceChildren(...buttons);
}

/** A switch for each group of parts. */
function layerSwitches(view) {
  const row = document.querySelector(".layers");
  for (const group of view.data.groups) {
    const box = element("input", { type: "checkbox", checked: !view.layers.hidden.has(group.name) });
    box.dataset.layer = group.name;
    box.addEventListener("change", () => view.setLayer(group.name, box.checked));
    row.append(element("label", {}, box, group.label));
  }
}

/** The slider that takes the island apart, and the plane that cuts it open. */
function sliders(view) {
  const apart = by("apart");
  const says = () => {
    const amount = Number(apart.value);
    by("apart-says").textContent = amount === 0 ? "built" : amount === 100 ? "apart" : `${amount} %`;
    view.setApart(amount / 100);
  };
  apart.addEventListener("input", says);
  const way = by("cut-way");
  way.append(...WAYS.map((w, i) => element("option", { value: String(i), textContent: w.name })));
  const share = by("cut-share");
  const cut = () => {
    by("cut-says").textContent = share.value === "0" ? "not cut" : `${share.value} %`;
    view.setCut(Number(way.value), Number(share.value) / 100);
  };
  way.addEventListener("change", cut);
  share.addEventListener("input", cut);
}

/** Where there is no WebGL: the drawn views in place of the picture. */
async function drawnInstead(data) {
  by("picture").hidden = true;
  document.querySelector(".tools").hidden = true;
  document.querySelector(".parts").hidden = true;
  const place = by("drawn");
  place.hidden = false;
  place.append(element("p", { textContent: "This device shows no picture in three dimensions; here are the drawn views." }));
  for (const { at, title } of data.drawn) place.append(await sheetImage(at, title));
}

/** Findings point into the picture. */
function findingButtons(view, choose) {
  for (const button of document.querySelectorAll("button.show")) {
    button.addEventListener("click", () => {
      const [first] = button.dataset.parts.split(" ").map(Number);
      choose(first);
      by("picture").scrollIntoView({ block: "center" });
      by("picture").focus({ preventScroll: true });
    });
  }
}

export async function start() {
  openSheets(document);
  const title = document.querySelector("h1").textContent;
  const ticks = new Ticks(title, deviceStore());
  tieTicks(document, ticks);
  const { data, shapes } = await carried();
  let view;
  const told = (number) => describe(by("chosen"), number === null ? null : view.data.parts[number]);
  try {
    view = new IslandView(by("picture"), data, shapes, { tapped: told });
  } catch {
    await drawnInstead(data);
    return null;
  }
  const choose = (number) => {
    const group = view.data.parts[number]?.group;
    const box = document.querySelector(`[data-layer="${group}"]`);
    if (box && !box.checked) box.click();
    view.choose(number);
    told(number);
  };
  viewButtons(view);
  layerSwitches(view);
  sliders(view);
  findingButtons(view, choose);
  goLive(view, {
    refreshed: () => {
      forgetSheets();
      openSheets(document);
      tieTicks(document, ticks);
      findingButtons(view, choose);
    },
    shown: () => {
      findingButtons(view, choose);
      told(view.chosen);
    },
  });
  listParts(data.parts, { find: by("part-find"), count: by("part-count"), list: by("part-list") }, choose);
  return view;
}
