import type { CaseView, RivalLine } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { Name } from "../../parts/name.js";
import { WitnessList } from "./witness-list.js";

const Rival = ({
  rival,
  plantId,
  onPhoto,
}: {
  readonly rival: RivalLine;
  readonly plantId: string;
  readonly onPhoto: (photoId: string) => void;
}) => (
  <li>
    <details>
      <summary>
        <span className="rival-name">
          {rival.vernacular === "" ? <Name spans={rival.name} /> : rival.vernacular}
          {rival.left ? <b className="rival-left"> {say("web.case.rival.left")}</b> : null}
          {rival.inRange ? null : <span className="side"> {say("web.case.rival.out-of-range")}</span>}
        </span>
        <span className="rival-why">{rival.sentence}</span>
      </summary>
      <div className="rival-body">
        {rival.vernacular === "" ? null : (
          <p className="side">
            <Name spans={rival.name} />
          </p>
        )}
        {rival.ifRight === "" ? null : (
          <p>
            <b>{say("web.case.rival.if-right")}</b> {rival.ifRight}
          </p>
        )}
        {rival.against.length === 0 ? null : (
          <>
            <p className="column-head">{say("web.case.rival.against")}</p>
            <WitnessList plantId={plantId} lines={rival.against} onPhoto={onPhoto} />
          </>
        )}
      </div>
    </details>
  </li>
);

/** The rivals, folded: why each is out, and what would have to be wrong for it to be right. Those still left come first. */
export const Rivals = ({ view, onPhoto }: { readonly view: CaseView; readonly onPhoto: (photoId: string) => void }) => {
  const left = view.rivals.filter((rival) => rival.left);
  const out = view.rivals.filter((rival) => !rival.left);
  return (
    <ul className="bare ruled rivals">
      {[...left, ...out].map((rival) => (
        <Rival key={rival.taxonId} rival={rival} plantId={view.plantId} onPhoto={onPhoto} />
      ))}
    </ul>
  );
};
