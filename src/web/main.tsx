/** Puts the page into the document. */
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { ApiProblem } from "./api.js";
import { App } from "./app.js";
import { applyLook, applyType, storedLook, storedType } from "./parts/look.js";
import "./styles/fonts.css";
import "./styles/tokens.css";
import "./styles/base.css";
import "./styles/parts.css";
import "./styles/print.css";

applyLook(storedLook());
applyType(storedType());

const client = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: 15_000,
      // A problem the server reported stays one; only silence is worth a second try.
      retry: (count, problem) => problem instanceof ApiProblem && problem.code === "no-answer" && count < 1,
    },
  },
});

const root = document.querySelector("#page");
if (root === null) throw new TypeError("index.html has no element #page to draw into");
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={client}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
