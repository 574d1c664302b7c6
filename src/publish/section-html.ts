/** The sections of an account as HTML. No script, no style attribute: the page's content policy allows neither. */
import type { AccountSection, NameSpan } from "../engine/index.js";
import { nameHtml } from "../engine/index.js";
import type { Say } from "../words/index.js";
import type { AccountModel, EvidenceEntry, Figure, Line, Mark, PlantBlock } from "./account-model.js";
import { safeHtml, trusted, type Html } from "./html.js";
import { markedName, spansOf } from "./spans.js";
import { yearStrip } from "./year-strip.js";

/** Numbers stay with their units and "n = 12" in one piece. */
const glued = (text: string): string =>
  text.replace(/([\d)]) (?=(?:mm|cm|m|\u00B5m|%|km|stems?)(?![\p{L}]))/gu, "$1\u00A0").replace(/\bn = (?=\d)/g, "n\u00A0=\u00A0");
/** A range is never broken at its dash. Works on escaped text; digits and dashes occur in no tag of ours. */
const unbroken = (markup: string): string => markup.replace(/\(?[\d.]+\u2013[\d.()\u2013]*\d\)?/g, '<span class="nb">$&</span>');
const spans = (parts: readonly NameSpan[]): Html => trusted(unbroken(nameHtml(parts.map((part) => ({ ...part, text: glued(part.text) })))));
const anchors = { evidence: "e", source: "s", figure: "f" } as const;

const mark = (m: Mark, say: Say): Html => {
  const label = m.kind === "figure" ? say("evidence.figure", { number: m.number }) : say(`page.${m.kind}Mark`, { number: m.number });
  const text = m.kind === "source" ? `S${m.number}` : String(m.number);
  return safeHtml`<a href="#${anchors[m.kind]}${m.number}" aria-label="${label}">${text}</a>`;
};
const marks = (all: readonly Mark[], say: Say): Html | null =>
  all.length === 0 ? null : safeHtml`<span class="marks">${all.map((m, i) => [i === 0 ? "" : " ", mark(m, say)])}</span>`;
const sentence = (l: Line, say: Say): Html => safeHtml`${spans(l.spans)}${l.marks.length === 0 ? "" : "\u00A0"}${marks(l.marks, say)}`;

const paragraphs = (text: string): Html =>
  safeHtml`${text
    .trim()
    .split(/\n\s*\n/)
    .map((p) => safeHtml`<p>${p.trim()}</p>`)}`;

/** A figure with its caption; `lead` = the first of the page, loaded at once. */
export const figureHtml = (figure: Figure, say: Say, { lead = false, className = "plate" } = {}): Html => {
  const largest = figure.files.at(-1);
  const [first] = figure.files;
  if (first === undefined || largest === undefined) return safeHtml``;
  const srcset = figure.files.map((file) => `${file.path} ${file.widthPx}w`).join(", ");
  const sizes = lead ? "(min-width: 70rem) 62rem, 100vw" : "(min-width: 60rem) 31rem, 100vw";
  const facts = [figure.dateText, figure.scaleText]
    .filter((fact) => fact !== "")
    .join(". ")
    .replace(/\.\.$/, ".");
  const credit = [figure.credit, figure.licence].filter((text) => text !== "").join(", ");
  return safeHtml`<figure class="${className}" id="f${figure.number}">
    <a href="${largest.path}" aria-label="${say("page.openPhoto")}: ${figure.alt}"
      ><img
        src="${largest.path}"
        srcset="${srcset}"
        sizes="${sizes}"
        width="${largest.widthPx}"
        height="${largest.heightPx}"
        alt="${figure.alt}"
        loading="${lead ? "eager" : "lazy"}"
        decoding="async"
    /></a>
    <figcaption>
      <b>${say("evidence.figure", { number: figure.number })}.</b> ${figure.caption.replace(/\.$/, "")}.
      <span class="side">${facts}${credit === "" ? "" : ` ${credit}.`}</span>
    </figcaption>
  </figure>`;
};

/** Figures that stand inside a section, so that the plates do not show them again. */
const placedFigures = (model: AccountModel): ReadonlySet<number> =>
  new Set([model.leadFigure, ...model.steps.map((step) => step.figure)].filter((n) => n !== null));

