// The least that answers over the same library: Hono, one reply. Argument: the port.
import { serve } from "@hono/node-server";
import { Hono } from "hono";

const app = new Hono();
app.get("/api/book", (c) => c.json({ title: "nothing" }));
serve({ fetch: app.fetch, port: Number(process.argv[2]), hostname: "127.0.0.1" });
