/** The Chromium the walks run in: the system's, never a fetched one. */
import { existsSync } from "node:fs";

const wanted = process.env["STIPULE_CHROMIUM"] ?? "/usr/bin/chromium";

/** Its path; undefined where there is none. */
export const chromiumPath: string | undefined = existsSync(wanted) ? wanted : undefined;

export const noChromium = `No Chromium at ${wanted}. Install the package "chromium", or name one by the environment variable STIPULE_CHROMIUM.`;

/** It runs as root in containers, has no graphics card, and must ask nothing of the network. */
export const chromiumArgs = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
