/**
 * A species account as a folder that stands alone: the page, its style, its data for machines, a note for whoever finds
 * the folder in twenty years, and the list of files to be copied beside them. Nothing is fetched from anywhere; the page
 * needs no script.
 */
import { accountSections, nameHtml } from "../engine/index.js";
import type { Say } from "../words/index.js";
import type { AccountModel } from "./account-model.js";
import { safeHtml, trusted, type Html } from "./html.js";
import { accountJsonLd, jsonForScript } from "./json-ld.js";
import { pageCss } from "./page-css.js";
import { figureHtml, sectionHtml } from "./section-html.js";

export interface FolderFile {
  readonly path: string;
  readonly content: string;
}

/** A typeface the page asks for, by the name of the file in its package; the licence comes along. */
export interface FontFile {
  readonly path: string;
  readonly package: "@fontsource-variable/source-serif-4" | "@fontsource-variable/source-sans-3";
  readonly file: string;
}

const serif = "@fontsource-variable/source-serif-4";
const sans = "@fontsource-variable/source-sans-3";

/** All typefaces of a published page: Latin and extended Latin of text, italics and captions. */
export const fontFiles: readonly FontFile[] = [
  { path: "fonts/source-serif-4-latin.woff2", package: serif, file: "files/source-serif-4-latin-opsz-normal.woff2" },
  { path: "fonts/source-serif-4-latin-italic.woff2", package: serif, file: "files/source-serif-4-latin-opsz-italic.woff2" },
  { path: "fonts/source-serif-4-latin-ext.woff2", package: serif, file: "files/source-serif-4-latin-ext-opsz-normal.woff2" },
  { path: "fonts/source-serif-4-latin-ext-italic.woff2", package: serif, file: "files/source-serif-4-latin-ext-opsz-italic.woff2" },
  { path: "fonts/source-sans-3-latin.woff2", package: sans, file: "files/source-sans-3-latin-wght-normal.woff2" },
  { path: "fonts/source-sans-3-latin-ext.woff2", package: sans, file: "files/source-sans-3-latin-ext-wght-normal.woff2" },
  { path: "fonts/source-serif-4-licence.txt", package: serif, file: "LICENSE" },
  { path: "fonts/source-sans-3-licence.txt", package: sans, file: "LICENSE" },
];

/** What the page may load: its own images, style and fonts, and nothing else. JSON-LD is data and is not run. */
const contentPolicy = "default-src 'none'; img-src 'self'; style-src 'self'; font-src 'self'; base-uri 'none'; form-action 'none'";

const headHtml = (model: AccountModel, say: Say): Html => {
  const title = model.vernacular === "" ? model.nameText : say("page.title", { name: model.bareName, vernacular: model.vernacular });
  return safeHtml`<head>
    <meta charset="utf-8" />
    <meta http-equiv="Content-Security-Policy" content="${contentPolicy}" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="referrer" content="no-referrer" />
    <meta name="color-scheme" content="light dark" />
    <title>${title}</title>
    <meta name="description" content="${model.inOneLine[0]?.spans.map((s) => s.text).join("") ?? title}" />
    ${model.author === "" ? null : safeHtml`<meta name="author" content="${model.author}" />`}
    <link rel="stylesheet" href="page.css" />
    <script type="application/ld+json">
      ${trusted(jsonForScript(accountJsonLd(model)))}
    </script>
  </head>`;
};

const bodyHtml = (model: AccountModel, say: Say): Html => {
  const lead = model.leadFigure === null ? undefined : model.figures[model.leadFigure - 1];
  const links = accountSections
    .filter((section) => section !== "in-one-line")
    .map((section) => safeHtml`<li><a href="#${section}">${model.titles[section]}</a></li>`);
  const sections = accountSections
    .filter((section) => section !== "in-one-line")
    .map(
      (section) =>
        safeHtml`<section id="${section}" aria-labelledby="${section}-title">
          <h2 id="${section}-title">${model.titles[section]}</h2>
          ${sectionHtml(model, section, say)}
        </section>`,
    );
  const vernaculars = model.otherVernacular.map(
    (other, i) => safeHtml`${i === 0 ? "" : ", "}<span lang="${other.language}">${other.name}</span>`,
  );
  return safeHtml`<body>
    <a class="skip" href="#account">${say("page.skip")}</a>
    <div class="sheet">
      <header>
        <p class="family">${model.family}</p>
        <h1>${trusted(nameHtml(model.name))}</h1>
        ${model.vernacular === "" ? null : safeHtml`<p class="vernacular">${model.vernacular}${vernaculars.length === 0 ? null : safeHtml` <span class="side">${vernaculars}</span>`}</p>`}
      </header>
      ${
        model.notices.length === 0
          ? null
          : safeHtml`<aside class="notice" aria-label="${say("page.notice")}">
              ${model.notices.map((notice, i) => (i === 0 ? safeHtml`<p><b>${notice}</b></p>` : safeHtml`<p>${notice}</p>`))}
            </aside>`
      }
      <nav class="contents" aria-label="${say("page.contents")}">
        <h2>${say("page.contents")}</h2>
        <ol>
          ${links}
        </ol>
      </nav>
      <main id="account" tabindex="-1">
        <section id="in-one-line" class="lead" aria-label="${model.titles["in-one-line"]}">
          ${sectionHtml(model, "in-one-line", say)}
        </section>
        ${lead === undefined ? null : figureHtml(lead, say, { lead: true, className: "plate lead-plate" })}${sections}
      </main>
      <footer><p>${say("page.madeWith", { book: model.bookTitle })}</p></footer>
    </div>
  </body>`;
};

/** The account for machines. `origin` says of each section whether a person wrote its prose. */
const dataOf = (model: AccountModel): unknown => ({
  schema: "stipule-account/1",
  taxon: {
    id: model.taxonId,
    name: model.bareName,
    authorship: model.authorship,
    rank: model.rank,
    family: model.family,
    vernacular: model.vernacular,
    otherVernacular: model.otherVernacular,
  },
  language: model.language,
  notices: model.notices,
  settled: model.settled,
  origin: Object.fromEntries(accountSections.map((section) => [section, model.edited[section] === undefined ? "drafted" : "edited"])),
  edited: model.edited,
  inOneLine: model.inOneLine,
  steps: model.steps,
  description: model.description,
  ownMeasures: model.measures,
  lookAlikes: model.rivals,
  year: model.year,
  setting: model.setting,
  places: model.places,
  cautions: model.cautions,
  plants: model.plants,
  figures: model.figures,
  sources: model.sources,
  credits: model.credits,
  author: model.author,
  licence: model.licence,
});

/** The text files of the folder. Images and typefaces are put beside them by whoever writes the folder. */
export const accountFolder = (model: AccountModel, say: Say): readonly FolderFile[] => [
  {
    path: "index.html",
    content: `<!doctype html>\n${
      safeHtml`<html lang="${model.language}">
        ${headHtml(model, say)}${bodyHtml(model, say)}
      </html>`.markup
    }\n`,
  },
  { path: "page.css", content: pageCss },
  { path: "data.json", content: `${JSON.stringify(dataOf(model), null, 2)}\n` },
  { path: "README.txt", content: say("folder.readme", { title: model.nameText, notice: model.notices.join(" ") }) },
];
