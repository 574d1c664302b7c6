import type { ComponentPropsWithRef } from "react";
import type { BoardCell } from "../../contract/index.js";
import { say } from "../../words/index.js";

/** What a tile can say: the four statuses, and that the stage does not show it. */
export type TileKind = BoardCell["kind"];
export const tileKinds: readonly TileKind[] = ["seen", "not-there", "could-not-tell", "open", "cannot"];

/** The status in words. */
export const tileWord = (kind: TileKind): string => say(`web.tile.${kind}`);

interface TileFace {
  readonly kind: TileKind;
  /** What stands on it; may be empty, then shape and tint alone stand beside a legend. */
  readonly label?: string;
  /** It is kept but does not count. */
  readonly leftOut?: boolean;
}

const classOf = (kind: TileKind, leftOut: boolean): string => `tile tile-${kind}${leftOut ? " tile-left-out" : ""}`;

/** One tile to look at: colour, shape and word together, never colour alone. */
export const Tile = ({ kind, label = "", leftOut = false }: TileFace) => (
  <span className={classOf(kind, leftOut)}>
    <span className="tile-label">{label}</span>
  </span>
);

/** One tile to press. `sentence` is its whole meaning, for title and screen reader. */
export const TileButton = ({
  kind,
  label = "",
  leftOut = false,
  sentence,
  ...rest
}: TileFace & { readonly sentence: string } & Omit<ComponentPropsWithRef<"button">, "className" | "children" | "type" | "aria-label">) => (
  <button type="button" className={classOf(kind, leftOut)} title={sentence} aria-label={sentence} {...rest}>
    <span className="tile-label" aria-hidden="true">
      {label}
    </span>
  </button>
);

/** What the tiles mean. */
export const TileLegend = () => (
  <ul className="tile-legend" aria-label={say("web.tile.legend")}>
    {tileKinds.map((kind) => (
      <li key={kind}>
        <Tile kind={kind} /> {tileWord(kind)}
      </li>
    ))}
  </ul>
);
