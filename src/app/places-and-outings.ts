/** What stands on the shelf of places, and the outings with their stops. */
import type { Outing, Permission, Spot, Stop } from "../engine/index.js";
import type { Workbench } from "./workbench.js";

/** Spots and permissions. */
export const listPlaces = async ({
  store,
}: Workbench): Promise<{ readonly spots: readonly Spot[]; readonly permissions: readonly Permission[] }> => {
  const [spots, permissions] = await Promise.all([store.list("spot"), store.list("permission")]);
  return { spots, permissions };
};

export interface OutingRow extends Outing {
  readonly stops: readonly Stop[];
  readonly photoCount: number;
  readonly lookCount: number;
}

const count = <T extends { readonly outingId: string | null }>(records: readonly T[]): ReadonlyMap<string | null, number> => {
  const counts = new Map<string | null, number>();
  for (const { outingId } of records) counts.set(outingId, (counts.get(outingId) ?? 0) + 1);
  return counts;
};

/** Outings with their stops by time, newest first. */
export const listOutings = async ({ store }: Workbench): Promise<readonly OutingRow[]> => {
  const [outings, stops, photos, looks] = await Promise.all([
    store.list("outing"),
    store.list("stop"),
    store.list("photo"),
    store.list("look"),
  ]);
  const [photoCounts, lookCounts] = [count(photos), count(looks)];
  return outings
    .toSorted((a, b) => (a.date === b.date ? a.id.localeCompare(b.id, "en") : a.date < b.date ? 1 : -1))
    .map((outing) => ({
      ...outing,
      stops: stops.filter((stop) => stop.outingId === outing.id).toSorted((a, b) => (a.from < b.from ? -1 : 1)),
      photoCount: photoCounts.get(outing.id) ?? 0,
      lookCount: lookCounts.get(outing.id) ?? 0,
    }));
};
