import { ApiProblem } from "../api.js";
import { say } from "../../words/index.js";

/** A problem in full: what happened, what was kept, what to do; and where given, a button to try again. */
export const ProblemNote = ({ problem, again }: { readonly problem: unknown; readonly again?: (() => void) | undefined }) => {
  if (problem === null || problem === undefined) return null;
  const facts =
    problem instanceof ApiProblem
      ? problem.details
      : {
          title: say("web.problem.fault.title"),
          detail: say("web.problem.fault.detail", { message: problem instanceof Error ? problem.message : "?" }),
          kept: say("web.problem.fault.kept"),
          remedy: say("web.problem.fault.remedy"),
          code: "fault",
        };
  const errors =
    problem instanceof ApiProblem ? (problem.details.errors ?? []).filter((error) => error.detail !== problem.details.detail) : [];
  return (
    <div className="problem" role="alert" data-code={facts.code}>
      <p>
        <b>{facts.title}.</b> {facts.detail}
      </p>
      {errors.length === 0 ? null : (
        <ul>
          {errors.map((error) => (
            <li key={`${error.pointer} ${error.detail}`}>
              <code>{error.pointer}</code>
              {error.value === undefined ? null : <> “{error.value}”</>}: {error.detail}
            </li>
          ))}
        </ul>
      )}
      {facts.kept === undefined ? null : (
        <p>
          <b>{say("web.problem.kept")}</b> {facts.kept}
        </p>
      )}
      {facts.remedy === undefined ? null : (
        <p>
          <b>{say("web.problem.remedy")}</b> {facts.remedy}
        </p>
      )}
      {again === undefined ? null : (
        <p className="buttons">
          <button type="button" onClick={again}>
            {say("web.problem.again")}
          </button>
        </p>
      )}
    </div>
  );
};
