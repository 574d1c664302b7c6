/**
 * Scrolling through the contact sheet of 10,000 photographs by wheel, in Chromium, against a plain page of 10,000 pictures of
 * the same size that are loaded lazily: run with `npx tsx bench/grid.bench.ts` after `npm run build`. In every frame it is
 * counted which sheets must stand in the window and which do; and which pictures in it are not loaded yet. Two rounds, who
 * begins changing. Wanted: no frame in which a row is missing.
 */
import { chromium, type Page } from "@playwright/test";
import { join } from "node:path";
import { largeBook, photoCount } from "./large-book.js";
import { isStarted, median, milliseconds, report, type Figure } from "./report.js";
import { startServer } from "./start-server.js";

const viewport = { width: 1920, height: 1080 };
/** Pixels of one turn of the wheel: more than the sheet is high, so that all that is seen has to be made anew. */
const step = 1600;

interface Scrolled {
  readonly frames: number;
  /** Frames in which a sheet that must be in the window was not there. */
  readonly blank: number;
  /** Frames in which a picture in the window was not loaded. */
  readonly waiting: number;
  readonly longestMs: number;
  readonly medianMs: number;
}

/** Starts counting in the page; `box` scrolls, `tile` is one sheet. Written as text: it runs in the browser. */
const watch = (box: string, tile: string): string => `(() => {
  const box = document.querySelector(${JSON.stringify(box)});
  const all = () => [...box.querySelectorAll(${JSON.stringify(tile)})];
  const indexOf = (one) => Number(one.dataset.index);
  const top = box.getBoundingClientRect().top;
  const first = all().filter((one) => indexOf(one) < 60).sort((a, b) => indexOf(a) - indexOf(b));
  const at = first.map((one) => one.getBoundingClientRect());
  const columns = at.findIndex((one) => one.top > at[0].top + 1);
  const pitch = at[columns].top - at[0].top;
  const offset = at[0].top - top + box.scrollTop;
  const tall = at[0].height;
  const record = { frames: 0, blank: 0, waiting: 0, gaps: [], columns, pitch };
  let last = 0;
  const look = (now) => {
    if (last > 0) record.gaps.push(now - last);
    last = now;
    record.frames += 1;
    const from = Math.max(0, Math.floor((box.scrollTop - offset + pitch - tall) / pitch));
    const to = Math.min(Math.ceil(${photoCount} / columns), Math.ceil((box.scrollTop + box.clientHeight - offset) / pitch));
    const there = new Map(all().map((one) => [indexOf(one), one]));
    let missing = 0, waiting = 0;
    for (let i = from * columns; i < Math.min(to * columns, ${photoCount}); i += 1) {
      const one = there.get(i);
      const picture = one?.matches("img") ? one : one?.querySelector("img");
      if (one === undefined) missing += 1;
      else if (!picture || !picture.complete || picture.naturalWidth === 0) waiting += 1;
    }
    if (missing > 0) record.blank += 1;
    if (missing + waiting > 0) record.waiting += 1;
    if (!record.stopped) requestAnimationFrame(look);
  };
  window.__record = record;
  requestAnimationFrame(look);
})()`;

const scrollThrough = async (page: Page, box: string, tile: string): Promise<Scrolled> => {
  await page.locator(`${box} ${tile}`).first().waitFor();
  await page.waitForTimeout(500);
  await page.locator(box).hover();
  await page.evaluate(watch(box, tile));
  const end = `(() => { const box = document.querySelector(${JSON.stringify(box)}); return box.scrollTop + box.clientHeight >= box.scrollHeight - 2; })()`;
  const nextFrame = "new Promise((resolve) => requestAnimationFrame(() => resolve()))";
  for (let turn = 0; !(await page.evaluate(end)); turn += 1) {
    if (turn > 2000) throw new Error(`${box} does not scroll to its end`);
    await page.mouse.wheel(0, step);
    await page.evaluate(nextFrame);
  }
  const record = (await page.evaluate("(window.__record.stopped = true, window.__record)")) as {
    frames: number;
    blank: number;
    waiting: number;
    gaps: number[];
  };
  return {
    frames: record.frames,
    blank: record.blank,
    waiting: record.waiting,
    longestMs: Math.max(...record.gaps),
    medianMs: median(record.gaps),
  };
};

