// Prints a command of the README by its name, so that what is tested is what is written: node scripts/readme-command.mjs test
import { readFileSync } from "node:fs";

const name = process.argv[2];
const readme = readFileSync(new URL("../README.md", import.meta.url), "utf8");
const found = new RegExp(`<!-- command: ${name} -->\\s*\`\`\`sh\\n([^\`]+)\`\`\``, "u").exec(readme);
if (found === null) {
  console.error(`README.md has no command called "${name}".`);
  process.exit(1);
}
console.log(found[1].trim());
