import type { WitnessLine } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { To } from "../../parts/to.js";

export interface ProofProps {
  readonly plantId: string;
  readonly links: Pick<WitnessLine, "lookIds" | "readingIds" | "photoIds">;
  readonly onPhoto: (photoId: string) => void;
}

/** From a line to what it rests on: its looks, readings and photographs. */
export const Proof = ({ plantId, links, onPhoto }: ProofProps) => (
  <span className="proofs">
    {links.lookIds.map((id, index) => (
      <To key={id} href={`/plants/${plantId}`} query={{ look: id }} className="proof">
        {say("web.proof.look", { at: index + 1, count: links.lookIds.length })}
      </To>
    ))}
    {links.readingIds.map((id, index) => (
      <To key={id} href={`/plants/${plantId}`} query={{ reading: id }} className="proof">
        {say("web.proof.reading", { at: index + 1, count: links.readingIds.length })}
      </To>
    ))}
    {links.photoIds.slice(0, 4).map((id, index) => (
      <button key={id} type="button" className="proof proof-button" onClick={() => onPhoto(id)}>
        {say("web.proof.photo", { at: index + 1, count: Math.min(4, links.photoIds.length) })}
      </button>
    ))}
  </span>
);

/** Independent witnesses, one a line, each with its proof. */
export const WitnessList = ({
  plantId,
  lines,
  onPhoto,
}: {
  readonly plantId: string;
  readonly lines: readonly WitnessLine[];
  readonly onPhoto: (photoId: string) => void;
}) => (
  <ul className="bare ruled witnesses">
    {lines.map((line) => (
      <li key={`${line.group} ${line.title}`}>
        {line.title}
        {line.detail === "" ? null : <span className="side witness-detail">{line.detail}</span>}
        <Proof plantId={plantId} links={line} onPhoto={onPhoto} />
      </li>
    ))}
  </ul>
);
