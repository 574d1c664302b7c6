/** The shared parts of the page. */
export { Dialog } from "./dialog.js";
export { EmptyState } from "./empty-state.js";
export { Field } from "./field.js";
export { Figure } from "./figure.js";
export { Loading } from "./loading.js";
export { Name, TaxonText } from "./name.js";
export { Notice } from "./notice.js";
export { imageAddress, Photo } from "./photo.js";
export { ProblemNote } from "./problem-note.js";
export { Tile, TileButton, TileLegend, tileKinds, tileWord } from "./tile.js";
export { addressWith, To } from "./to.js";
export { useTitle } from "./use-title.js";
export { useUpTo } from "./use-up-to.js";
export { longDate, mediumDate, shortDate } from "./dates.js";
