/**
 * The contact sheet: a listbox of photographs laid out as a grid, of which only the rows in and near the window exist.
 * Boxes have fixed sizes and a ground of the page's own paper tone painted by the sheet itself, so that even the fastest
 * scroll never shows a blank frame.
 */
import { useVirtualizer } from "@tanstack/react-virtual";
import { memo, useEffect, useRef, useState } from "react";
import type { KeyboardEvent } from "react";
import type { SheetRow } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { imageAddress } from "../../parts/index.js";
import { choose, chooseAll, stepOf, type Gesture, type Selection } from "./selection.js";

const gap = 8;
const captionHeight = 40;
/** Of the box, as in sorting.css. */
const padding = 6;

interface TileProps {
  readonly sheet: SheetRow;
  readonly label: string;
  readonly under: string;
  readonly index: number;
  readonly total: number;
  readonly isChosen: boolean;
  readonly isHere: boolean;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const SheetTile = memo(({ sheet, label, under, index, total, isChosen, isHere, x, y, width, height }: TileProps) => {
  const [gone, setGone] = useState(false);
  return (
    <div
      role="option"
      id={`sheet-${sheet.id}`}
      aria-selected={isChosen}
      aria-setsize={total}
      aria-posinset={index + 1}
      aria-label={label}
      tabIndex={-1}
      className={`sheet${isChosen ? " chosen" : ""}${isHere ? " here" : ""}${sheet.leftOut ? " left-out" : ""}`}
      data-index={index}
      draggable
      style={{ transform: `translate(${x}px, ${y}px)`, width, height }}
    >
      <span className="sheet-frame" style={{ height: height - captionHeight }}>
        {gone ? (
          <span className="sheet-gone">{say("web.photo.gone")}</span>
        ) : (
          <img src={imageAddress(sheet.id, "320")} alt="" decoding="async" draggable={false} onError={() => setGone(true)} />
        )}
        {sheet.leftOut && <b className="sheet-mark">{say("sort.left-out")}</b>}
        {isChosen && (
          <svg className="sheet-tick" viewBox="0 0 20 20" aria-hidden="true">
            <path d="M3 10.5l5 5L17 5" />
          </svg>
        )}
      </span>
      <span className="sheet-caption">{under}</span>
    </div>
  );
});
SheetTile.displayName = "SheetTile";

export interface ContactSheetProps {
  readonly sheets: readonly SheetRow[];
  readonly ids: readonly string[];
  readonly selection: Selection;
  readonly onSelect: (selection: Selection) => void;
  /** A key the sheet does not need for moving about; true = it was used. */
  readonly onKey: (event: KeyboardEvent) => boolean;
  readonly label: string;
  /** What stands under a sheet, and its whole description. */
  readonly under: (sheet: SheetRow) => string;
  readonly describe: (sheet: SheetRow) => string;
  readonly tileWidth: number;
}

export const ContactSheet = ({ sheets, ids, selection, onSelect, onKey, label, under, describe, tileWidth }: ContactSheetProps) => {
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  useEffect(() => {
    const element = box.current;
    if (element === null) return undefined;
    const watch = new ResizeObserver(() => setSize({ width: element.clientWidth - 2 * padding, height: element.clientHeight }));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  const columns = Math.max(1, Math.floor((size.width + gap) / (tileWidth + gap)));
  const width = Math.floor((size.width - gap * (columns - 1)) / columns);
  const height = Math.round(width * 0.75) + captionHeight;
  const rowHeight = height + gap;
  const rows = Math.ceil(sheets.length / columns);
  const virtual = useVirtualizer({ count: rows, getScrollElement: () => box.current, estimateSize: () => rowHeight, overscan: 5 });
  useEffect(() => virtual.measure(), [rowHeight, virtual]);
  const rowHere = Math.floor(Math.max(0, selection.at) / columns);
  useEffect(() => {
    if (selection.at >= 0) virtual.scrollToIndex(rowHere);
  }, [rowHere, selection.at, virtual]);

  const gestureOf = (event: { shiftKey: boolean; ctrlKey: boolean; metaKey: boolean }): Gesture =>
    event.shiftKey ? "extend" : event.ctrlKey || event.metaKey ? "toggle" : "alone";
  const keyDown = (event: KeyboardEvent): void => {
    const pageRows = Math.max(1, Math.floor(size.height / rowHeight));
    const step = stepOf(event.key, columns, pageRows);
    if (step !== undefined && !event.altKey) {
      event.preventDefault();
      onSelect(choose(ids, selection, selection.at + step, event.shiftKey ? "extend" : "alone"));
    } else if (event.key.toLowerCase() === "a" && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      onSelect(chooseAll(ids, selection));
    } else if (!event.ctrlKey && !event.metaKey && !event.altKey && onKey(event)) event.preventDefault();
  };
  const here = ids[selection.at];
  return (
    <div
      ref={box}
      role="listbox"
      aria-label={label}
      aria-multiselectable="true"
      aria-activedescendant={here === undefined ? undefined : `sheet-${here}`}
      tabIndex={0}
      className="contact"
      onKeyDown={keyDown}
      onClick={(event) => {
        const tile = event.target instanceof Element ? event.target.closest<HTMLElement>("[data-index]") : null;
        if (tile !== null) onSelect(choose(ids, selection, Number(tile.dataset["index"]), gestureOf(event)));
        box.current?.focus({ preventScroll: true });
      }}
      onDragStart={(event) => {
        const tile = event.target instanceof Element ? event.target.closest<HTMLElement>("[data-index]") : null;
        const id = tile === null ? undefined : ids[Number(tile.dataset["index"])];
        if (id === undefined) return;
        if (!selection.chosen.has(id)) onSelect(choose(ids, selection, Number(tile?.dataset["index"]), "alone"));
        event.dataTransfer.setData("text/x-stipule-sheets", "chosen");
        event.dataTransfer.effectAllowed = "move";
      }}
    >
      <div className="contact-inner" role="presentation" style={{ height: virtual.getTotalSize() }}>
        <div
          className="contact-ground"
          role="presentation"
          style={{
            // only whole rows: after the last sheet nothing is promised
            height: Math.floor(sheets.length / columns) * rowHeight,
            backgroundSize: `${width + gap}px 100%`,
            backgroundImage: `linear-gradient(to right, var(--leaf) ${width}px, transparent ${width}px)`,
            maskImage: `linear-gradient(to bottom, #000 ${height - captionHeight}px, transparent ${height - captionHeight}px)`,
            maskSize: `100% ${rowHeight}px`,
          }}
        />
        {size.width > 0 &&
          virtual.getVirtualItems().flatMap((row) =>
            sheets.slice(row.index * columns, (row.index + 1) * columns).map((sheet, column) => {
              const index = row.index * columns + column;
              return (
                <SheetTile
                  key={sheet.id}
                  sheet={sheet}
                  label={describe(sheet)}
                  under={under(sheet)}
                  index={index}
                  total={sheets.length}
                  isChosen={selection.chosen.has(sheet.id)}
                  isHere={index === selection.at}
                  x={column * (width + gap)}
                  y={row.start}
                  width={width}
                  height={height}
                />
              );
            }),
          )}
      </div>
    </div>
  );
};
