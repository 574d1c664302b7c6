/**
 * Says something of many sheets: the page shows it at once, the server is told one change after another, and when it
 * refuses, the sheets go back to what they were and the reason is shown. One call is one edit and one undo.
 */
import { useQueryClient, type QueryClient } from "@tanstack/react-query";
import { useCallback, useEffect, useRef, useState } from "react";
import type { SheetChange, SheetRow } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { call } from "../../api.js";

const sheetsKey = ["GET /api/sheets", {}] as const;
interface Sheets {
  readonly sheets: SheetRow[];
}

/** A sheet as it will be after a change. */
export const changed = (sheet: SheetRow, change: SheetChange): SheetRow => ({
  ...sheet,
  ...(change.plantId === undefined
    ? {}
    : { plantId: change.plantId, placedBy: change.plantId === null ? ("nobody" as const) : ("hand" as const) }),
  ...(change.outingId === undefined ? {} : { outingId: change.outingId }),
  ...(change.stageId === undefined ? {} : { stageId: change.stageId }),
  ...(change.viewId === undefined ? {} : { viewId: change.viewId }),
  ...(change.part === undefined ? {} : { part: change.part }),
  ...(change.altText === undefined ? {} : { hasAlt: change.altText !== "" }),
  ...(change.leaveOut === undefined ? {} : { leftOut: change.leaveOut !== null }),
});

const replace = (client: QueryClient, rows: ReadonlyMap<string, SheetRow>): void => {
  client.setQueryData<Sheets>(sheetsKey, (now) => (now === undefined ? now : { sheets: now.sheets.map((row) => rows.get(row.id) ?? row) }));
};

/** Other answers (plants, the year) are read anew once the hands rest; not after every key. */
const othersAfterMs = 1500;

export const useSheetChange = () => {
  const client = useQueryClient();
  const [said, setSaid] = useState("");
  const [problem, setProblem] = useState<unknown>(null);
  const chain = useRef<Promise<void>>(Promise.resolve());
  const rest = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(rest.current), []);

  const othersLater = useCallback(() => {
    clearTimeout(rest.current);
    rest.current = setTimeout(() => {
      void client.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== sheetsKey[0] });
    }, othersAfterMs);
  }, [client]);

  const change = useCallback(
    (ids: readonly string[], what: SheetChange, label: string) => {
      if (ids.length === 0) return;
      const wanted = new Set(ids);
      const before = new Map<string, SheetRow>();
      const after = new Map<string, SheetRow>();
      for (const row of client.getQueryData<Sheets>(sheetsKey)?.sheets ?? []) {
        if (!wanted.has(row.id)) continue;
        before.set(row.id, row);
        after.set(row.id, changed(row, what));
      }
      void client.cancelQueries({ queryKey: sheetsKey });
      replace(client, after);
      setProblem(null);
      chain.current = chain.current.then(async () => {
        try {
          await call("PATCH /api/sheets", { body: { ids: [...before.keys()] as SheetRow["id"][], change: what } });
          setSaid(say("sort.kept", { what: label, count: before.size }));
          for (const id of ids) void client.invalidateQueries({ queryKey: ["GET /api/sheets/{photoId}", { params: { photoId: id } }] });
          othersLater();
        } catch (error) {
          replace(client, before);
          setSaid(say("sort.rolled-back", { count: before.size }));
          setProblem(error);
          void client.invalidateQueries({ queryKey: sheetsKey });
        }
      });
    },
    [client, othersLater],
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

  return { change, undo, said, problem };
};
