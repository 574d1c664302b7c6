/** The reading day, kept in the address (`?upTo=2022-08-21`): only evidence up to it counts. */
import { useCallback } from "react";
import { useSearchParams } from "wouter";
import type { RouteInput } from "../api.js";

/** A query with the reading day, or none when the book is read at its own day. */
export type DayQuery = Exclude<RouteInput<"GET /api/year">["query"], undefined>;

/** The reading day chosen in the address, as a route's query; and how to choose another (null = the book's own). */
export const useUpTo = (): {
  readonly upTo: string | undefined;
  readonly query: DayQuery;
  readonly choose: (day: string | null) => void;
} => {
  const [search, setSearch] = useSearchParams();
  const text = search.get("upTo") ?? "";
  const upTo = /^\d{4}-\d{2}-\d{2}$/.test(text) ? text : undefined;
  const choose = useCallback(
    (day: string | null) => {
      setSearch((now) => {
        const next = new URLSearchParams(now);
        if (day === null) next.delete("upTo");
        else next.set("upTo", day);
        return next;
      });
    },
    [setSearch],
  );
  return { upTo, query: upTo === undefined ? {} : { upTo }, choose };
};
