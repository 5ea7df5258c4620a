// Sheets that open when they are asked for: kept small in the page until then.

import { inflated } from "../view/model.js";

let pages = null;

/** Other sheets have come: they are read anew. */
export function forgetSheets() {
  pages = null;
}

/** The text of a sheet as SVG. */
export async function sheetText(number) {
  pages ??= inflated(document.getElementById("sheet-data").textContent).then((bytes) => JSON.parse(new TextDecoder().decode(bytes)));
  return (await pages)[number];
}

/** A sheet as a picture with an alternative text. */
export async function sheetImage(number, about) {
  const image = document.createElement("img");
  const text = await sheetText(number);
  image.src = URL.createObjectURL(new Blob([text], { type: "image/svg+xml" }));
  image.alt = about;
  return image;
}

const SIZES = [100, 175, 300];

/** Fills a sheet's place when it is first opened. */
export function openSheets(root) {
  for (const place of root.querySelectorAll("details.sheet")) {
    place.addEventListener("toggle", async () => {
      if (!place.open || place.querySelector("figure")) return;
      const figure = document.createElement("figure");
      const paper = document.createElement("div");
      paper.className = "paper";
      paper.tabIndex = 0;
      paper.setAttribute("role", "region");
      const title = place.querySelector("summary").textContent.trim();
      paper.setAttribute("aria-label", title);
      place.append(figure);
      const image = await sheetImage(Number(place.dataset.sheet), `Drawing: ${title}`);
      paper.append(image);
      figure.append(sizes(image), paper);
    });
  }
}

function sizes(image) {
  const row = document.createElement("div");
  row.className = "sizes";
  let at = 0;
  const button = (text, step) => {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = text;
    made.addEventListener("click", () => {
      at = Math.min(Math.max(at + step, 0), SIZES.length - 1);
      image.style.width = `${SIZES[at]}%`;
    });
    return made;
  };
  row.append(button("Larger", 1), button("Smaller", -1));
  return row;
}
