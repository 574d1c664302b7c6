/** The foot of a working screen: what was kept last, with Undo; a problem with a way to send it again. */
import { say } from "../../words/index.js";
import { ProblemNote } from "../parts/index.js";
import { Says } from "./says.js";
import type { Keeper } from "./use-keeper.js";

export const KeeperFoot = ({ keeper }: { readonly keeper: Keeper }) => (
  <div className={keeper.said === "" && keeper.problem === null && keeper.busy === 0 ? "keeper-foot quiet" : "keeper-foot"}>
    <ProblemNote problem={keeper.problem} again={keeper.again ?? undefined} />
    {keeper.problem !== null && keeper.again !== null && (
      <button type="button" className="quiet" onClick={keeper.forget}>
        {say("work.give-up")}
      </button>
    )}
    <div className="keeper-line">
      <Says>{keeper.busy > 0 ? say("work.keeping") : keeper.said}</Says>
      {keeper.said !== "" && (
        <button type="button" onClick={keeper.undo}>
          {say("work.undo")}
        </button>
      )}
    </div>
  </div>
);