/** Measures; see the head of the file. */
export const gridFigures = async (): Promise<readonly Figure[]> => {
  const book = await largeBook();
  const server = await startServer(join(import.meta.dirname, "..", "bin", "stipule.js"), (port) => [
    "serve",
    "--book",
    book,
    "--port",
    String(port),
    "--no-open",
  ]);
  const browser = await chromium.launch({
    executablePath: process.env["STIPULE_CHROMIUM"] ?? "/usr/bin/chromium",
    args: "no-sandbox disable-gpu disable-quic no-first-run disable-background-networking disable-component-update disable-sync"
      .split(" ")
      .map((flag) => `--${flag}`),
  });
  try {
    const origin = `http://127.0.0.1:${server.port}`;
    const { sheets } = (await (await fetch(`${origin}/api/sheets`)).json()) as { sheets: { id: string }[] };
    interface Box {
      readonly width: number;
      readonly height: number;
      readonly tile: number;
    }
    let box: Box = { width: 0, height: 0, tile: 0 };
    const plain = ({ width, height, tile }: Box): string =>
      `<!doctype html><title>plain</title><style>body{margin:0}#box{width:${width}px;height:${height}px;overflow-y:auto;display:grid;
      grid-template-columns:repeat(auto-fill,${tile}px);gap:8px}img{width:${tile}px;height:${Math.round(tile * 0.75)}px;object-fit:contain;
      margin-bottom:40px}</style><div id="box">${sheets
        .map(({ id }, k) => `<img loading="lazy" decoding="async" data-index="${k}" src="/image/${id}/320">`)
        .join("")}</div>`;
    const ours = async (): Promise<Scrolled> => {
      const page = await browser.newPage({ viewport });
      await page.goto(`${origin}/sorting`);
      await page.locator(".trays button").last().click();
      await page.locator(`.sheet[aria-setsize="${photoCount}"]`).first().waitFor();
      box = (await page.evaluate(
        "(() => { const { clientWidth: width, clientHeight: height } = document.querySelector('.contact'); return { width, height, tile: document.querySelector('.sheet').clientWidth }; })()",
      )) as Box;
      const scrolled = await scrollThrough(page, ".contact", ".sheet");
      await page.close();
      return scrolled;
    };
    const theirs = async (): Promise<Scrolled> => {
      const page = await browser.newPage({ viewport });
      await page.route("**/plain.html", (route) => route.fulfill({ contentType: "text/html", body: plain(box) }));
      await page.goto(`${origin}/plain.html`);
      const scrolled = await scrollThrough(page, "#box", "img");
      await page.close();
      return scrolled;
    };
    const [a, b] = [await ours(), await theirs()];
    const d = await theirs();
    const c = await ours();
    return figuresOf([a, c], [b, d]);
  } finally {
    await browser.close();
    await server.stop();
  }
};

const figuresOf = (ours: readonly Scrolled[], plain: readonly Scrolled[]): readonly Figure[] => {
  const total = (rounds: readonly Scrolled[], of: (one: Scrolled) => number): number => rounds.reduce((sum, one) => sum + of(one), 0);
  const share = (rounds: readonly Scrolled[], of: (one: Scrolled) => number): string =>
    `${((100 * total(rounds, of)) / total(rounds, ({ frames }) => frames)).toFixed(1)} % of ${total(rounds, ({ frames }) => frames)}`;
  const longest = (rounds: readonly Scrolled[]): number => Math.max(...rounds.map(({ longestMs }) => longestMs));
  const middle = (rounds: readonly Scrolled[]): number => median(rounds.map(({ medianMs }) => medianMs));
  const common = {
    peer: "a plain page of 10,000 lazy pictures",
    source: "10,000 records made by bench/large-book.ts, in Chromium",
    command: "npx tsx bench/grid.bench.ts",
  };
  return [
    {
      figure: "contact sheet of 10,000: frames with a row missing",
      target: "none",
      ours: share(ours, ({ blank }) => blank),
      peerValue: share(plain, ({ blank }) => blank),
      ratio: null,
      met: total(ours, ({ blank }) => blank) === 0,
      ...common,
    },
    {
      figure: "contact sheet of 10,000: frames with a picture not loaded",
      target: "none set; for comparison",
      ours: share(ours, ({ waiting }) => waiting),
      peerValue: share(plain, ({ waiting }) => waiting),
      ratio: null,
      met: null,
      ...common,
    },
    {
      figure: "contact sheet of 10,000: longest frame",
      target: "none set; for comparison",
      ours: milliseconds(longest(ours)),
      peerValue: milliseconds(longest(plain)),
      ratio: longest(ours) / longest(plain),
      met: null,
      ...common,
    },
    {
      figure: "contact sheet of 10,000: median frame",
      target: "none set; for comparison",
      ours: milliseconds(middle(ours)),
      peerValue: milliseconds(middle(plain)),
      ratio: middle(ours) / middle(plain),
      met: null,
      ...common,
    },
  ];
};

if (isStarted(import.meta.url)) report("Scrolling through 10,000 photographs", await gridFigures());
