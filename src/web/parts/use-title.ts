import { useEffect } from "react";
import { useApi } from "../api.js";
import { say } from "../../words/index.js";

/** Names the window after the place and the book. */
export const useTitle = (place: string): void => {
  const book = useApi("GET /api/book", {}).data?.info.title ?? say("app.name");
  useEffect(() => {
    document.title = say("web.title", { place, book });
  }, [place, book]);
};
