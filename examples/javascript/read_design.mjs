// Prints the guide positions of a design, with nothing but the schema and protobufjs. Reads the JSON and the binary form.
//
// Run, from the top of this repository:
//
//   cp examples/javascript/* /tmp/ && npm install --prefix /tmp protobufjs@7
//   withy convert examples/designs/casting.txtpb --output /tmp/casting.json
//   node /tmp/read_design.mjs proto /tmp/casting.json
//
// One guide a line, in the order of the file: id, then mm from the tip-top's ring centre to the guide's ring centre.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";
import protobuf from "protobufjs";

// The schema's own options extend this file, which protobufjs brings along.
const DESCRIPTOR = createRequire(import.meta.url).resolve("protobufjs/google/protobuf/descriptor.proto");

// `keepCase`: the files use the names of the schema (from_tip), which protobufjs would otherwise turn into fromTip and
// then silently not find.
async function loadSchema(protoFolder) {
  const root = new protobuf.Root();
  root.resolvePath = (origin, target) => {
    if (target.startsWith("withy/")) return resolve(protoFolder, target);
    return target.endsWith("/descriptor.proto") ? DESCRIPTOR : target;
  };
  await root.load("withy/v1/design.proto", { keepCase: true });
  return root.lookupType("withy.v1.Design");
}

// In JSON a plugin's data is plain JSON, which `fromObject` does not take for a Struct: read it from `json` itself.
function readDesign(Design, bytes) {
  const json = bytes.toString("utf8").trimStart();
  return json.startsWith("{") ? Design.fromObject(JSON.parse(json)) : Design.decode(bytes);
}

// A quantity has exactly one unit; 254 / 10 keeps what the author wrote exact where 25.4 would not.
const MM = { mm: (x) => x, inch: (x) => (x * 254) / 10, in64: (x) => (x * 254) / 640 };

// A Length in mm, or undefined where it is absent or has no unit: not known, never zero.
function mm(length) {
  return length?.unit ? MM[length.unit](length[length.unit]) : undefined;
}

const [protoFolder, path] = process.argv.slice(2);
if (!path) {
  console.error("usage: node read_design.mjs PROTO_FOLDER DESIGN");
  process.exit(2);
}
const design = readDesign(await loadSchema(protoFolder), readFileSync(path));
for (const guide of design.guides) {
  const place = mm(guide.from_tip);
  console.log(guide.id, place === undefined ? "not known" : `${place.toFixed(3)} mm`);
}
