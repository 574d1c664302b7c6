/** Which sketch belongs to which coded state of the demo book: the only place that knows the demo's ids. */
import type { SketchSpec } from "./sketch.js";

/** Character id, then state id, to what is drawn. */
export const demoSketches: Readonly<Record<string, Readonly<Record<string, SketchSpec>>>> = {
  habit: {
    erect: { kind: "growth", pose: "erect" },
    ascending: { kind: "growth", pose: "ascending" },
    creeping: { kind: "growth", pose: "creeping" },
  },
  stem_lines: { none: { kind: "stem-lines", lines: 0 }, two: { kind: "stem-lines", lines: 2 }, four: { kind: "stem-lines", lines: 4 } },
  stem_hair: {
    spreading: { kind: "stem-hairs", hairs: "spreading" },
    appressed: { kind: "stem-hairs", hairs: "appressed" },
    hairless: { kind: "stem-hairs", hairs: "hairless" },
  },
  glands: {
    absent: { kind: "glands", where: "absent" },
    calyx_only: { kind: "glands", where: "calyx_only" },
    upper: { kind: "glands", where: "upper" },
  },
  winter_organ: {
    rosettes: { kind: "winter-organ", organ: "rosettes" },
    leafy_runners: { kind: "winter-organ", organ: "leafy_runners" },
    thread_runners: { kind: "winter-organ", organ: "thread_runners" },
    thick_shoots: { kind: "winter-organ", organ: "thick_shoots" },
    stout_buds: { kind: "winter-organ", organ: "stout_buds" },
    scaly_runners: { kind: "winter-organ", organ: "scaly_runners" },
  },
  leaf_joint: {
    clasping: { kind: "leaf-joint", joint: "clasping" },
    sessile: { kind: "leaf-joint", joint: "sessile" },
    running_down: { kind: "leaf-joint", joint: "running_down" },
    short_stalk: { kind: "leaf-joint", joint: "short_stalk" },
    long_stalk: { kind: "leaf-joint", joint: "long_stalk" },
  },
  leaf_shape: {
    linear: { kind: "leaf-shape", lengthToWidth: 9, widest: 0.45, fullness: 1.6 },
    strap: { kind: "leaf-shape", lengthToWidth: 5.2, widest: 0.44, fullness: 0.7 },
    lanceolate: { kind: "leaf-shape", lengthToWidth: 3.8, widest: 0.28, fullness: 1.6 },
    elliptic: { kind: "leaf-shape", lengthToWidth: 2.8, widest: 0.5, fullness: 1.9 },
    ovate: { kind: "leaf-shape", lengthToWidth: 2, widest: 0.28, fullness: 1.3 },
  },
  leaf_base: {
    wedge: { kind: "leaf-foot", foot: "wedge" },
    rounded: { kind: "leaf-foot", foot: "rounded" },
    heart: { kind: "leaf-foot", foot: "heart" },
  },
  leaf_edge: {
    entire: { kind: "leaf-edge", teeth: 0, toothMm: 0 },
    fine: { kind: "leaf-edge", teeth: 15, toothMm: 0.7 },
    sharp: { kind: "leaf-edge", teeth: 13, toothMm: 2 },
  },
  leaf_hair: {
    dense: { kind: "leaf-hairs", density: "dense" },
    sparse: { kind: "leaf-hairs", density: "sparse" },
    hairless: { kind: "leaf-hairs", density: "hairless" },
  },
  bud_pose: { erect: { kind: "bud-pose", pose: "erect" }, nodding: { kind: "bud-pose", pose: "nodding" } },
  petal_colour: {
    deep: { kind: "petal-colour", young: "#b0388f", old: "#a03384" },
    clear: { kind: "petal-colour", young: "#dba6cb", old: "#d79ac6" },
    white_first: { kind: "petal-colour", young: "#fbf4f8", old: "#dd9fc3" },
  },
  petal_notch: { shallow: { kind: "petal-notch", notch: 0.2 }, deep: { kind: "petal-notch", notch: 0.44 } },
  stigma: { cross: { kind: "stigma", stigma: "cross" }, club: { kind: "stigma", stigma: "club" } },
  capsule_hair: {
    appressed: { kind: "capsule-hairs", hairs: "appressed" },
    glandular: { kind: "capsule-hairs", hairs: "glandular" },
    hairless: { kind: "capsule-hairs", hairs: "hairless" },
  },
  seed_neck: { none: { kind: "seed-neck", neck: false }, short: { kind: "seed-neck", neck: true } },
  seed_face: { even: { kind: "seed-face", ridged: false }, ridged: { kind: "seed-face", ridged: true } },
  setting: {
    fen: { kind: "setting", setting: "fen" },
    ditch: { kind: "setting", setting: "ditch" },
    woodland: { kind: "setting", setting: "woodland" },
    open: { kind: "setting", setting: "open" },
    mountain: { kind: "setting", setting: "mountain" },
  },
};

/** The sketch of a coded state of the demo, or undefined when none is known. */
export function demoSketch(characterId: string, stateId: string): SketchSpec | undefined {
  return demoSketches[characterId]?.[stateId];
}
