/** The front door of the page's layer: nothing imports the page; it begins at main.tsx. */
export { call } from "./api.js";
export type { RouteInput, RouteKey, RouteReply } from "./api.js";
