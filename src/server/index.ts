/** The front door of the local server. */
export { createServer } from "./create-server.js";
export type { ServerOptions } from "./create-server.js";
export { openApiDocument } from "./openapi.js";
