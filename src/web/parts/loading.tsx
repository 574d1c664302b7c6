import { say } from "../../words/index.js";

/** Said only when reading takes longer than a glance: the words fade in late, so nothing flashes. */
export const Loading = () => <output className="loading">{say("web.loading")}</output>;
