import { useCallback } from "react";
import type { SheetRow } from "../../contract/index.js";
import { useApi } from "../api.js";
import { say } from "../../words/index.js";
import { longDate } from "./dates.js";
import { Dialog } from "./dialog.js";
import { useKeys } from "./keyboard.js";
import { imageAddress } from "./photo.js";

export interface PhotoViewerProps {
  /** The photographs one can go through, in order. */
  readonly photoIds: readonly string[];
  /** The one shown; null = the viewer is closed. */
  readonly shown: string | null;
  /** Asked to show another one, or to close (null). */
  readonly onShow: (photoId: string | null) => void;
  /** Says what a photograph shows when nobody wrote it: from its view, stage and day. */
  readonly describe: (photoId: string) => string;
}

/** One photograph large over the whole window, with caption and description; arrow keys go on, Escape closes. */
export const PhotoViewer = ({ photoIds, shown, onShow, describe }: PhotoViewerProps) => {
  const at = shown === null ? -1 : photoIds.indexOf(shown);
  const previous = photoIds[at - 1];
  const next = at < 0 ? undefined : photoIds[at + 1];
  const { data: sheet } = useApi("GET /api/sheets/{photoId}", { params: { photoId: shown ?? "" } }, { enabled: shown !== null });
  useKeys(
    useCallback(
      (event) => {
        if (shown === null || event.ctrlKey || event.metaKey || event.altKey) return false;
        const wanted = event.key === "ArrowLeft" ? previous : event.key === "ArrowRight" ? next : undefined;
        if (wanted !== undefined) onShow(wanted);
        return wanted !== undefined;
      },
      [next, onShow, previous, shown],
    ),
  );
  if (shown === null) return null;
  const said = describe(shown);
  const caption = sheet === undefined || sheet.caption === "" ? said : sheet.caption;
  const facts =
    sheet === undefined
      ? []
      : [sheet.fileName, sheet.takenCamera === null ? "" : longDate(sheet.takenCamera.slice(0, 10)), sheet.credit, sheet.licence];
  return (
    <Dialog
      shape="whole"
      title={say("web.photo.viewer", { at: at + 1, count: photoIds.length })}
      open
      onClose={() => onShow(null)}
      foot={
        <div className="viewer-foot">
          <div>
            <p>{caption}</p>
            {sheet === undefined || sheet.leaveOut === null ? null : <p>{say("web.left-out", { why: sheet.leaveOut })}</p>}
            <p className="side">{facts.filter((fact) => fact !== "").join(" · ")}</p>
          </div>
          <div className="buttons">
            <button type="button" disabled={previous === undefined} onClick={() => onShow(previous ?? null)}>
              {say("web.photo.previous")}
            </button>
            <button type="button" disabled={next === undefined} onClick={() => onShow(next ?? null)}>
              {say("web.photo.next")}
            </button>
          </div>
        </div>
      }
    >
      <img
        key={shown}
        className="viewer-photo"
        src={imageAddress(shown, "2048")}
        alt={sheet === undefined || sheet.altText === "" ? said : sheet.altText}
      />
    </Dialog>
  );
};

/** Says what a photograph shows from what was noted of it: "Ditch plant: foot of the stem, buds, 19 June 2022". */
export const describeSheet = (
  sheet: SheetRow | undefined,
  names: {
    readonly plant: (id: string) => string | undefined;
    readonly view: (id: string) => string | undefined;
    readonly stage: (id: string) => string | undefined;
  },
): string => {
  if (sheet === undefined) return say("web.photo.no-alt");
  const parts = [
    sheet.viewId === null ? undefined : names.view(sheet.viewId),
    sheet.stageId === null ? undefined : names.stage(sheet.stageId),
    sheet.taken === null ? undefined : longDate(sheet.taken.slice(0, 10)),
  ].filter((part) => part !== undefined);
  const plant = sheet.plantId === null ? undefined : names.plant(sheet.plantId);
  const text = parts.length === 0 ? sheet.fileName : parts.join(", ");
  return plant === undefined ? text : `${plant}: ${text}`;
};
