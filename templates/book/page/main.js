// The page begins here.

import { start } from "./start.js";

start()
  .then((view) => {
    document.documentElement.dataset.ready = view ? "picture" : "drawn";
  })
  .catch((error) => {
    document.documentElement.dataset.ready = "failed";
    throw error;
  });
