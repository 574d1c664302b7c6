/** What the book is called, what is said on its every page, and the zone of its clocks; the rule by which a name is settled. */
import { useState } from "react";
import type { BookInfo, IsoDate, SettledRule } from "../../engine/index.js";
import { say } from "../../words/index.js";
import { call } from "../api.js";
import { numberIn, numberProblem } from "./numbers.js";
import { TextField } from "./text-field.js";
import type { Keeper } from "./use-keeper.js";

const keepInfo = (keeper: Keeper, what: string, info: BookInfo): void =>
  void keeper.keep(what, async () => call("PUT /api/book", { body: info }));

const isZone = (zone: string): boolean => {
  try {
    return new Intl.DateTimeFormat("en", { timeZone: zone }).format(0) !== "";
  } catch {
    return false;
  }
};

export const BookEditor = ({ info, keeper }: { readonly info: BookInfo; readonly keeper: Keeper }) => {
  const [title, setTitle] = useState(info.title);
  const [notice, setNotice] = useState(info.notice);
  const [zone, setZone] = useState(info.zone);
  const [readAt, setReadAt] = useState<string>(info.readAt ?? "");
  const mine = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const badZone = isZone(zone) ? undefined : say("book.zone-bad", { zone });
  return (
    <form
      className="work-cols"
      onSubmit={(event) => {
        event.preventDefault();
        if (badZone === undefined)
          keepInfo(keeper, title, { ...info, title: title.trim(), notice, zone, readAt: readAt === "" ? null : (readAt as IsoDate) });
      }}
    >
      <TextField label={say("book.title")} help={say("book.title-help")} required value={title} onChange={setTitle} maxLength={200} />
      <div>
        <TextField
          label={say("book.zone")}
          help={say("book.zone-help")}
          required
          value={zone}
          onChange={setZone}
          maxLength={60}
          problem={badZone}
        />
        {zone !== mine && (
          <button type="button" className="quiet" onClick={() => setZone(mine)}>
            {say("book.zone-mine", { zone: mine })}
          </button>
        )}
      </div>
      <TextField label={say("book.read-at")} help={say("book.read-at-help")} type="date" value={readAt} onChange={setReadAt} />
      <div className="work-wide">
        <TextField label={say("book.notice")} help={say("book.notice-help")} value={notice} onChange={setNotice} maxLength={800} />
      </div>
      <div>
        <button type="submit" className="main">
          {say("work.keep")}
        </button>
      </div>
    </form>
  );
};

const numbers = ["outAt", "witnessesPerRival", "groupsSeen", "outings"] as const;
const most = { outAt: 40, witnessesPerRival: 10, groupsSeen: 40, outings: 40 } as const;
const usual: SettledRule = {
  outAt: 4,
  witnessesPerRival: 2,
  groupsSeen: 4,
  outings: 2,
  oneFromParts: ["flower", "fruit", "seed", "glands", "base"],
};

export const RuleEditor = ({ info, keeper }: { readonly info: BookInfo; readonly keeper: Keeper }) => {
  const rule = info.settledRule;
  const [texts, setTexts] = useState(() => ({
    outAt: String(rule.outAt),
    witnessesPerRival: String(rule.witnessesPerRival),
    groupsSeen: String(rule.groupsSeen),
    outings: String(rule.outings),
  }));
  const [parts, setParts] = useState(rule.oneFromParts.join(", "));
  const value = (name: (typeof numbers)[number]): number => numberIn(texts[name]) ?? rule[name];
  const problemOf = (name: (typeof numbers)[number]): string | undefined =>
    texts[name].trim() === "" ? say("work.required") : numberProblem(texts[name], { min: 1, max: most[name], whole: true });
  const isWrong = numbers.some((name) => problemOf(name) !== undefined);
  const made: SettledRule = {
    outAt: value("outAt"),
    witnessesPerRival: value("witnessesPerRival"),
    groupsSeen: value("groupsSeen"),
    outings: value("outings"),
    oneFromParts: parts
      .split(/[,;]/)
      .map((part) => part.trim())
      .filter((part) => part !== ""),
  };
  const isUsual = JSON.stringify(made) === JSON.stringify(usual);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (!isWrong) keepInfo(keeper, say("rule.title"), { ...info, settledRule: made });
      }}
    >
      <p>
        {say("rule.sentence", {
          outAt: made.outAt,
          witnesses: made.witnessesPerRival,
          groups: made.groupsSeen,
          outings: made.outings,
          parts: made.oneFromParts.length === 0 ? "none" : made.oneFromParts.join(", "),
        })}
      </p>
      <div className="work-cols">
        {numbers.map((name) => (
          <TextField
            key={name}
            label={say(`rule.${name}`)}
            help={say(`rule.${name}-help`)}
            inputMode="numeric"
            value={texts[name]}
            problem={problemOf(name)}
            onChange={(text) => setTexts((now) => ({ ...now, [name]: text }))}
          />
        ))}
        <TextField label={say("rule.parts")} help={say("rule.parts-help")} value={parts} onChange={setParts} />
      </div>
      <p className="side">{say("rule.note")}</p>
      <div className="work-row">
        <button type="submit" className="main">
          {say("work.keep")}
        </button>
        {!isUsual && (
          <button
            type="button"
            onClick={() => {
              setTexts({ outAt: "4", witnessesPerRival: "2", groupsSeen: "4", outings: "2" });
              setParts(usual.oneFromParts.join(", "));
            }}
          >
            {say("rule.usual")}
          </button>
        )}
      </div>
    </form>
  );
};
