/** The photographs of this plant on this outing; tapping one ties it to the look as its proof. */
import type { PhotoId } from "../../../engine/index.js";
import type { SheetRow } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { imageAddress } from "../../parts/index.js";

export const ProofPhotos = ({
  sheets,
  tied,
  viewName,
  onTie,
}: {
  readonly sheets: readonly SheetRow[];
  readonly tied: readonly PhotoId[];
  readonly viewName: (id: string | null) => string;
  readonly onTie: (ids: PhotoId[]) => void;
}) =>
  sheets.length === 0 ? null : (
    <details className="proof" open={tied.length > 0}>
      <summary>{say("outing.proof", { tied: tied.length, count: sheets.length })}</summary>
      <div className="proof-row">
        {sheets.map((sheet) => {
          const isTied = tied.includes(sheet.id);
          return (
            <button
              type="button"
              key={sheet.id}
              aria-pressed={isTied}
              aria-label={say("outing.proof-of", { view: viewName(sheet.viewId), file: sheet.fileName })}
              onClick={() => onTie(isTied ? tied.filter((id) => id !== sheet.id) : [...tied, sheet.id])}
            >
              <img src={imageAddress(sheet.id, "320")} alt="" loading="lazy" decoding="async" />
              <span>{isTied ? say("outing.tied") : viewName(sheet.viewId)}</span>
            </button>
          );
        })}
      </div>
    </details>
  );