const scroll = (label: string, content: Html): Html =>
  safeHtml`<div class="scroll" role="region" tabindex="0" aria-label="${label}">${content}</div>`;

const stepsHtml = (model: AccountModel, say: Say): Html => {
  if (model.steps.length === 0) return safeHtml`<p>${say("steps.none")}</p>`;
  const items = model.steps.map((step) => {
    const figure = step.figure === null ? undefined : model.figures[step.figure - 1];
    return safeHtml`<li>
      <div class="step">
        <div>
          <p class="when">${step.stages}</p>
          <p class="what">${sentence(step.line, say)}</p>
          <p>${step.plain === "" ? "" : `${step.plain} `}${step.tool}</p>
          ${step.excludes === null ? null : safeHtml`<p>${sentence(step.excludes, say)}</p>`}${step.error === "" ? null : safeHtml`<p class="side">${step.error}</p>`}
        </div>
        ${figure === undefined ? null : figureHtml(figure, say, { className: "beside" })}
      </div>
    </li>`;
  });
  return safeHtml`<p>${say("steps.lead")}</p>
    <ol class="steps">
      ${items}
    </ol>`;
};

const descriptionHtml = (model: AccountModel, say: Say): Html => {
  if (model.description.length === 0) return safeHtml`<p>${say("description.none")}</p>`;
  const lines = (all: readonly Line[]): Html => {
    // One source behind a whole paragraph is said once, at its end.
    const key = (l: Line): string => JSON.stringify(l.marks);
    const [first] = all;
    const isOne = first !== undefined && all.length > 1 && all.every((l) => key(l) === key(first));
    const shown = isOne ? all.map((l, i) => (i === all.length - 1 ? l : { ...l, marks: [] })) : all;
    return safeHtml`${shown.map((l, i) => [i === 0 ? "" : " ", sentence(l, say)])}`;
  };
  return safeHtml`<p class="side">${say("description.lead")}</p>
    ${model.description.map(
      (part) =>
        safeHtml`<div class="part">
          <h3>${part.part}</h3>
          <div>
            ${part.floras.length === 0 ? null : safeHtml`<p><span class="whose">${say("description.floras")}</span> ${lines(part.floras)}</p>`}${part.ours.length === 0 ? null : safeHtml`<p class="ours"><span class="whose">${say("description.ours")}</span> ${lines(part.ours)}</p>`}
          </div>
        </div>`,
    )}`;
};

const measuresHtml = (model: AccountModel, say: Say): Html => {
  if (model.measures.length === 0) return safeHtml`<p>${say("measures.none")}</p>`;
  const rows = model.measures.map(
    (row) =>
      safeHtml`<tr>
        <th scope="row">${row.character}</th>
        <td class="ours-value">${row.ours}</td>
        <td>${row.n}</td>
        <td>${row.stems ?? say("measures.unknown")}</td>
        <td>${row.median}</td>
        <td>${row.floras ?? say("measures.unknown")}</td>
        <td>${marks(row.marks, say)}</td>
      </tr>`,
  );
  const head = (["character", "ours", "n", "stems", "median", "floras", "readings"] as const).map(
    (key) => safeHtml`<th scope="col">${say(`measures.${key}`)}</th>`,
  );
  return safeHtml`<p class="side">${say("measures.lead")}</p>
    ${scroll(
      say("measures.caption"),
      safeHtml`<table>
        <caption>
          ${say("measures.caption")}
        </caption>
        <thead>
          <tr>
            ${head}
          </tr>
        </thead>
        <tbody>
          ${rows}
        </tbody>
      </table>`,
    )}`;
};

