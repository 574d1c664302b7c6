/**
 * May a specimen be taken? Two questions in this order: does the permission of the spot forbid it that day, and does the
 * patch bear it. The patch rule: no more than one plant in twenty, so none until there are twenty (the "1-in-20 rule":
 * Wagner, D. H. 1995, Botanical Electronic News 180).
 */
import type { IsoDate, Permission, PlantId, Spot, VoucherId } from "../engine/index.js";
import { say } from "../words/index.js";
import { notInBook } from "./app-error.js";
import type { Workbench } from "./workbench.js";

export interface CollectAnswer {
  readonly allowed: boolean;
  /** Most stems the patch bears; 0 when a permission forbids. */
  readonly mostStems: number;
  readonly stemsInPatch: number | null;
  /** Why not; empty when allowed. */
  readonly reasons: readonly { readonly code: string; readonly text: string }[];
  /** What to know before one does. */
  readonly remarks: readonly string[];
}

/** Stems that a patch of `stems` bears: whole twentieths. */
export const oneInTwenty = (stems: number): number => Math.floor(stems / 20);

const collecting = /\b(collect|dig|pick|tak|gather|cut|uproot|voucher|specimen|press)/i;

/** "spot D", "the Fen corner": does a sentence speak of this spot? */
const speaksOf = (text: string, spot: Spot): boolean =>
  new RegExp(`\\bspot ${spot.id.replaceAll(/[^A-Za-z0-9]/g, "\\$&")}\\b`, "i").test(text) ||
  text.toLowerCase().includes(spot.name.toLowerCase());

/**
 * Does the permission forbid collecting at the spot? Its words are free text; read carefully, to the safe side: a ban on
 * collecting that names no spot of the book holds for every spot the permission covers.
 */
export const forbidsCollecting = (permission: Permission, spot: Spot, spots: readonly Spot[]): boolean => {
  if (!collecting.test(permission.forbids)) return false;
  const named = spots.filter((one) => speaksOf(permission.forbids, one));
  return named.length === 0 || named.some((one) => one.id === spot.id);
};

/**
 * What was taken of the plant in the same year counts too: one in twenty, not one in twenty a visit.
 * @param wanted stems one would take
 * @param stems the patch as counted that day; default: the plant's own count
 * @param except the voucher that is being kept, not to be counted twice
 * @throws {NotInBook} when there is no such plant.
 */
export const mayCollect = async (
  workbench: Workbench,
  plantId: PlantId,
  on: IsoDate,
  wanted = 1,
  { stems, except }: { readonly stems?: number | undefined; readonly except?: VoucherId } = {},
): Promise<CollectAnswer> => {
  const { store } = workbench;
  const plant = await store.get("plant", plantId);
  if (plant === undefined) throw notInBook("plant", plantId);
  const spots = await store.list("spot");
  const spot = spots.find((one) => one.id === plant.spotId);
  const covering = (await store.list("permission")).filter(
    (permission) => permission.spotIds.length === 0 || permission.spotIds.includes(plant.spotId),
  );
  const holding = covering.filter((permission) => permission.from <= on && on <= permission.to);
  const reasons: { code: string; text: string }[] = [];
  for (const permission of holding)
    if (spot !== undefined && forbidsCollecting(permission, spot, spots))
      reasons.push({
        code: "permission-forbids",
        text: say("collect.forbidden", { by: permission.by, from: permission.from, to: permission.to, forbids: permission.forbids }),
      });
  if (covering.length > 0 && holding.length === 0) {
    const last = covering.map((permission) => permission.to).reduce((a, b) => (a > b ? a : b));
    reasons.push({ code: "no-permission-that-day", text: say("collect.no-permission-day", { date: on, to: last }) });
  }
  const stemsInPatch = stems ?? plant.stemCount;
  const before = (await store.list("voucher"))
    .filter((one) => one.plantId === plantId && one.id !== except && one.refusedBecause === null && one.date.slice(0, 4) === on.slice(0, 4))
    .reduce((sum, one) => sum + one.stemsTaken, 0);
  const whole = stemsInPatch === null ? 0 : oneInTwenty(stemsInPatch);
  const allowed = Math.max(0, whole - before);
  if (stemsInPatch === null) reasons.push({ code: "stems-not-counted", text: say("collect.count-unknown") });
  else if (wanted > allowed)
    reasons.push({ code: "one-in-twenty", text: say("collect.one-in-twenty", { stems: stemsInPatch, allowed: whole, before, wanted }) });
  const remarks = covering.length === 0 ? [say("collect.no-permission")] : [];
  if (reasons.length === 0) remarks.push(say("collect.allowed", { allowed, stems: stemsInPatch, before }));
  const barred = reasons.some((reason) => reason.code !== "one-in-twenty");
  return { allowed: reasons.length === 0, mostStems: barred ? 0 : allowed, stemsInPatch, reasons, remarks };
};
