// validate.mjs FOLDER: compiles the schemas in FOLDER as draft 2020-12, validates the cases and what the manifest lists.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import { cases } from "./cases.mjs";

const folder = process.argv[2];
const readJson = (name) => JSON.parse(readFileSync(join(folder, name), "utf8"));
// Strict, but for two matters of style: `if` and `then` name fields without saying again that they are of an object.
const ajv = new Ajv2020.default({ allErrors: true, strict: true, strictTypes: false, strictRequired: false });

const validators = {};
for (const name of ["Design", "Report", "CheckReport", "WorkPlan", "WhyReport", "Calibration"]) {
  const schema = readJson(`${name}.schema.json`);
  if (!ajv.validateSchema(schema)) throw new Error(`${name}: ${ajv.errorsText()}`);
  validators[name] = ajv.compile(schema);
}

let failures = 0;
function expect(what, holds, errors) {
  if (holds) return;
  failures += 1;
  console.error(`FAILED ${what}\n  ${ajv.errorsText(errors, { separator: "\n  " })}`);
}

// Whether some complaint points at the place and gives the name that the case asks for.
const complains = (errors, { path, names }) =>
  errors.some((e) => e.instancePath === path && (!names || Object.values(e.params).includes(names)));

for (const { name, design, refused } of cases) {
  const valid = validators.Design(design);
  const errors = validators.Design.errors ?? [];
  expect(name, refused ? !valid && complains(errors, refused) : valid, errors);
}

const manifest = readJson("manifest.json");
for (const { schema, file, sound } of manifest) {
  const valid = validators[schema](readJson(file));
  expect(`${file} (${sound ? "sound" : "broken structure"})`, valid === sound, validators[schema].errors);
}

// Nothing is passed over: the four examples at least, each with its report and findings.
for (const schema of ["Design", "Report", "CheckReport", "WorkPlan", "WhyReport", "Calibration"]) {
  expect(`files of ${schema}`, manifest.filter((m) => m.schema === schema && m.sound).length >= 4, []);
}

// Names are offered by the schema's spelling, and known words before the open end.
const definitions = readJson("Design.schema.json").$defs;
expect("tip_top is offered", "tip_top" in definitions.Design.properties && !("tipTop" in definitions.Design.properties), []);
expect("words come first", definitions.Intent.properties.technique.anyOf[0].enum.includes("casting"), []);
expect("fields are described", definitions.Guide.properties.from_tip.description.includes("tip-top's ring centre"), []);

console.log(`${cases.length} cases, ${manifest.length} files, ${failures} failures`);
process.exit(failures === 0 ? 0 : 1);
