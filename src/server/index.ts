/** The front door of the local server. */
export { createServer } from "./create-server.js";
export type { ServerOptions } from "./create-server.js";
export { openApiDocument } from "./openapi.js";
export { CannotServe, defaultPort, serveBook } from "./main.js";
export type { Running, ServeOptions } from "./main.js";
