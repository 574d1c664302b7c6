/** A drawn state, where the drawings know it; nothing where they do not: the word stands beside it anyway. */
import { useMemo } from "react";
import { demoSketch, drawSketch, toSvg } from "../../engine/index.js";

const sketchOf = (characterId: string, stateId: string): string | null => {
  const spec = demoSketch(characterId, stateId);
  if (spec === undefined) return null;
  const { drawing, title, description } = drawSketch(spec);
  return toSvg(drawing, { title, desc: description, idPrefix: `${characterId}-${stateId}-` });
};

export const StateSketch = ({ characterId, stateId }: { readonly characterId: string; readonly stateId: string }) => {
  const svg = useMemo(() => sketchOf(characterId, stateId), [characterId, stateId]);
  if (svg === null) return null;
  // The drawing is made by our own engine of our own shapes, never of text from elsewhere.
  return <span className="sketch" aria-hidden="true" dangerouslySetInnerHTML={{ __html: svg }} />;
};
