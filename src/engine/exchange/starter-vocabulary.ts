/**
 * The vocabulary that comes with Stipule (vocab/): everyday stages with their BBCH codes, general characters as a pattern for
 * a table of one's own, and the standard views of a herb. A book takes them as its own and may change them.
 */
import { z } from "zod";
import { character as characterSchema, type Character, type Tool } from "../characters/character.js";
import { referenceTable, type ReferenceTable } from "../characters/reference-table.js";
import { stage as stageSchema, view as viewSchema, type Stage, type View } from "../characters/vocabulary.js";

const stagesFile = z.object({
  everydayStages: z.array(z.object({ id: z.string(), name: z.string(), definition: z.string(), bbchFrom: z.string(), bbchTo: z.string() })),
});

/** The everyday stages of vocab/stages.json. @throws {z.ZodError} */
export const starterStages = (json: unknown): readonly Stage[] =>
  stagesFile.parse(json).everydayStages.map((stage) =>
    stageSchema.parse({
      id: stage.id,
      name: stage.name.toLowerCase(),
      bbch: [stage.bbchFrom === stage.bbchTo ? stage.bbchFrom : `${stage.bbchFrom}-${stage.bbchTo}`],
      looksLike: stage.definition,
    }),
  );

const charactersFile = z.array(
  z.object({
    id: z.string(),
    part: z.string(),
    name: z.string(),
    type: z.enum(["nominal", "ordinal", "measured", "counted"]),
    unit: z.string().default(""),
    states: z.array(z.object({ id: z.string(), name: z.string(), definition: z.string() })),
    needs: z.array(z.string()),
    seenIn: z.array(z.string()),
    definition: z.string(),
    dependsOn: z.object({ character: z.string(), states: z.array(z.string()) }).optional(),
  }),
);
type StarterCharacter = z.infer<typeof charactersFile>[number];

/** Parts of the vocabulary in the words of our flora order. */
const parts: Readonly<Record<string, string>> = {
  habit: "whole plant",
  underground: "root",
  perianth: "corolla",
  pistil: "ovary",
  phenology: "whole plant",
  bract: "inflorescence",
};

const toolOf = (c: StarterCharacter): Tool => {
  if (c.needs.includes("cutting")) return "dissection";
  if (c.type === "measured") return c.unit === "cm" || c.unit === "m" ? "tape" : "ruler or photo";
  return c.needs.includes("hand-lens") ? "x10" : c.needs.includes("ruler") ? "ruler" : "eye";
};

const answerOf = (c: StarterCharacter): unknown => {
  if (c.type === "measured") return { kind: "measure", unit: c.unit };
  if (c.type === "counted") return { kind: "count" };
  const absence = c.states.find((state) => /^(none|absent)$/u.test(state.id))?.id ?? null;
  return {
    kind: "states",
    ordered: c.type === "ordinal",
    absence,
    states: c.states.map((s) => ({ id: s.id, name: s.name, plain: s.definition })),
  };
};

/**
 * The general characters of vocab/characters.json. Those of one part and subject are taken as one witness: a stem's hairs and
 * the kind of its hairs say one thing. @throws {z.ZodError}
 */
export const starterCharacters = (json: unknown): readonly Character[] =>
  charactersFile.parse(json).map((c) =>
    characterSchema.parse({
      id: c.id,
      part: parts[c.part] ?? c.part,
      name: c.name,
      answer: answerOf(c),
      seenIn: c.seenIn,
      tool: toolOf(c),
      group: c.dependsOn?.character ?? c.id,
      onlyIf: c.dependsOn ?? null,
      disturbs: c.needs.includes("digging"),
      note: c.definition,
    }),
  );

/** A table with characters and no taxa: the pattern for one's own. */
export const patternTable = (
  characters: readonly Character[],
  stages: readonly Stage[],
  words: { readonly title: string; readonly notice: string },
): ReferenceTable => referenceTable.parse({ id: "pattern", ...words, stages, characters, taxa: [], scores: [] });

const standing = ["leafing", "buds", "first-flower", "full-flower", "fading-flower", "green-fruit", "ripening-fruit"];
const flowering = ["first-flower", "full-flower"];
const fruiting = ["green-fruit", "ripening-fruit", "ripe-dispersing"];
const resting = ["emerging-leaves", "dying-back", "winter-remains"];

/** The standard views of a herb, with the stages at which each is wanted. Common practice, no source. */
export const starterViews = (): readonly View[] =>
  (
    [
      ["place", "the spot with surroundings", "place", false, []],
      ["habit", "whole plant, with a staff for scale", "whole plant", true, []],
      ["base", "foot of the stem", "base", true, ["emerging-leaves", ...standing, ...resting]],
      ["stem", "middle stem, side light", "stem", true, standing],
      ["stem-section", "cross-section of a fallen stem", "stem", true, fruiting],
      ["node", "where the leaves join the stem", "leaf", true, standing],
      ["leaf-upper", "leaf, upper side, flat", "leaf", true, standing],
      ["leaf-lower", "leaf, lower side, flat", "leaf", true, standing],
      ["leaf-edge", "edge of a leaf, close", "leaf", true, standing],
      ["buds", "flower buds", "flower region", false, ["buds", "first-flower"]],
      ["flower-front", "flower from the front", "flower", true, flowering],
      ["flower-side", "flower from the side, with the ovary", "flower", true, flowering],
      ["flower-behind", "flower from behind, with the calyx", "calyx", true, flowering],
      ["flower-section", "flower cut lengthwise", "flower", true, ["full-flower"]],
      ["hairs", "hairs and glands in side light", "flower region", false, ["buds", ...flowering, "green-fruit"]],
      ["fruit-green", "green fruit", "fruit", true, ["green-fruit"]],
      ["fruit-ripe", "ripe or open fruit", "fruit", true, ["ripening-fruit", "ripe-dispersing"]],
      ["seed", "seeds, close", "seed", true, ["ripening-fruit", "ripe-dispersing"]],
      ["winter", "runners, buds or rosettes that last the winter", "base", true, resting],
      ["label", "paper label with number", "place", false, []],
    ] as const
  ).map(([id, name, part, scaleWanted, stages]) => viewSchema.parse({ id, name, part, scaleWanted, stages: [...new Set(stages)] }));
