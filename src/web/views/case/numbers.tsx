import type { CaseView } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { Name } from "../../parts/name.js";

const share = new Intl.NumberFormat("en-GB", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
/** Chances are said with two places, never as 0 or 1: the table is no oracle. */
const chance = (value: number): string =>
  value < 0.005 ? say("web.case.chance.tiny") : value > 0.995 ? say("web.case.chance.nearly") : share.format(value);
const decibans = (value: number): string => `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(1)}`;

/** The numbers behind the words: rule, chances, weights of evidence, how firm it is. */
export const Numbers = ({ view }: { readonly view: CaseView }) => {
  const weighed = [...view.stands, ...view.standsAgainst].flatMap((line) =>
    line.decibans === null ? [] : [{ ...line, decibans: line.decibans }],
  );
  const chances = [
    ...(view.leader === null || view.probability.leader === null ? [] : [{ taxon: view.leader, probability: view.probability.leader }]),
    ...view.rivals.map((rival) => ({ taxon: rival, probability: rival.probability })),
  ].sort((a, b) => b.probability - a.probability);
  return (
    <div className="numbers">
      <section>
        <h3 className="column-head">{say("web.case.rule")}</h3>
        <p>{view.rule.text}</p>
        <p>{say("web.case.rule.seen", { groups: view.rule.groupsSeen, outings: view.rule.outings })}</p>
        <h3 className="column-head">{say("web.case.robustness")}</h3>
        <p>{view.robustness.sentence}</p>
        <h3 className="column-head">{say("web.case.computed")}</h3>
        <p>{view.probability.sentence}</p>
        <p className="side">{say("web.case.computed.how")}</p>
      </section>
      <section>
        <table className="plain">
          <caption className="column-head">{say("web.case.chances")}</caption>
          <thead>
            <tr>
              <th scope="col">{say("web.case.taxon")}</th>
              <th scope="col" className="number">
                {say("web.case.chance")}
              </th>
            </tr>
          </thead>
          <tbody>
            {chances.map(({ taxon, probability }) => (
              <tr key={taxon.taxonId}>
                <th scope="row">
                  <Name spans={taxon.name} />
                </th>
                <td className="number">{chance(probability)}</td>
              </tr>
            ))}
            <tr>
              <th scope="row">{say("web.case.none-of-these")}</th>
              <td className="number">{chance(view.noneOfThese)}</td>
            </tr>
            {view.probability.typicality === null ? null : (
              <tr>
                <th scope="row">{say("web.case.typicality")}</th>
                <td className="number">{share.format(view.probability.typicality)}</td>
              </tr>
            )}
            {view.probability.withoutPrior === null ? null : (
              <tr>
                <th scope="row">{say("web.case.without-prior")}</th>
                <td className="number">{chance(view.probability.withoutPrior)}</td>
              </tr>
            )}
          </tbody>
        </table>
      </section>
      {weighed.length === 0 || view.runnerUp === null ? null : (
        <section>
          <table className="plain">
            <caption className="column-head">
              {say("web.case.weights")} <Name spans={view.runnerUp.name} />
            </caption>
            <thead>
              <tr>
                <th scope="col">{say("web.case.witness")}</th>
                <th scope="col" className="number">
                  {say("web.case.decibans")}
                </th>
              </tr>
            </thead>
            <tbody>
              {weighed.map((line) => (
                <tr key={`${line.group} ${line.title}`}>
                  <th scope="row">{line.title}</th>
                  <td className="number">{decibans(line.decibans)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="side">{say("web.case.decibans.help")}</p>
        </section>
      )}
    </div>
  );
};
