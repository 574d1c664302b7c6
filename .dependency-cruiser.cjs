/** Who may import whom. Layers, inner to outer: a layer may import itself and those listed. */
const may = {
  engine: [],
  words: ["engine"],
  publish: ["engine", "words"],
  contract: ["engine", "words"],
  store: ["engine"],
  media: ["engine"],
  app: ["engine", "words", "publish", "contract", "store", "media"],
  server: ["engine", "words", "contract", "app"],
  web: ["engine", "words", "publish", "contract"],
  cli: ["engine", "words", "contract", "app", "server"],
};
/** Folders of the engine, inner to outer: none may import a later one. */
const order = ["base", "names", "characters", "measurement", "outing", "season", "determination", "prose", "diagram", "exchange"];
/** npm packages the engine may use: schemas that also give the types, and a CSV reader and writer. */
const enginePackages = ["zod", "csv-parse", "csv-stringify"];
const engine = { path: "^src/engine/", pathNot: "\\.test\\.ts$" };
module.exports = {
  forbidden: [
    { name: "no-cycles", severity: "error", from: { path: "^src" }, to: { circular: true } },
    ...Object.entries(may).map(([layer, allowed]) => ({
      name: `${layer}-imports`,
      severity: "error",
      from: { path: `^src/${layer}/`, pathNot: "\\.test\\.ts$" },
      to: { path: "^src/", pathNot: `^src/(${[layer, ...allowed].join("|")})/` },
    })),
    ...order.slice(0, -1).map((name, i) => ({
      name: `engine-${name}-looks-inward`,
      severity: "error",
      from: { path: `^src/engine/${name}/`, pathNot: "\\.test\\.ts$" },
      to: { path: `^src/engine/(${order.slice(i + 1).join("|")})/` },
    })),
    {
      name: "through-the-front-door",
      severity: "error",
      from: { path: "^src/([^/]+)/" },
      to: { path: "^src/([^/]+)/(?!index\\.ts$).+", pathNot: "^src/$1/" },
    },
    { name: "engine-no-node", severity: "error", from: engine, to: { dependencyTypes: ["core"] } },
    {
      name: "engine-packages",
      severity: "error",
      from: engine,
      to: {
        dependencyTypes: ["npm", "npm-dev", "npm-optional", "npm-peer", "npm-no-pkg"],
        pathNot: `node_modules/(${enginePackages.join("|")})/`,
      },
    },
    { name: "no-undeclared", severity: "error", from: { path: "^src" }, to: { dependencyTypes: ["npm-no-pkg", "npm-unknown"] } },
    {
      name: "no-dev-in-shipped",
      severity: "error",
      from: { path: "^src", pathNot: "(\\.test\\.ts$|^src/web/)" },
      to: { dependencyTypes: ["npm-dev"], dependencyTypesNot: ["type-only"] },
    },
  ],
  options: {
    parser: "swc",
    // swc does not parse JSX here; .tsx files are held by the compiler (project references) and by oxlint (.oxlintrc.json, src/web).
    exclude: { path: "\\.tsx$" }, doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.base.json" },
  },
};
