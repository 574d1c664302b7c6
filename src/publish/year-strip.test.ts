import { expect, it } from "vitest";
import { say } from "../words/index.js";
import { yearStrip } from "./year-strip.js";

const rows = [
  {
    stage: "buds & <more>",
    dates: ["2022-06-19", "2022-07-06"],
    datesText: "19 June, 6 July",
    began: "",
    lastWithout: "2022-05-29",
    visits: 2,
  },
  { stage: "fruit", dates: ["2022-08"], datesText: "August", began: "", lastWithout: null, visits: 1 },
];

it("draws a dot a visit in the order of the days, and says the same in words", () => {
  const svg = yearStrip(rows, "en", say);
  const xs = [...svg.matchAll(/<circle class="dot" cx="([\d.]+)"/g)].map((m) => Number(m[1]));
  expect(xs).toHaveLength(3);
  expect(xs).toEqual([...xs].sort((a, b) => a - b));
  // 1 January begins at 176; a year is 768 wide: 19 June, day 170 of 365, lies at its middle of the day.
  expect(xs[0]).toBeCloseTo(176 + (169.5 / 365) * 768, 1);
  expect(svg.match(/class="began"/g)).toHaveLength(1);
  expect(svg).toContain(
    '<desc id="year-strip-desc">A strip of twelve months. buds &amp; &lt;more&gt;: seen on 19 June, 6 July. fruit: seen on August.</desc>',
  );
});
