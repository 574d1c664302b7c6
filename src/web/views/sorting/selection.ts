/**
 * Which sheets of a tray are chosen, and where the keyboard stands: positions in the order of the tray. Pure, so that it
 * can be tried without a page. Two ways to extend: from the anchor (shift), and one by one (Ctrl or Cmd).
 */

export interface Selection {
  readonly chosen: ReadonlySet<string>;
  /** Position of the keyboard, -1 when the tray is empty. */
  readonly at: number;
  /** Where an extension begins. */
  readonly anchor: number;
}

export const nothingChosen: Selection = { chosen: new Set(), at: -1, anchor: -1 };

export type Gesture = "alone" | "extend" | "toggle";

const span = (ids: readonly string[], a: number, b: number): Set<string> => new Set(ids.slice(Math.min(a, b), Math.max(a, b) + 1));

/** A click, or a move of the keyboard, to position `at`. Outside the tray it stops at the edge. */
export const choose = (ids: readonly string[], selection: Selection, at: number, gesture: Gesture): Selection => {
  if (ids.length === 0) return nothingChosen;
  const to = Math.max(0, Math.min(ids.length - 1, at));
  const id = ids[to];
  if (id === undefined) return selection;
  if (gesture === "extend") {
    const anchor = selection.anchor < 0 ? to : selection.anchor;
    return { chosen: span(ids, anchor, to), at: to, anchor };
  }
  if (gesture === "toggle") {
    const chosen = new Set(selection.chosen);
    if (!chosen.delete(id)) chosen.add(id);
    return { chosen, at: to, anchor: to };
  }
  return { chosen: new Set([id]), at: to, anchor: to };
};

export const chooseAll = (ids: readonly string[], selection: Selection): Selection =>
  ids.length === 0 ? nothingChosen : { chosen: new Set(ids), at: Math.max(0, selection.at), anchor: 0 };

/**
 * What stays chosen when the tray holds other sheets than before (another tray, or sheets that were put elsewhere): the
 * keyboard stays at its place in the tray, so that after putting one away the next one stands under it.
 */
export const keepChosen = (ids: readonly string[], selection: Selection): Selection => {
  if (ids.length === 0) return nothingChosen;
  const at = Math.max(0, Math.min(ids.length - 1, selection.at));
  const here = new Set(ids);
  const chosen = new Set([...selection.chosen].filter((id) => here.has(id)));
  const first = ids[at];
  if (chosen.size === 0 && first !== undefined) chosen.add(first);
  return { chosen, at, anchor: Math.min(selection.anchor, ids.length - 1) };
};

/** Where a key leads in a sheet of `columns` columns; undefined = no key of movement. */
export const stepOf = (key: string, columns: number, page: number): number | undefined =>
  ({
    ArrowLeft: -1,
    ArrowRight: 1,
    ArrowUp: -columns,
    ArrowDown: columns,
    PageUp: -columns * page,
    PageDown: columns * page,
    Home: -Infinity,
    End: Infinity,
  })[key];
