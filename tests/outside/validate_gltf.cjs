// What the glTF validator says of each file that is named, as one JSON list.
const fs = require("node:fs");
const validator = require("gltf-validator");

const reports = process.argv.slice(2).map((path) =>
  validator.validateBytes(new Uint8Array(fs.readFileSync(path)), { uri: path, maxIssues: 0 }),
);
Promise.all(reports).then((found) => console.log(JSON.stringify(found)));
