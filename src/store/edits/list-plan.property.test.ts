import fc from "fast-check";
import { expect, it } from "vitest";
import type { StoredRow } from "../records/field.js";
import { rowTableNamed } from "../records/rows.js";
import { POSITION_GAP, placeInList, planList } from "./list-plan.js";

const person = rowTableNamed("person");
const ids = fc.uniqueArray(fc.integer({ min: 0, max: 12 }).map(String), { maxLength: 10 });

it("positions ascend, and those of a list that only lost members stay", () => {
  fc.assert(
    fc.property(ids, ids, (before, after) => {
      const old = new Map(before.map((id, index) => [id, (index + 1) * POSITION_GAP]));
      const positions = placeInList(old, after);
      expect(positions.every((position, index) => position > (positions[index - 1] ?? 0))).toBe(true);
      const thinned = before.filter((_, index) => index % 2 === 0);
      expect(placeInList(old, thinned)).toEqual(thinned.map((id) => old.get(id)));
    }),
  );
});

it("something put in the middle moves nothing else", () => {
  const old = new Map([
    ["a", 1024],
    ["b", 2048],
  ]);
  expect(placeInList(old, ["n", "a", "m", "b", "z"])).toEqual([1, 1024, 1025, 2048, 3072]);
});

it("carried out, a plan makes the list the wanted one, in its order", () => {
  fc.assert(
    fc.property(ids, ids, fc.string({ maxLength: 2 }), (before, after, role) => {
      const existing = before.map((id, index): StoredRow => ({ id, position: (index + 1) * 7, initials: id, role: "" }));
      const wanted = after.map((id, index): StoredRow => ({ id, initials: id, role: index % 2 === 0 ? role : "" }));
      const { puts, removals } = planList(person, existing, wanted);
      const rows = new Map(existing.map((row) => [row["id"], row]));
      for (const change of puts) rows.set(change.after?.["id"] ?? "", change.after ?? {});
      for (const change of removals) rows.delete(change.before?.["id"] ?? "");
      const result = [...rows.values()].toSorted((a, b) => Number(a["position"]) - Number(b["position"]));
      expect(result.map(({ id, initials, role: stored }) => ({ id, initials, role: stored }))).toEqual(wanted);
      expect(planList(person, result, wanted)).toEqual({ puts: [], removals: [] });
    }),
  );
});
