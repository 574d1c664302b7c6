/** Runs every bench, one after another; each gives its figures. `npm run bench` prints them, `npm run figures` writes them down. */
import { derivativeFigures } from "./derivatives.bench.js";
import { gridFigures } from "./grid.bench.js";
import { oneLookFigures } from "./one-look.bench.js";
import { isStarted, report, type Figure } from "./report.js";
import { serverReadyFigures } from "./server-ready.bench.js";
import { storeFigures } from "./store.bench.js";

export const benches: readonly { readonly title: string; readonly measure: () => Promise<readonly Figure[]> }[] = [
  { title: "One look over 100,000 taxa, characters of 4 states", measure: oneLookFigures },
  { title: "From start to first answer", measure: serverReadyFigures },
  { title: "Scrolling through 10,000 photographs", measure: gridFigures },
  { title: "Small copies of photographs", measure: () => derivativeFigures() },
  { title: "The store", measure: storeFigures },
];

if (isStarted(import.meta.url)) for (const { title, measure } of benches) report(title, await measure());