const rivalsHtml = (model: AccountModel, say: Say): Html => {
  if (model.rivals.length === 0) return safeHtml`<p>${say("rivals.none")}</p>`;
  const bodies = model.rivals.map(
    (rival) =>
      safeHtml`<tbody>
        <tr class="rival">
          <th scope="rowgroup" colspan="3">
            ${spans(rival.name)}${rival.vernacular === "" ? "" : `, ${rival.vernacular}`}
            <span class="${rival.left ? "doubt" : "side"}">${rival.standing}</span>
          </th>
        </tr>
        ${rival.differences.map(
          (d) =>
            safeHtml`<tr>
              <th scope="row">${d.character} <span class="side">${say(`rivals.${d.how}`)}</span></th>
              <td>${d.here}</td>
              <td>${d.there}</td>
            </tr>`,
        )}
      </tbody>`,
  );
  const caption = say("rivals.caption", { name: model.bareName });
  const captionSpans = spansOf(say("rivals.caption", { name: markedName(model.name.filter((span) => span.italic)) }));
  return safeHtml`<p class="side">${say("rivals.lead")}</p>
    ${scroll(
      caption,
      safeHtml`<table class="rivals">
        <caption>
          ${spans(captionSpans)}
        </caption>
        <thead>
          <tr>
            <th scope="col">${say("rivals.character")}</th>
            <th scope="col">${say("rivals.this")}</th>
            <th scope="col">${say("rivals.that")}</th>
          </tr>
        </thead>
        ${bodies}
      </table>`,
    )}`;
};

const yearHtml = (model: AccountModel, say: Say): Html => {
  const { rows, caption } = model.year;
  if (rows.length === 0) return safeHtml`<p>${say("year.none")}</p>`;
  const body = rows.map(
    (row) =>
      safeHtml`<tr>
        <th scope="row">${row.stage}</th>
        <td>${row.datesText}</td>
        <td>${row.began}</td>
        <td>${row.visits}</td>
      </tr>`,
  );
  const head = (["stage", "seen", "began", "visits"] as const).map((key) => safeHtml`<th scope="col">${say(`year.${key}`)}</th>`);
  return safeHtml`<p class="side">${say("year.lead")}</p>
    ${scroll(say("year.svgTitle"), trusted(yearStrip(rows, model.language, say)))}
    <p class="side">${say("year.legend")}</p>
    ${scroll(
      caption,
      safeHtml`<table>
        <caption>
          ${caption}
        </caption>
        <thead>
          <tr>
            ${head}
          </tr>
        </thead>
        <tbody>
          ${body}
        </tbody>
      </table>`,
    )}`;
};

const entryHtml = (entry: EvidenceEntry, say: Say): Html => {
  const figures = entry.figures.map((number): Mark => ({ kind: "figure", number }));
  const number = entry.number;
  return safeHtml`<li id="e${number}" value="${number}"${entry.leftOut === null ? null : trusted(' class="left-out"')}><span class="date">${entry.dateText}</span> <b>${entry.character}:</b> ${glued(entry.found)} <span class="side">${glued(entry.how)}${entry.note === "" ? "" : ` ${entry.note}`}${figures.length === 0 ? null : safeHtml` ${marks(figures, say)}`}</span>${entry.leftOut === null ? null : safeHtml` <span class="why">${entry.leftOut}</span>`}</li>`;
};

const plantHtml = (plant: PlantBlock, say: Say): Html =>
  safeHtml`<article class="plant">
    <h3>${plant.title}</h3>
    <p>${plant.facts.length === 0 ? "" : `${plant.facts.join("; ")}. `}<b>${sentence(plant.result, say)}</b></p>
    <ol class="evidence">
      ${plant.entries.map((entry) => entryHtml(entry, say))}
    </ol>
    ${
      plant.slips.length === 0
        ? null
        : safeHtml`<h4>${say("evidence.slips")}</h4>
            <ul class="slips">
              ${plant.slips.map((slip) => safeHtml`<li>${spans(slip.name)}. ${slip.text}${slip.overturned ? safeHtml` <span class="why">${say("evidence.overturned")}</span>` : null}</li>`)}
            </ul>`
    }${
      plant.vouchers.length === 0
        ? null
        : safeHtml`<h4>${say("evidence.vouchers")}</h4>
            <ul class="slips">
              ${plant.vouchers.map((voucher) => safeHtml`<li>${voucher}</li>`)}
            </ul>`
    }
  </article>`;

const evidenceHtml = (model: AccountModel, say: Say): Html => {
  const placed = placedFigures(model);
  const plates = model.figures.filter((figure) => !placed.has(figure.number));
  return safeHtml`<p class="side">${say("evidence.lead")}</p>
    ${model.plants.map((plant) => plantHtml(plant, say))}${
      plates.length === 0
        ? null
        : safeHtml`<h3>${say("evidence.plates")}</h3>
            <div class="plates">${plates.map((figure) => figureHtml(figure, say))}</div>`
    }`;
};

