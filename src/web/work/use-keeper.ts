/**
 * Keeps records one after another as they are tapped: says what was kept, offers to take it back, and when something does
 * not arrive keeps the deed at hand so that it can be sent again. Nothing that was tapped is dropped in silence.
 */
import { useQueryClient } from "@tanstack/react-query";
import { useCallback, useEffect, useRef, useState } from "react";
import { say } from "../../words/index.js";
import { call } from "../api.js";

/** Other answers are read anew once the hands rest. */
const readAfterMs = 700;

/** What `write` returns when nothing was kept because something was asked first. */
export const askedFirst = Symbol("asked first");

export interface Keeper {
  readonly said: string;
  readonly problem: unknown;
  /** Deeds that are on their way. */
  readonly busy: number;
  /** Sends once more what did not arrive; null when all did. */
  readonly again: (() => void) | null;
  /** Writes; `what` says it in words ("stem lines, four lines"). Resolves to whether it was kept. */
  readonly keep: (what: string, write: () => Promise<unknown>) => Promise<boolean>;
  readonly undo: () => void;
  readonly forget: () => void;
}

export const useKeeper = (): Keeper => {
  const client = useQueryClient();
  const [said, setSaid] = useState("");
  const [problem, setProblem] = useState<unknown>(null);
  const [busy, setBusy] = useState(0);
  const [unsent, setUnsent] = useState<readonly { readonly what: string; readonly write: () => Promise<unknown> }[]>([]);
  const chain = useRef<Promise<unknown>>(Promise.resolve());
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const readAnew = useCallback(() => {
    clearTimeout(timer.current);
    timer.current = setTimeout(() => void client.invalidateQueries(), readAfterMs);
  }, [client]);
  useEffect(
    () => () => {
      // leaving the place: what was kept must be seen at the next one at once
      clearTimeout(timer.current);
      void client.invalidateQueries();
    },
    [client],
  );

  const keep = useCallback(
    async (what: string, write: () => Promise<unknown>): Promise<boolean> => {
      setBusy((n) => n + 1);
      const deed = chain.current.then(async () => {
        try {
          const outcome = await write();
          setProblem(null);
          if (outcome === askedFirst) {
            setSaid(say("work.asked-first"));
            return false;
          }
          setSaid(say("work.kept-what", { what }));
          readAnew();
          return true;
        } catch (error) {
          setProblem(error);
          setSaid(say("work.not-kept", { what }));
          setUnsent((now) => [...now, { what, write }]);
          return false;
        } finally {
          setBusy((n) => n - 1);
        }
      });
      chain.current = deed;
      return deed;
    },
    [readAnew],
  );

  const undo = useCallback(() => {
    chain.current = chain.current.then(async () => {
      try {
        const { edit } = await call("POST /api/undo", {});
        setProblem(null);
        setSaid(edit === null ? say("work.nothing-to-undo") : say("work.taken-back", { what: edit.label }));
        await client.invalidateQueries();
      } catch (error) {
        setProblem(error);
      }
    });
  }, [client]);

  const again =
    unsent.length === 0
      ? null
      : () => {
          const deeds = unsent;
          setUnsent([]);
          setProblem(null);
          for (const { what, write } of deeds) void keep(what, write);
        };
  const forget = useCallback(() => {
    setProblem(null);
    setUnsent([]);
  }, []);
  return { said, problem, busy, again, keep, undo, forget };
};
