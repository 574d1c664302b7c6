import type { CaseView } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { Name } from "../../parts/name.js";
import { To } from "../../parts/to.js";

/** When no taxon is left: what to look at again first, the signs, and the pairs that would explain the plant together. */
export const Hybrid = ({ view }: { readonly view: CaseView }) => (
  <section className="hybrid" aria-labelledby="hybrid-head">
    <h2 id="hybrid-head">{say("web.case.hybrid")}</h2>
    <div className="case-columns">
      {view.hybrid.checkAgain.length === 0 ? null : (
        <section>
          <h3 className="column-head">{say("web.case.check-again")}</h3>
          <ul className="bare ruled">
            {view.hybrid.checkAgain.map((check) => (
              <li key={check.characterId}>{check.sentence}</li>
            ))}
          </ul>
        </section>
      )}
      {view.hybrid.signs.length === 0 ? null : (
        <section>
          <h3 className="column-head">{say("web.case.signs")}</h3>
          <ul className="bare ruled">
            {view.hybrid.signs.map((sign) => (
              <li key={sign}>{sign}</li>
            ))}
          </ul>
          <p className="proofs">
            <To href={`/plants/${view.plantId}`} className="proof">
              {say("web.case.to-board")}
            </To>
          </p>
        </section>
      )}
      <section>
        <h3 className="column-head">{say("web.case.pairs")}</h3>
        <ol className="ruled pairs">
          {view.hybrid.pairs.slice(0, 6).map((pair) => (
            <li key={pair.parents.map((parent) => parent.taxonId).join(" ")}>
              <Name spans={pair.sentence} />
            </li>
          ))}
        </ol>
      </section>
    </div>
  </section>
);
