/** The shared parts of the page. */
export { Dialog } from "./dialog.js";
export { EmptyState } from "./empty-state.js";
export { Loading } from "./loading.js";
export { Name } from "./name.js";
export { Notice } from "./notice.js";
export { imageAddress, Photo } from "./photo.js";
export { ProblemNote } from "./problem-note.js";
export { To } from "./to.js";
export { useTitle } from "./use-title.js";
export { longDate, mediumDate, shortDate } from "./dates.js";
