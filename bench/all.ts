/** Runs every bench, one after another. Each prints its own table. */
export {};
await import("./one-look.bench.js");
await import("./store.bench.js");
await import("./derivatives.bench.js");
