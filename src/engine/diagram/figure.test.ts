import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { demoSketches } from "./demo-sketches.js";
import { pathPoints } from "./drawing.js";
import type { Shape } from "./drawing.js";
import { drawFigure, figureViews } from "./figure.js";
import { crossOf, figureParameters } from "./figure-parameters.js";
import { drawSketch, sketchMm } from "./sketch.js";
import { toSvg } from "./to-svg.js";

const demo = JSON.parse(readFileSync(new URL("../../../demo/hobbin-carr.json", import.meta.url), "utf8")) as {
  figures: Record<string, unknown>;
  characters: { id: string; kind: string; states?: { id: string }[] }[];
};
const plants = Object.fromEntries(Object.entries(demo.figures).map(([id, value]) => [id, figureParameters.parse(value)]));
const p = (id: string) => plants[id]!;

function flat(shapes: readonly Shape[]): Shape[] {
  return shapes.flatMap((s) => (s.kind === "group" ? [s, ...flat(s.shapes)] : [s]));
}

/** A strict little reader: every tag closed in order, attributes quoted and unlike, text escaped. Returns the tag names. */
function readXml(text: string): string[] {
  const open: string[] = [];
  const names: string[] = [];
  let at = 0;
  const tag = /<(\/?)([a-z]+)((?:\s+[a-zA-Z:-]+="[^"<&]*(?:&(?:amp|lt|gt|quot);[^"<&]*)*")*)\s*(\/?)>/gy;
  while (at < text.length) {
    if (text[at] !== "<") {
      const end = text.indexOf("<", at);
      const words = text.slice(at, end === -1 ? undefined : end);
      if (/&(?!(amp|lt|gt|quot);)/.test(words)) throw new Error(`loose ampersand at ${at}`);
      at = end === -1 ? text.length : end;
      continue;
    }
    tag.lastIndex = at;
    const m = tag.exec(text);
    if (m === null) throw new Error(`no tag at ${at}: ${text.slice(at, at + 60)}`);
    const attributes = [...(m[3] ?? "").matchAll(/([a-zA-Z:-]+)=/g)].map((a) => a[1]);
    if (new Set(attributes).size !== attributes.length) throw new Error("an attribute twice");
    if (m[1] === "/") {
      if (open.pop() !== m[2]) throw new Error(`</${m[2]}> does not close`);
    } else {
      names.push(m[2]!);
      if (m[4] !== "/") open.push(m[2]!);
    }
    at = tag.lastIndex;
  }
  if (open.length > 0) throw new Error(`left open: ${open.join(" ")}`);
  return names;
}

describe("figures of a plant", () => {
  for (const view of figureViews) {
    it(`draw ${view}: sound XML, unique ids, no bad number, same bytes for the same seed, true lengths in the path`, () => {
      for (const id of view === "habit" ? ["montanum"] : Object.keys(plants)) {
        const stages = view === "habit" ? (["S0", "S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"] as const) : (["S5"] as const);
        for (const stage of stages) {
          const request = { view, parameters: p(id), stage, seed: "P1", setting: "fen", lines: ["P1"] } as const;
          const figure = drawFigure(request);
          const svg = toSvg(figure.drawing, { title: figure.title, desc: figure.description });
          expect(/NaN|Infinity|undefined|\de-\d/.test(svg), `${id} ${stage}`).toBe(false);
          expect(svg.slice(0, 4000)).toMatch(
            new RegExp(
              `viewBox="0 0 [\\d.]+ [\\d.]+" width="[\\d.]+mm" height="[\\d.]+mm"><title>${figure.title}</title><desc>[^<]+</desc>`,
            ),
          );
          expect(readXml(svg)[0]).toBe("svg");
          const shapes = flat(figure.drawing.shapes);
          const ids = shapes.flatMap((s) => (s.id === undefined ? [] : [s.id]));
          expect(new Set(ids).size).toBe(ids.length);
          const again = drawFigure(request);
          expect(toSvg(again.drawing, { title: again.title, desc: again.description }) === svg).toBe(true);
          for (const truth of figure.truths) {
            const shape = shapes.find((s) => s.id === truth.shapeId);
            expect(shape?.kind, `${id} ${truth.what}`).toBe("path");
            const points = shape?.kind === "path" ? pathPoints(shape.d) : [];
            const nearest = (q: readonly [number, number]) =>
              points.reduce((best, c) => (Math.hypot(c[0] - q[0], c[1] - q[1]) < Math.hypot(best[0] - q[0], best[1] - q[1]) ? c : best));
            // The ends of a capsule, a stem or a stalk lie in the middle of a straight end: its corners are half a thickness away.
            const open = /capsule|stem height|stalk/.test(truth.what) ? 3.2 : 0.02;
            const from = nearest(truth.fromMm);
            const to = nearest(truth.toMm);
            expect(Math.hypot(from[0] - truth.fromMm[0], from[1] - truth.fromMm[1]), `${id} ${truth.what}`).toBeLessThan(open);
            expect(Math.hypot(to[0] - truth.toMm[0], to[1] - truth.toMm[1]), `${id} ${truth.what}`).toBeLessThan(open);
            if (open < 1) expect(Math.hypot(from[0] - to[0], from[1] - to[1])).toBeCloseTo(truth.lengthMm, 1);
          }
        }
      }
    });
  }

  it("gives another individual for another seed", () => {
    const one = drawFigure({ view: "leaf_top", parameters: p("obscurum"), stage: "S5", seed: "a" });
    const two = drawFigure({ view: "leaf_top", parameters: p("obscurum"), stage: "S5", seed: "b" });
    expect(one.truths[0]!.lengthMm).not.toBe(two.truths[0]!.lengthMm);
  });

  it("keeps every measured organ within its variation of the parameter", () => {
    const drawn = new Map<string, ReturnType<typeof drawFigure>["truths"]>();
    const within = (
      view: "leaf_top" | "flower_face" | "capsule_green" | "seed" | "stem_mid",
      what: string,
      value: (id: string) => number,
      share: number,
    ) => {
      for (const id of Object.keys(plants)) {
        for (const seed of ["a", "b", "c", "d"]) {
          const key = `${view} ${id} ${seed}`;
          const truths = drawn.get(key) ?? drawFigure({ view, parameters: p(id), stage: "S6", seed }).truths;
          drawn.set(key, truths);
          const all = truths.filter((t) => t.what === what);
          expect(all.length).toBeGreaterThan(0);
          for (const t of all) expect(Math.abs(t.lengthMm / value(id) - 1), `${id} ${what}`).toBeLessThanOrEqual(share + 0.002);
        }
      }
    };
    within("leaf_top", "leaf length", (id) => p(id).leaf.len, 3 * 0.045);
    within("leaf_top", "leaf width", (id) => p(id).leaf.wid, 3 * 0.05);
    within("flower_face", "petal length", (id) => p(id).flower.petal, 3 * 0.035);
    within("flower_face", "sepal length", (id) => p(id).flower.sepal, 3 * 0.04);
    within("capsule_green", "capsule length", (id) => p(id).capsule, 3 * 0.055);
    within("seed", "seed length", (id) => p(id).seed.len, 3 * 0.055);
    within("stem_mid", "stem diameter", (id) => p(id).stemDia, 3 * 0.04);
  });

  it("measures a petal from its foot to the farthest point of its outline", () => {
    const figure = drawFigure({ view: "flower_face", parameters: p("montanum"), stage: "S5", seed: "x" });
    const shapes = flat(figure.drawing.shapes);
    for (const truth of figure.truths.filter((t) => t.what === "petal length")) {
      const shape = shapes.find((s) => s.id === truth.shapeId);
      const points = shape?.kind === "path" ? pathPoints(shape.d) : [];
      const farthest = Math.max(...points.map((q) => Math.hypot(q[0] - truth.fromMm[0], q[1] - truth.fromMm[1])));
      expect(farthest).toBeCloseTo(truth.lengthMm, 2);
    }
  });

  it("makes a cross stand between its parents, with the stronger marks", () => {
    const child = crossOf(p("obscurum"), p("ciliatum"));
    expect(figureParameters.safeParse(child).success).toBe(true);
    expect(child.leaf.len).toBe(58);
    expect(child.hair.glands).toBe("upper");
  });
});

describe("sketches of states", () => {
  it("exist for every state of the demo that is coded by states, and differ from each other", () => {
    for (const character of demo.characters.filter((c) => c.kind === "states")) {
      const drawn = (character.states ?? []).map((state) => {
        const spec = demoSketches[character.id]?.[state.id];
        expect(spec, `${character.id} ${state.id}`).toBeDefined();
        const figure = drawSketch(spec!);
        expect([figure.drawing.widthMm, figure.drawing.heightMm]).toEqual([sketchMm, sketchMm]);
        const svg = toSvg(figure.drawing, { title: figure.title, desc: figure.description });
        expect(/NaN|Infinity|undefined/.test(svg)).toBe(false);
        readXml(svg);
        return svg;
      });
      expect(new Set(drawn).size).toBe(drawn.length);
    }
  });
});

describe("toSvg", () => {
  it("escapes words and refuses a magnification that is not positive", () => {
    const { drawing } = drawSketch({ kind: "stigma", stigma: "cross" });
    expect(toSvg(drawing, { title: 'a < b & "c"', desc: "d" })).toContain("<title>a &lt; b &amp; &quot;c&quot;</title>");
    expect(() => toSvg(drawing, { title: "t", desc: "d", magnify: 0 })).toThrow(RangeError);
  });
});
