/**
 * Prints a published page to PDF with a Chromium that is already on the machine. Where there is none, that is an ordinary
 * answer: any browser's own print command gives the same pages.
 */
import { spawn } from "node:child_process";
import { access, constants, mkdtemp, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { delimiter, dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { fail, ok, type Result } from "../engine/index.js";

export type Paper = "A4" | "Letter";

export interface PrintProblem {
  readonly code: "no-program" | "could-not-start" | "timed-out" | "no-pdf";
  /** What the program said last, for people; "" when nothing. */
  readonly reason: string;
}

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

const isProgram = async (path: string): Promise<boolean> =>
  access(path, constants.X_OK).then(
    async () => (await stat(path)).isFile(),
    () => false,
  );

/** The Chromium to print with: `STIPULE_CHROMIUM`, else the first usual name in `PATH`; null when there is none. */
export const findChromium = async (environment: NodeJS.ProcessEnv = process.env): Promise<string | null> => {
  const chosen = environment["STIPULE_CHROMIUM"];
  if (chosen !== undefined && chosen !== "") return (await isProgram(chosen)) ? chosen : null;
  const folders = (environment["PATH"] ?? "").split(delimiter).filter((folder) => folder !== "");
  for (const name of names) {
    for (const folder of folders) {
      const path = join(folder, name);
      if (await isProgram(path)) return path;
    }
  }
  return null;
};

const flags = [
  "--headless=new",
  "--disable-gpu",
  "--no-first-run",
  "--no-default-browser-check",
  "--no-pdf-header-footer",
  "--generate-pdf-document-outline",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--disable-quic",
  "--disable-extensions",
  // The page asks for nothing from outside; this makes sure.
  "--host-resolver-rules=MAP * ~NOTFOUND",
];

const run = async (program: string, args: readonly string[], timeoutMs: number): Promise<Result<null, PrintProblem>> =>
  new Promise((resolve) => {
    // Own process group, so that the helpers of the browser end with it.
    const child = spawn(program, args, { stdio: ["ignore", "ignore", "pipe"], detached: process.platform !== "win32" });
    let said = "";
    let timedOut = false;
    const end = (): void => {
      try {
        if (child.pid !== undefined && process.platform !== "win32") process.kill(-child.pid, "SIGKILL");
        else child.kill("SIGKILL");
      } catch {
        // It has ended by itself in the meantime.
      }
    };
    const timer = setTimeout(() => {
      timedOut = true;
      end();
    }, timeoutMs);
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      said = (said + text).slice(-2000);
    });
    child.on("error", (error) => {
      clearTimeout(timer);
      resolve(fail({ code: "could-not-start", reason: error.message }));
    });
    child.on("close", () => {
      clearTimeout(timer);
      end();
      resolve(timedOut ? fail({ code: "timed-out", reason: `${Math.round(timeoutMs / 1000)} s` }) : ok(null));
    });
  });

/**
 * Prints `htmlPath` to `pdfPath` on the given paper. The page's folder gets two temporary files (a copy that names the paper
 * size), which are removed again. The browser runs without a shell, with a profile of its own and a time limit.
 * @throws what the file system throws when the page cannot be read or its folder not be written.
 */
export const printPdf = async (options: {
  readonly htmlPath: string;
  readonly pdfPath: string;
  readonly paper: Paper;
  /** null = look for one. */
  readonly program?: string | null;
  readonly timeoutMs?: number;
}): Promise<Result<{ readonly program: string; readonly bytes: number }, PrintProblem>> => {
  const { htmlPath, pdfPath, paper, timeoutMs = 60_000 } = options;
  const program = options.program ?? (await findChromium());
  if (program === null) return fail({ code: "no-program", reason: "" });
  const folder = dirname(htmlPath);
  const profile = await mkdtemp(join(tmpdir(), "stipule-print-"));
  const [copy, style, half] = [join(folder, ".print.html"), join(folder, ".print.css"), join(profile, "page.pdf")];
  try {
    const page = await readFile(htmlPath, "utf8");
    await writeFile(style, `@page{size:${paper === "A4" ? "210mm 297mm" : "8.5in 11in"}}\n`);
    await writeFile(
      copy,
      page.replace("</head>", '<link rel="stylesheet" href=".print.css"></head>').replaceAll('loading="lazy"', 'loading="eager"'),
    );
    const isRoot = typeof process.getuid === "function" && process.getuid() === 0;
    const result = await run(
      program,
      [
        ...flags,
        ...(isRoot ? ["--no-sandbox"] : []),
        `--user-data-dir=${join(profile, "profile")}`,
        `--print-to-pdf=${half}`,
        pathToFileURL(copy).href,
      ],
      timeoutMs,
    );
    if (!result.ok) return result;
    const made = await stat(half).catch(() => null);
    if (made === null || made.size === 0) return fail({ code: "no-pdf", reason: "" });
    await rename(half, pdfPath).catch(async () => writeFile(pdfPath, await readFile(half)));
    return ok({ program, bytes: made.size });
  } finally {
    await Promise.all([copy, style].map((path) => rm(path, { force: true })));
    await rm(profile, { recursive: true, force: true, maxRetries: 3 });
  }
};
