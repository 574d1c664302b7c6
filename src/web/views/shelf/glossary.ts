/** The glossary that comes with Stipule, fetched when it is first looked at. */
export interface GlossaryTerm {
  readonly id: string;
  readonly term: string;
  readonly part: string;
  readonly definition: string;
}

const files = import.meta.glob<unknown>("../../../../vocab/glossary.json", { import: "default" });

const isTerm = (value: unknown): value is GlossaryTerm =>
  typeof value === "object" &&
  value !== null &&
  ["id", "term", "part", "definition"].every((name) => typeof (value as Record<string, unknown>)[name] === "string");

/** All terms, in alphabetical order; none when the file is not there. */
export const loadGlossary = async (): Promise<readonly GlossaryTerm[]> => {
  const load = Object.values(files)[0];
  const list: unknown = load === undefined ? [] : await load();
  return Array.isArray(list) ? list.filter(isTerm).toSorted((a, b) => a.term.localeCompare(b.term, "en")) : [];
};
