/**
 * The sorting trays: the strip of time, trays per plant, the contact sheet, the sheet under the keyboard large, and on the
 * right what is still missing. Everything can be done by single keys and everything by buttons; nothing only by dragging.
 */
import { useMemo, useState } from "react";
import type { KeyboardEvent } from "react";
import type { SheetChange, SheetRow } from "../../../contract/index.js";
import { partOrder, stageOfPhoto } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { useApi } from "../../api.js";
import { Dialog, EmptyState, Loading, mediumDate, Photo, ProblemNote, To, useTitle } from "../../parts/index.js";
import { Says } from "../../work/says.js";
import "../../work/work.css";
import { ClockProposals } from "../bring/clock-proposals.js";
import { ContactSheet } from "./contact-sheet.js";
import { KeyLegend } from "./key-legend.js";
import { changeFor, meaningOf, type Choice, type RowKind, type Rows, type UnderDigits } from "./keys.js";
import { MissingList } from "./missing-list.js";
import { sheetReasons } from "./reasons.js";
import { choose, keepChosen, nothingChosen, type Selection } from "./selection.js";
import { FindDialog, ReasonDialog } from "./sheet-dialogs.js";
import { SheetSays } from "./sheet-says.js";
import "./sorting.css";
import { TimeStrip } from "./time-strip.js";
import { daysOf, sheetsIn, trayCounts, type TrayId } from "./trays.js";
import { useSheetChange } from "./use-sheet-change.js";

const noSheets: readonly SheetRow[] = [];
const tileWidths = { small: 116, middle: 168, large: 260 } as const;