const sourcesHtml = (model: AccountModel): Html =>
  safeHtml`${
    model.sources.length === 0
      ? null
      : safeHtml`<ol class="sources">
          ${model.sources.map((source) => safeHtml`<li id="s${source.number}">${source.citation}${source.licence === "" ? "" : ` ${source.licence}.`}</li>`)}
        </ol>`
  }${model.sourceNotes.map((note) => safeHtml`<p class="side">${note}</p>`)}`;

const list = (texts: readonly string[]): Html =>
  safeHtml`<ul class="plain">
    ${texts.map((text) => safeHtml`<li>${text}</li>`)}
  </ul>`;

/** What the draft says in prose; what a person wrote takes its place. Sections of data alone have none. */
const draftProse = (model: AccountModel, section: AccountSection, say: Say): Html | null => {
  switch (section) {
    case "in-one-line":
      return safeHtml`${model.inOneLine.map((l) => safeHtml`<p>${sentence(l, say)}</p>`)}`;
    case "how-to-be-sure":
      return stepsHtml(model, say);
    case "description":
      return descriptionHtml(model, say);
    case "look-alikes":
      return rivalsHtml(model, say);
    case "setting":
      return safeHtml`<ul class="plain">
        ${model.setting.map((l) => safeHtml`<li>${sentence(l, say)}</li>`)}
      </ul>`;
    case "cautions":
      return list(model.cautions);
    case "credits":
      return list(model.credits);
    case "own-measures":
    case "the-year":
    case "evidence":
    case "sources":
      return null;
  }
};

/** Data that stand whatever a person writes: numbers, dates and places are made from the evidence only. */
const dataOf = (model: AccountModel, section: AccountSection, isEdited: boolean, say: Say): Html | null => {
  switch (section) {
    case "own-measures":
      return measuresHtml(model, say);
    case "the-year":
      return yearHtml(model, say);
    case "evidence":
      return evidenceHtml(model, say);
    case "sources":
      return sourcesHtml(model);
    case "how-to-be-sure": {
      // An edited text drops the list of steps, but not the figures that stood beside them.
      const figures = isEdited ? model.steps.flatMap((step) => (step.figure === null ? [] : (model.figures[step.figure - 1] ?? []))) : [];
      return figures.length === 0 ? null : safeHtml`<div class="plates">${figures.map((figure) => figureHtml(figure, say))}</div>`;
    }
    case "in-one-line":
    case "description":
    case "look-alikes":
    case "setting":
    case "cautions":
    case "credits":
      return null;
  }
};

/** The content of one section, without its heading. */
export const sectionHtml = (model: AccountModel, section: AccountSection, say: Say): Html => {
  const edited = model.edited[section];
  const prose = edited === undefined ? draftProse(model, section, say) : paragraphs(edited);
  return safeHtml`${prose}${dataOf(model, section, edited !== undefined, say)}`;
};

const lineText = (l: Line): string => l.spans.map((span) => span.text).join("");

/** The drafted prose of a section as plain text, for a person to begin from; "" for sections of data alone. */
export const sectionDraftText = (model: AccountModel, section: AccountSection): string => {
  switch (section) {
    case "in-one-line":
      return model.inOneLine.map(lineText).join("\n\n");
    case "how-to-be-sure":
      return model.steps
        .map((step) =>
          [lineText(step.line), step.plain, step.tool, step.excludes === null ? "" : lineText(step.excludes), step.error]
            .filter((t) => t !== "")
            .join(" "),
        )
        .join("\n\n");
    case "description":
      return model.description
        .flatMap((part) => [part.floras, part.ours].filter((lines) => lines.length > 0).map((lines) => lines.map(lineText).join(" ")))
        .join("\n\n");
    case "look-alikes":
      return model.rivals
        .map(
          (rival) =>
            `${rival.vernacular === "" ? rival.name.map((s) => s.text).join("") : rival.vernacular}: ${rival.standing} ${rival.differences.map((d) => `${d.character}: ${d.here} / ${d.there}.`).join(" ")}`,
        )
        .join("\n\n");
    case "setting":
      return model.setting.map(lineText).join("\n\n");
    case "cautions":
      return model.cautions.join("\n\n");
    case "credits":
      return model.credits.join("\n\n");
    case "own-measures":
    case "the-year":
    case "evidence":
    case "sources":
      return "";
  }
};
