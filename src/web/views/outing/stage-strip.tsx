/** The stages of the year, each answered yes, no, unsure, or not looked: a recorded "no" is worth as much as a "yes". */
import type { Stage, StageRecord } from "../../../engine/index.js";
import { say } from "../../../words/index.js";

const answers = ["yes", "no", "unsure", "not-looked"] as const;
export type StageAnswer = StageRecord["answer"];

export const StageStrip = (props: {
  readonly stages: readonly Stage[];
  readonly records: readonly StageRecord[];
  readonly onAnswer: (stage: Stage, answer: StageAnswer) => void;
}) => (
  <div className="stages" role="group" aria-label={say("outing.stages")}>
    {props.stages.map((stage) => {
      const answer = props.records.find(({ stageId }) => stageId === stage.id)?.answer;
      return (
        <fieldset key={stage.id} className={answer === undefined ? "stage" : `stage answered ${answer}`}>
          <legend title={stage.looksLike}>{stage.name}</legend>
          <div className="stage-answers">
            {answers.map((one) => (
              <button type="button" key={one} aria-pressed={answer === one} onClick={() => props.onAnswer(stage, one)}>
                {say(`outing.stage.${one}`)}
              </button>
            ))}
          </div>
        </fieldset>
      );
    })}
  </div>
);
