/** The choices under the digits and the other keys, as buttons: what the keys do can always be pressed instead. */
import { say } from "../../../words/index.js";
import { choicesUnder, digitOf, letterOf, perPage, rowKinds, type Choice, type RowKind, type Rows, type UnderDigits } from "./keys.js";

export interface KeyLegendProps {
  readonly rows: Rows;
  readonly under: UnderDigits;
  readonly onTurn: (under: UnderDigits) => void;
  readonly onSay: (row: RowKind, choice: Choice) => void;
  readonly current: string | null;
  readonly deeds: readonly { readonly key: string; readonly word: string; readonly act: () => void; readonly off?: boolean }[];
}

export const KeyLegend = ({ rows, under, onTurn, onSay, current, deeds }: KeyLegendProps) => {
  const pages = Math.ceil(rows[under.row].length / perPage);
  return (
    <div className="legend" role="group" aria-label={say("sort.legend")}>
      <div className="legend-rows">
        {rowKinds.map((row) => (
          <button
            type="button"
            key={row}
            aria-pressed={row === under.row}
            onClick={() => onTurn({ row, page: row === under.row ? (under.page + 1) % Math.max(1, pages) : 0 })}
          >
            <kbd>{letterOf[row].toUpperCase()}</kbd> {say(`sort.row.${row}`)}
            {row === under.row && pages > 1 ? ` ${under.page + 1}/${pages}` : ""}
          </button>
        ))}
      </div>
      <div className="legend-choices">
        {choicesUnder(rows, under).map((choice, place) => (
          <button type="button" key={choice.value} aria-pressed={choice.value === current} onClick={() => onSay(under.row, choice)}>
            <kbd>{digitOf(place)}</kbd> {choice.label}
          </button>
        ))}
      </div>
      <div className="legend-deeds">
        {deeds.map(({ key, word, act, off = false }) => (
          <button type="button" key={key} className="quiet" disabled={off} onClick={act}>
            <kbd>{key}</kbd> {word}
          </button>
        ))}
      </div>
    </div>
  );
};