export const Place = () => {
  useTitle(say("sort.title"));
  const sheetsQuery = useApi("GET /api/sheets", {});
  const book = useApi("GET /api/book", {});
  const plantsQuery = useApi("GET /api/plants", {});
  const outingsQuery = useApi("GET /api/outings", {});
  const { change, undo, said, problem } = useSheetChange();

  const [trayChosen, setTray] = useState<TrayId | null>(null);
  const [day, setDay] = useState("");
  const [raw, setSelection] = useState<Selection>(nothingChosen);
  const [under, setUnder] = useState<UnderDigits>({ row: "view", page: 0 });
  const [last, setLast] = useState<{ readonly change: SheetChange; readonly label: string } | null>(null);
  const [open, setOpen] = useState<"find" | "reason" | "large" | null>(null);
  const [tile, setTile] = useState<keyof typeof tileWidths>("middle");

  const sheets = sheetsQuery.data?.sheets ?? noSheets;
  const counts = useMemo(() => trayCounts(sheets), [sheets]);
  const days = useMemo(() => daysOf(sheets), [sheets]);
  const tray: TrayId = trayChosen ?? (counts.has("unsorted") ? "unsorted" : counts.has("not-sure") ? "not-sure" : "all");
  const shown = useMemo(() => sheetsIn(sheets, { tray, day }), [sheets, tray, day]);
  const ids = useMemo(() => shown.map(({ id }) => id as string), [shown]);
  const selection = useMemo(() => keepChosen(ids, raw), [ids, raw]);
  const here = shown[selection.at];

  const plants = plantsQuery.data?.plants;
  const info = book.data;
  const rows = useMemo<Rows>(
    () => ({
      plant: (plants ?? []).map(({ plant }) => ({ value: plant.id, label: plant.nick })),
      view: (info?.views ?? []).map(({ id, name }) => ({ value: id, label: name })),
      stage: (info?.stages ?? []).map(({ id, name }) => ({ value: id, label: name })),
      part: [...new Set([...partOrder, ...(info?.views ?? []).map(({ part }) => part)])]
        .filter((part) => part !== "")
        .map((part) => ({ value: part, label: part })),
    }),
    [plants, info],
  );
  const labelOf = (row: RowKind, value: string | null): string => rows[row].find((choice) => choice.value === value)?.label ?? value ?? "";

  if (sheetsQuery.isPending || book.isPending || plantsQuery.isPending) return <Loading />;
  if (sheetsQuery.error !== null) return <ProblemNote problem={sheetsQuery.error} again={() => void sheetsQuery.refetch()} />;
  if (sheets.length === 0)
    return (
      <EmptyState title={say("sort.empty-title")} text={say("sort.empty-text")}>
        <To href="/bring" className="button main">
          {say("bring.title")}
        </To>
      </EmptyState>
    );

  const chosen = [...selection.chosen];
  const all = (what: SheetChange, label: string): void => {
    change(chosen, what, label);
    setLast({ change: what, label });
  };
  const sayOf = (row: RowKind, choice: Choice): void => all(changeFor(row, choice.value), choice.label);
  const next = (): void => {
    const lastChosen = ids.findLastIndex((id) => selection.chosen.has(id));
    setSelection(choose(ids, selection, Math.max(selection.at, lastChosen) + 1, "alone"));
  };
  const leaveOut = (): void => {
    if (here?.leftOut === true) change(chosen, { leaveOut: null }, say("work.take-in"));
    else setOpen("reason");
  };
  const repeat = (): void => {
    if (last !== null) change(chosen, last.change, last.label);
  };
  const onKey = (event: KeyboardEvent): boolean => {
    const meaning = meaningOf(event.key, rows, under);
    switch (meaning?.kind) {
      case undefined:
        return false;
      case "say":
        sayOf(meaning.row, meaning.choice);
        return true;
      case "turn":
        setUnder(meaning.under);
        return true;
      case "find":
        setOpen("find");
        return true;
      case "repeat":
        repeat();
        return true;
      case "next":
        next();
        return true;
      case "undo":
        undo();
        return true;
      case "leave-out":
        leaveOut();
        return true;
      case "large":
        setOpen("large");
        return true;
    }
  };

  const underText = (sheet: SheetRow): string =>
    [sheet.taken?.slice(11, 16), labelOf("view", sheet.viewId), labelOf("stage", sheet.stageId)]
      .filter((text) => text !== undefined && text !== "")
      .join(" · ");
  const describe = (sheet: SheetRow): string =>
    [
      sheet.fileName,
      sheet.taken === null ? say("sort.no-time") : sheet.taken.replace("T", " "),
      sheet.plantId === null ? say("sort.no-plant") : labelOf("plant", sheet.plantId),
      sheet.viewId === null ? say("sort.no-view") : labelOf("view", sheet.viewId),
      labelOf("stage", sheet.stageId),
      sheet.leftOut ? say("sort.left-out") : "",
    ]
      .filter((text) => text !== "")
      .join(", ");

  const trays: readonly { readonly id: TrayId; readonly name: string }[] = [
    { id: "unsorted", name: say("sort.tray.unsorted") },
    { id: "not-sure", name: say("sort.tray.not-sure") },
    ...rows.plant.map(({ value, label }) => ({ id: `plant:${value}` as const, name: label })),
    { id: "left-out", name: say("sort.tray.left-out") },
    { id: "all", name: say("sort.tray.all") },
  ];
  const trayName = trays.find(({ id }) => id === tray)?.name ?? tray;
  const stripDay = day === "" ? (here?.taken?.slice(0, 10) ?? "") : day;
  const plantHere = (tray.startsWith("plant:") ? tray.slice(6) : here?.plantId) ?? null;
  const plantFound = plants?.find(({ plant }) => plant.id === plantHere)?.plant;
  const outingHere = outingsQuery.data?.outings.find(({ date }) => date === stripDay);
  const current =
    here === undefined
      ? null
      : under.row === "part"
        ? here.part
        : { plant: here.plantId, view: here.viewId, stage: here.stageId }[under.row];

  return (
    <div className="sorting">
      <h1 className="hidden-words">{say("sort.title")}</h1>
      <div className="sorting-top">
        <label className="sorting-day">
          {say("sort.day")}
          <select value={day} onChange={(event) => setDay(event.target.value)}>
            <option value="">{say("sort.every-day", { count: days.length })}</option>
            {days.map((one) => (
              <option key={one.day} value={one.day}>
                {mediumDate(one.day)} ({one.count})
              </option>
            ))}
          </select>
        </label>
        {stripDay !== "" && (
          <TimeStrip
            day={stripDay}
            sheets={sheets}
            outing={outingHere}
            nickOf={(id) => labelOf("plant", id)}
            here={here}
            onStop={(plantId) => {
              setDay(stripDay);
              setTray(`plant:${plantId}`);
            }}
          />
        )}
      </div>
      <ClockProposals quiet />
      <div className="sorting-body">
        <nav className="trays" aria-label={say("sort.trays")}>
          <ul>
            {trays.map(({ id, name }) => (
              <li key={id}>
                <button
                  type="button"
                  className={id === "not-sure" ? "tray amber" : "tray"}
                  aria-current={id === tray ? "true" : undefined}
                  onClick={() => {
                    setTray(id);
                    setSelection(nothingChosen);
                  }}
                  onDragOver={(event) => {
                    if (id.startsWith("plant:") || id === "not-sure") event.preventDefault();
                  }}
                  onDrop={(event) => {
                    event.preventDefault();
                    if (id.startsWith("plant:") || id === "not-sure") all(changeFor("plant", id === "not-sure" ? "" : id.slice(6)), name);
                  }}
                >
                  <span>{name}</span> <span className="work-num">{counts.get(id) ?? 0}</span>
                </button>
              </li>
            ))}
          </ul>
        </nav>
        <div className="sorting-middle">
          <div className="sorting-line">
            <p>{say("sort.chosen", { chosen: chosen.length, total: shown.length, tray: trayName })}</p>
            <label>
              {say("sort.size")}{" "}
              <select
                value={tile}
                onChange={(event) =>
                  setTile(event.target.value === "small" ? "small" : event.target.value === "large" ? "large" : "middle")
                }
              >
                <option value="small">{say("sort.size.small")}</option>
                <option value="middle">{say("sort.size.middle")}</option>
                <option value="large">{say("sort.size.large")}</option>
              </select>
            </label>
          </div>
          {shown.length === 0 ? (
            <p className="contact contact-empty">{say("sort.tray-empty", { tray: trayName })}</p>
          ) : (
            <ContactSheet
              sheets={shown}
              ids={ids}
              selection={selection}
              onSelect={setSelection}
              onKey={onKey}
              label={say("sort.contact", { tray: trayName })}
              under={underText}
              describe={describe}
              tileWidth={tileWidths[tile]}
            />
          )}
        </div>
        <aside className="sorting-sheet" aria-label={say("sort.sheet")}>
          {here !== undefined && (
            <>
              <button type="button" className="sorting-large" aria-label={say("sort.deed.large")} onClick={() => setOpen("large")}>
                <Photo
                  key={here.id}
                  photoId={here.id}
                  alt={describe(here)}
                  sizes="(max-width: 60rem) 100vw, 45vw"
                  width={here.widthPx}
                  height={here.heightPx}
                  eager
                />
              </button>
              {plantFound !== undefined && (
                <MissingList
                  plantId={plantFound.id}
                  nick={plantFound.nick}
                  stageHere={here.stageId ?? stageOfPhoto(here, [])}
                  sheets={sheets}
                  views={info?.views ?? []}
                  stages={info?.stages ?? []}
                />
              )}
              <details className="sorting-says">
                <summary>{say("sort.say-of", { count: chosen.length })}</summary>
                <SheetSays photoId={here.id} count={chosen.length} onSay={(what) => change(chosen, what, say("sort.said-of"))} />
              </details>
            </>
          )}
        </aside>
        <div className="sorting-foot">
          <KeyLegend
            rows={rows}
            under={under}
            onTurn={setUnder}
            onSay={sayOf}
            current={current}
            deeds={[
              { key: "Enter", word: say("sort.deed.next"), act: next },
              {
                key: ".",
                word: last === null ? say("sort.deed.repeat-none") : say("sort.deed.repeat", { what: last.label }),
                act: repeat,
                off: last === null,
              },
              { key: "/", word: say("sort.deed.find"), act: () => setOpen("find") },
              { key: "X", word: say(here?.leftOut === true ? "sort.deed.take-in" : "sort.deed.leave-out"), act: leaveOut },
              { key: "U", word: say("work.undo"), act: undo },
              { key: "Space", word: say("sort.deed.large"), act: () => setOpen("large") },
            ]}
          />
          <Says>{said}</Says>
          <ProblemNote problem={problem} />
        </div>
      </div>
      {open === "find" && (
        <FindDialog
          row={under.row}
          choices={rows[under.row]}
          onClose={() => setOpen(null)}
          onChoose={(choice) => {
            setOpen(null);
            sayOf(under.row, choice);
          }}
        />
      )}
      {open === "reason" && (
        <ReasonDialog
          count={chosen.length}
          title={say("sort.reason-title", { count: chosen.length })}
          reasons={sheetReasons()}
          onClose={() => setOpen(null)}
          onReason={(reason) => {
            setOpen(null);
            change(chosen, { leaveOut: reason }, say("sort.left-out-because", { reason }));
          }}
        />
      )}
      {open === "large" && here !== undefined && (
        <Dialog open shape="whole" title={describe(here)} onClose={() => setOpen(null)}>
          <Photo photoId={here.id} alt={describe(here)} sizes="100vw" width={here.widthPx} height={here.heightPx} eager />
        </Dialog>
      )}
    </div>
  );
};
