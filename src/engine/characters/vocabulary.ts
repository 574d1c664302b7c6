/**
 * The words a book works with: stages of the year, the views one photographs, the people who look. Parts are plain
 * text in flora order; {@link partOrder} sorts the ones we know and puts others after them.
 */
import { z } from "zod";
import { personId, stageId, viewId } from "../base/ids.js";

/** One stage of a plant's year, in everyday words, with the codes of the BBCH scale (Meier 2001) it covers. */
export const stage = z.object({
  id: stageId,
  name: z.string().min(1).max(80),
  bbch: z.array(z.string().max(8)).default([]),
  looksLike: z.string().max(400).default(""),
  /** "Dec-Mar": when it usually falls, for people; may be empty. */
  usualMonths: z.string().max(40).default(""),
});
export type Stage = z.infer<typeof stage>;

/** One standard way to photograph a plant. */
export const view = z.object({
  id: viewId,
  name: z.string().min(1).max(120),
  /** The part it shows, in flora words; groups the sorting trays. */
  part: z.string().max(60).default(""),
  scaleWanted: z.boolean().default(false),
  /** Stages at which this view is wanted; empty = whenever the plant stands. */
  stages: z.array(stageId).default([]),
});
export type View = z.infer<typeof view>;

export const person = z.object({
  id: personId,
  initials: z.string().min(1).max(20),
  role: z.string().max(120).default(""),
});
export type Person = z.infer<typeof person>;

/** Parts in the order a flora describes them, root to seed; "place" stands for the setting and comes last. */
export const partOrder: readonly string[] = [
  "whole plant",
  "base",
  "root",
  "stem",
  "leaf",
  "stipule",
  "inflorescence",
  "flower region",
  "flower",
  "calyx",
  "corolla",
  "stamen",
  "ovary",
  "fruit",
  "seed",
  "place",
];

/** Sorts parts in flora order; unknown parts keep their alphabetical order after the known ones. */
export const compareParts = (a: string, b: string): number => {
  const rank = (part: string): number => {
    const index = partOrder.indexOf(part);
    return index < 0 ? partOrder.length - 1.5 : index;
  };
  return rank(a) - rank(b) || a.localeCompare(b, "en");
};

/** The part a photograph shows: as said of it, else that of its view; empty when neither is known. */
export const partOfPhoto = (photo: { readonly part: string; readonly viewId: string | null }, views: readonly View[]): string =>
  photo.part !== "" ? photo.part : (views.find((one) => one.id === photo.viewId)?.part ?? "");
