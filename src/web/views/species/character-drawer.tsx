/** The cards of a table's characters, by part from base to seed; a card holds all there is to know before one looks. */
import { compareParts, type Character, type ReferenceTable, type ScoreValue } from "../../../engine/index.js";
import { writeFloraRange } from "../../../engine/index.js";
import { say } from "../../../words/index.js";
import { StateSketch } from "../../work/state-sketch.js";
import { TaxonLine } from "./taxon-line.js";

/** A score in words: "four lines (rarely two lines)", "(30-)40-60(-70) mm". */
export const scoreInWords = (character: Character, value: ScoreValue | undefined): string => {
  const nameOf = (id: string): string =>
    character.answer.kind === "states" ? (character.answer.states.find((state) => state.id === id)?.name ?? id) : id;
  switch (value?.kind) {
    case undefined:
    case "unknown":
      return say("species.unknown");
    case "not-applicable":
      return say("species.not-applicable");
    case "range": {
      const unit = character.answer.kind === "measure" ? character.answer.unit : "";
      return writeFloraRange(value, { unit });
    }
    case "states": {
      const usual = value.usual.map(nameOf).join(", ");
      return value.rarely.length === 0 ? usual : say("species.rarely", { usual, rarely: value.rarely.map(nameOf).join(", ") });
    }
  }
};

const Card = ({
  character,
  table,
  scoreOf,
}: {
  readonly character: Character;
  readonly table: ReferenceTable;
  readonly scoreOf: (taxonId: string, characterId: string) => ScoreValue | undefined;
}) => {
  const together = table.characters.filter(({ group, id }) => group === character.group && id !== character.id).map(({ name }) => name);
  const stages = table.stages.filter(({ id }) => character.seenIn.includes(id)).map(({ name }) => name);
  const onlyIf = character.onlyIf === null ? undefined : table.characters.find(({ id }) => id === character.onlyIf?.character);
  return (
    <details className="char-card">
      <summary>
        {character.name} <span className="side">{character.tool === "eye" ? say("outing.no-tool") : character.tool}</span>
      </summary>
      {character.answer.kind === "states" ? (
        <ul className="char-states">
          {character.answer.states.map((state) => (
            <li key={state.id}>
              <StateSketch characterId={character.id} stateId={state.id} />
              <span>
                {state.name}
                {state.plain !== "" && state.plain !== state.name && <small>{state.plain}</small>}
              </span>
            </li>
          ))}
        </ul>
      ) : (
        <p>
          {character.answer.kind === "measure"
            ? say("species.measured", { unit: character.answer.unit, n: character.answer.minN })
            : character.answer.kind === "count"
              ? say("species.counted", { n: character.answer.minN })
              : say("species.ratio", {
                  a: table.characters.find(({ id }) => character.answer.kind === "ratio" && id === character.answer.numerator)?.name ?? "",
                  b:
                    table.characters.find(({ id }) => character.answer.kind === "ratio" && id === character.answer.denominator)?.name ?? "",
                })}
        </p>
      )}
      <dl className="char-facts">
        <dt>{say("species.seen-in")}</dt>
        <dd>{stages.length === 0 ? say("species.any-stage") : stages.join(", ")}</dd>
        <dt>{say("species.weight")}</dt>
        <dd>
          {say("species.weight-is", { weight: character.weight, role: character.role === "hybrid-check" ? "hybridCheck" : character.role })}
        </dd>
        <dt>{say("species.together")}</dt>
        <dd>{together.length === 0 ? say("species.alone") : together.join(", ")}</dd>
        {onlyIf !== undefined && (
          <>
            <dt>{say("species.only-if")}</dt>
            <dd>{onlyIf.name}</dd>
          </>
        )}
        {character.errors.length > 0 && (
          <>
            <dt>{say("species.errors")}</dt>
            <dd>{character.errors.join("; ")}</dd>
          </>
        )}
        {character.disturbs && (
          <>
            <dt>{say("species.care")}</dt>
            <dd>{say("outing.disturbs")}</dd>
          </>
        )}
      </dl>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- a scrolling box must be reachable by keyboard */}
      <div className="work-scroll" tabIndex={0} role="region" aria-label={say("species.scores-of", { name: character.name })}>
        <table>
          <caption className="hidden-words">{say("species.scores-of", { name: character.name })}</caption>
          <tbody>
            {table.taxa.map((taxon) => (
              <tr key={taxon.id}>
                <th scope="row">
                  <TaxonLine taxon={taxon} short />
                </th>
                <td className="work-num">{scoreInWords(character, scoreOf(taxon.id, character.id))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
};

export const CharacterDrawer = ({ table }: { readonly table: ReferenceTable }) => {
  const parts = [...new Set(table.characters.map(({ part }) => part))].toSorted(compareParts);
  const scores = new Map(table.scores.map((score) => [`${score.taxonId} ${score.characterId}`, score.value]));
  return (
    <section aria-labelledby="cards-title">
      <h2 id="cards-title">{say("species.cards")}</h2>
      <p>{say("species.cards-lead")}</p>
      {parts.map((part) => (
        <div key={part} className="char-part">
          <h3 className="part">{part}</h3>
          <div>
            {table.characters
              .filter((character) => character.part === part)
              .map((character) => (
                <Card
                  key={character.id}
                  character={character}
                  table={table}
                  scoreOf={(taxonId, characterId) => scores.get(`${taxonId} ${characterId}`)}
                />
              ))}
          </div>
        </div>
      ))}
    </section>
  );
};
