// Measures every quality figure anew and writes docs/figures.md, losses included: `npm run figures`. Takes some minutes; for
// numbers worth quoting let nothing else run. The checks against published values are counted, the benches are timed.
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { z } from "zod";
import { benches } from "../bench/all.js";
import { machine, verdict, type Figure } from "../bench/report.js";
import { allComparisons, isThere } from "../tests/reference/gower-daisy/distances.js";
import { irisExpected, irisPath, leaveOneOut } from "../tests/reference/iris-normal-model/leave-one-out.js";
import { clockShift, photoId, placePhotos, readDemoYear } from "../src/engine/index.js";

const root = path.resolve(import.meta.dirname, "..");

const testReport = z.object({
  testResults: z.array(z.object({ name: z.string(), assertionResults: z.array(z.object({ status: z.string() })) })),
});

/** Checks against values from outside the project, counted by the source they come from. */
const referenceFigures = (): readonly Figure[] => {
  const folder = mkdtempSync(path.join(tmpdir(), "stipule-figures-"));
  const file = path.join(folder, "report.json");
  try {
    execFileSync(
      process.execPath,
      [path.join(root, "node_modules", "vitest", "vitest.mjs"), "run", "--project", "reference", "--reporter=json", `--outputFile=${file}`],
      { cwd: root, stdio: "ignore" },
    );
  } catch {
    // A check that fails is a figure that is not met: the report says which.
  }
  const { testResults } = testReport.parse(JSON.parse(readFileSync(file, "utf8")));
  rmSync(folder, { recursive: true });
  return testResults
    .map(({ name, assertionResults }): Figure => {
      const subject = path.basename(path.dirname(name));
      const title = /^# (.+)$/mu.exec(readFileSync(path.join(path.dirname(name), "README.md"), "utf8"))?.[1] ?? subject;
      const count = (status: string): number => assertionResults.filter((one) => one.status === status).length;
      const [passed, skipped] = [count("passed"), assertionResults.length - count("passed") - count("failed")];
      return {
        figure: title,
        target: "every check holds",
        peer: null,
        ours: `${passed} of ${assertionResults.length - skipped} hold${skipped === 0 ? "" : `, ${skipped} skipped`}`,
        peerValue: null,
        ratio: null,
        met: passed === 0 ? null : count("failed") === 0,
        source: `tests/reference/${subject}/README.md`,
        command: `npx vitest run --project reference tests/reference/${subject}`,
      };
    })
    .toSorted((a, b) => (a.source < b.source ? -1 : 1));
};

/** The demo's camera clock: what is proposed, and how many photographs then lie at the right plant. */
const clockFigure = (): Figure => {
  const { content, photos } = readDemoYear(JSON.parse(readFileSync(path.join(root, "demo", "hobbin-carr.json"), "utf8")));
  const shift = clockShift(
    photos.map((photo) => photo.takenCamera),
    content.stops,
  );
  const placed = placePhotos(
    // Any 64 digits do for an id: the photographs are not read here.
    photos.map((photo, index) => ({ id: photoId.parse(index.toString(16).padStart(64, "0")), taken: photo.takenCamera })),
    content.outings.map((outing) => ({
      outingId: outing.id,
      date: outing.date,
      stops: content.stops.filter((stop) => stop.outingId === outing.id),
      shiftS: shift.proposedS ?? 0,
    })),
  );
  const withPlant = photos.map((photo, index) => ({ photo, place: placed[index] })).filter(({ photo }) => photo.plant !== null);
  const right = withPlant.filter(({ photo, place }) => place?.sure === true && place.plantId === photo.plant).length;
  return {
    figure: "Photographs of the demo at the right plant after the proposed shift of the camera's clock (true shift 440 s)",
    target: "at least 95 %",
    peer: null,
    ours: `${right} of ${withPlant.length} after ${shift.proposedS ?? "no"} s`,
    peerValue: null,
    ratio: null,
    met: right / withPlant.length >= 0.95,
    source: "demo/hobbin-carr.json",
    command: "npm run figures",
  };
};

/** Numbers beside those of other programs, where the open data for them are there. */
const otherPrograms = (): readonly Figure[] => {
  const figures: Figure[] = [];
  if (existsSync(irisPath)) {
    const { correct, logLoss } = leaveOneOut();
    const common = {
      peer: `${irisExpected.program} GaussianNB`,
      source: "tests/reference/iris-normal-model/README.md",
      command: "npx vitest run --project reference tests/reference/iris-normal-model",
    };
    figures.push(
      {
        figure: "Irises named rightly, each left out in turn",
        target: "as many",
        ours: `${correct} of ${irisExpected.of}`,
        peerValue: `${irisExpected.correct} of ${irisExpected.of}`,
        ratio: null,
        met: correct >= irisExpected.correct,
        ...common,
      },
      {
        figure: "Log loss over the irises, each left out in turn",
        target: "equal within 1e-9",
        ours: logLoss.toFixed(10),
        peerValue: irisExpected.logLoss.toFixed(10),
        ratio: null,
        met: Math.abs(logLoss - irisExpected.logLoss) < 1e-9,
        ...common,
      },
    );
  }
  if (isThere) {
    const compared = allComparisons();
    const greatest = Math.max(...compared.map((one) => one.greatest));
    figures.push({
      figure: `Greatest difference of a Gower distance, ${compared.reduce((sum, { pairs }) => sum + pairs, 0)} pairs of ${compared.length} sets`,
      target: "below 1.5e-12, as printed",
      peer: "daisy of R's cluster",
      ours: greatest.toExponential(1),
      peerValue: null,
      ratio: null,
      met: greatest < 1.5e-12,
      source: "tests/reference/gower-daisy/README.md",
      command: "npx vitest run --project reference tests/reference/gower-daisy",
    });
  }
  return figures;
};

const cell = (text: string): string => text.replaceAll("|", "\\|").replaceAll("\n", " ");
const table = (figures: readonly Figure[]): string =>
  [
    "| figure | value | target | peer | met | source | command |",
    "|---|---|---|---|---|---|---|",
    ...figures
      .map((f) =>
        [
          f.figure,
          f.ours,
          f.target,
          f.peer === null ? "" : `${f.peer}: ${f.peerValue ?? "-"}${f.ratio === null ? "" : `, ratio ${f.ratio.toFixed(2)}`}`,
          verdict(f.met),
          f.source,
          `\`${f.command}\``,
        ]
          .map(cell)
          .join(" | "),
      )
      .map((row) => `| ${row} |`),
  ].join("\n");

const begun = machine();
const sections = [`## Against published values\n\n${table([...referenceFigures(), clockFigure(), ...otherPrograms()])}`];
for (const { title, measure } of benches) {
  // Other work on the machine changes while this runs: it stands with every bench.
  const before = machine();
  const figures = await measure();
  sections.push(`## ${title}\n\nBefore: ${before}. After: ${machine()}.\n\n${table(figures)}`);
}
writeFileSync(
  path.join(root, "docs", "figures.md"),
  `# Figures\n\nMeasured anew by \`npm run figures\`; losses stand here too. Where the load average is above the number of processors other work ran at the same time: absolute times are then too long, and ratios less sure. Machine at the beginning: ${begun}.\n\n${sections.join("\n\n")}\n`,
);
console.log("docs/figures.md written");
