/** A drawn state, where the drawings know it; nothing where they do not: the word stands beside it anyway. */
import { useMemo } from "react";

export const StateSketch = ({ characterId, stateId }: { readonly characterId: string; readonly stateId: string }) => {
  const svg = useMemo(() => sketchOf(characterId, stateId), [characterId, stateId]);
  if (svg === null) return null;
  // the drawing is made by our own engine from our own shapes, never from text of others
  return <span className="sketch" aria-hidden="true" dangerouslySetInnerHTML={{ __html: svg }} />;
};

const sketchOf = (_characterId: string, _stateId: string): string | null => null;
