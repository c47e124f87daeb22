// validate.cjs FOLDER: every .sarif file in FOLDER against the JSON schema of SARIF 2.1.0 (errata 01, "rtm.5"), as the package
// @microsoft/jest-sarif carries it. The schema is of draft 4.
const { readFileSync, readdirSync } = require("node:fs");
const { join } = require("node:path");
const Ajv = require("ajv");

const ajv = new Ajv({ schemaId: "auto", allErrors: true, unknownFormats: ["uri-reference"], logger: false });
ajv.addMetaSchema(require("ajv/lib/refs/json-schema-draft-04.json"));
const schema = require("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json");
const validate = ajv.compile(schema);

// The validator itself must be able to say no.
if (validate({ version: "2.1.0" })) throw new Error("the schema accepts a log without runs");

const folder = process.argv[2];
const files = readdirSync(folder).filter((name) => name.endsWith(".sarif"));
let failures = 0;
for (const file of files) {
  if (validate(JSON.parse(readFileSync(join(folder, file), "utf8")))) continue;
  failures += 1;
  console.error(`${file}: ${ajv.errorsText(validate.errors, { separator: "\n  " })}`);
}
console.log(`${files.length} SARIF files, ${failures} failures`);
process.exit(failures === 0 && files.length >= 5 ? 0 : 1);
