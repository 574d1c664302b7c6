import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

/** Where `npm start` answers; the page's own dev server passes on what is not the page. */
const server = process.env["STIPULE_SERVER"] ?? "http://127.0.0.1:4810";

/**
 * The page is served under a content policy without inline script or style: no module preload polyfill (it would be the one
 * script Vite inlines), no assets as data: URLs, styles only from files.
 */
export default defineConfig({
  root: "src/web",
  plugins: [react()],
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    manifest: true,
    reportCompressedSize: true,
  },
  server: {
    host: "127.0.0.1",
    port: 4811,
    // The server answers only its own pages; the dev server speaks for them.
    proxy: Object.fromEntries(
      ["/api/", "/image/", "/published/"].map((path) => [path, { target: server, changeOrigin: true, headers: { origin: server } }]),
    ),
  },
});
