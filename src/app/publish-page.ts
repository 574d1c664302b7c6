/**
 * A species page written to a folder: all of it or nothing. It is made under a temporary name beside its place and renamed
 * when it is complete; before that, the finished text is searched once more for the true places of the book.
 */
import { mkdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import type { PageCard, PageDraft } from "../contract/index.js";
import {
  accountSections,
  escapeHtml,
  givesPlaceAway,
  nameParts,
  nameText,
  type Result,
  type TableId,
  type TaxonId,
} from "../engine/index.js";
import type { PhotoRefusal, PublicImage, PublicImageOptions } from "../media/index.js";
import {
  accountFolder,
  altDraft,
  fontFiles,
  sectionDraftText,
  sectionHtml,
  speciesAccount,
  type AccountPhoto,
  type FolderFile,
  type FontFile,
} from "../publish/index.js";
import type { BookStore } from "../store/index.js";
import { say, speaker } from "../words/index.js";
import { Refused } from "./app-error.js";
import { accountSource, type AccountSource, type ChosenPhoto, type Secret } from "./page-account.js";
import { readBookFile, ruleCaseOf } from "./plant-evidence.js";
import { printPdf, type Paper } from "./print-pdf.js";
import { readingDay, type Workbench } from "./workbench.js";

/** What publishing needs from outside: pixels, typefaces, a printer. */
export interface PublishEffects {
  readonly publicImage: (path: string, options: PublicImageOptions) => Promise<Result<PublicImage, PhotoRefusal>>;
  /** The bytes of a typeface file; the default reads them from the installed packages. */
  readonly fontBytes?: (font: FontFile) => Promise<Uint8Array>;
  readonly print?: typeof printPdf;
}

export interface PublishedPage {
  readonly folder: string;
  /** How many files lie in it. */
  readonly files: number;
  readonly pdf: { readonly made: boolean; readonly path: string | null; readonly text: string };
  /** File names of photographs whose description nobody has written. */
  readonly missingAlt: readonly string[];
  readonly heldBack: readonly string[];
}

/** Longest sides of the public copies of a photograph, pixels. */
const imageSizes = [1000, 2400] as const;

const slug = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/[\u0300-\u036F]/g, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 80);

/** Where the page of a taxon lies in the folder of the book. */
export const pageFolder = (bookFolder: string, tableId: string, taxon: { readonly id: string; readonly name: string }): string =>
  join(bookFolder, "published", slug(tableId) || "table", slug(taxon.name) || slug(taxon.id) || "taxon");

const require = createRequire(import.meta.url);
const installedFont = async (font: FontFile): Promise<Uint8Array> =>
  readFile(join(dirname(require.resolve(`${font.package}/package.json`)), font.file));

/** As it reads: one blank for any white space, signs in one form however they were composed, capitals or not. */
const asRead = (text: string): string => text.normalize("NFKC").replaceAll(/\s+/gu, " ").toLowerCase();

/** The first text that would give a place away, with the spot it belongs to; null when all is well. */
export const firstLeak = (
  files: readonly FolderFile[],
  secrets: readonly Secret[],
): { readonly path: string; readonly label: string } | null => {
  for (const file of files) {
    // With the tags too: their attributes are texts. Without, since a tag may stand within a name.
    const plain = asRead(`${file.content}\n${file.content.replaceAll(/<[^<>]*>/g, "")}`);
    for (const secret of secrets) {
      const { name } = secret;
      const named =
        name !== null &&
        [name, escapeHtml(name), JSON.stringify(name).slice(1, -1)].some((written) => plain.includes(asRead(written).trim()));
      if (named || givesPlaceAway(file.content, secret, secret.publishAs)) return { path: file.path, label: secret.label };
    }
  }
  return null;
};

const makeImages = async (
  workbench: Workbench,
  source: AccountSource,
  effects: PublishEffects,
  folder: string,
): Promise<{ readonly photos: readonly AccountPhoto[]; readonly count: number; readonly heldBack: readonly string[] }> => {
  const photos: AccountPhoto[] = [];
  const heldBack: string[] = [];
  let count = 0;
  for (const photo of source.photos) {
    const original = source.originals.get(photo.id);
    const files = [];
    for (const maxPx of imageSizes) {
      // No need to make the same copy twice of a small original.
      if (maxPx !== imageSizes[0] && original !== undefined && Math.max(original.widthPx, original.heightPx) <= imageSizes[0]) continue;
      const made = await effects.publicImage(workbench.store.files.originalPath(photo.id), {
        maxPx,
        format: "jpeg",
        credit: photo.credit,
        licence: photo.licence,
      });
      if (!made.ok) break;
      // A number, never the name of the original: file names tell of places and people.
      const path = `images/figure-${String(photos.length + 1).padStart(2, "0")}-${maxPx}.jpg`;
      await writeFile(join(folder, path), made.value.bytes);
      count += 1;
      files.push({ path, widthPx: made.value.widthPx, heightPx: made.value.heightPx });
    }
    if (files.length === 0) heldBack.push(say("heldBack.unreadable", { fileName: original?.fileName ?? photo.id }));
    else photos.push({ ...photo, files });
  }
  return { photos, count, heldBack };
};

const fileNamesWithoutAlt = (source: AccountSource): readonly string[] =>
  source.photos.filter((photo) => photo.altText === "").map((photo) => source.originals.get(photo.id)?.fileName ?? photo.id);

/** Puts the finished folder in its place; the former page goes only when the new one stands. */
const putInPlace = async (made: string, place: string): Promise<void> => {
  const former = `${place}.former`;
  await rm(former, { recursive: true, force: true });
  const had = await rename(place, former).then(
    () => true,
    (error: NodeJS.ErrnoException) => {
      if (error.code === "ENOENT") return false;
      throw error;
    },
  );
  try {
    await rename(made, place);
  } catch (error) {
    if (had) await rename(former, place);
    throw error;
  }
  await rm(former, { recursive: true, force: true });
};

/** The last publishing of a book: the next begins when it has ended, since both may write the same folder. */
const lastOf = new WeakMap<BookStore, Promise<unknown>>();

/**
 * Publishes the page of a taxon; pages of one book are made one after another. @throws {NotInBook} unknown table or taxon; {Refused} `no-plant` when nothing stands for it,
 * `place-would-leak` when a text gives a true place away. In each case the former page stays as it was.
 */
export const publishPage = async (
  workbench: Workbench,
  of: { readonly tableId: TableId; readonly taxonId: TaxonId },
  effects: PublishEffects,
  print: { readonly pdf?: boolean; readonly paper?: Paper } = {},
): Promise<PublishedPage> => {
  const last = lastOf.get(workbench.store) ?? Promise.resolve();
  // A failure of the one before was told to whoever asked for it.
  const mine = last.catch(() => undefined).then(() => publishNow(workbench, of, effects, print));
  lastOf.set(workbench.store, mine);
  return mine;
};

const publishNow = async (
  workbench: Workbench,
  { tableId, taxonId }: { readonly tableId: TableId; readonly taxonId: TaxonId },
  effects: PublishEffects,
  { pdf = false, paper = "A4" }: { readonly pdf?: boolean; readonly paper?: Paper },
): Promise<PublishedPage> => {
  const source = await accountSource(workbench, { tableId, taxonId });
  const name = nameText(nameParts(source.taxon.name));
  if (source.input.plants.length === 0)
    throw new Refused({ code: "no-plant", detail: say("publish.noPlant", { name }), kept: say("refused.kept") });
  const place = pageFolder(workbench.store.folder, tableId, source.taxon);
  const made = `${place}.new`;
  const fontBytes = effects.fontBytes ?? installedFont;
  try {
    await rm(made, { recursive: true, force: true });
    await mkdir(join(made, "images"), { recursive: true });
    await mkdir(join(made, "fonts"), { recursive: true });
    const images = await makeImages(workbench, source, effects, made);
    const speak = speaker(source.input.book.language);
    const files = accountFolder(speciesAccount({ ...source.input, photos: images.photos }, speak), speak);
    const leak = firstLeak(files, source.secrets);
    if (leak !== null)
      throw new Refused({
        code: "place-would-leak",
        detail: say("publish.leak", { path: leak.path, spot: leak.label }),
        kept: say("refused.kept"),
        remedy: say("publish.leakRemedy"),
      });
    for (const file of files) await writeFile(join(made, file.path), file.content);
    for (const font of fontFiles) await writeFile(join(made, font.path), await fontBytes(font));
    const pdfName = `${slug(source.taxon.name) || "page"}.pdf`;
    const printed = pdf
      ? await (effects.print ?? printPdf)({ htmlPath: join(made, "index.html"), pdfPath: join(made, pdfName), paper })
      : null;
    await putInPlace(made, place);
    const isPrinted = printed !== null && printed.ok;
    return {
      folder: place,
      files: files.length + fontFiles.length + images.count + (isPrinted ? 1 : 0),
      pdf: { made: isPrinted, path: isPrinted ? join(place, pdfName) : null, text: pdfText(printed, paper) },
      missingAlt: fileNamesWithoutAlt(source),
      heldBack: [...source.heldBack, ...images.heldBack],
    };
  } catch (error) {
    await rm(made, { recursive: true, force: true });
    throw error;
  }
};

const pdfText = (printed: Awaited<ReturnType<typeof printPdf>> | null, paper: Paper): string => {
  if (printed === null) return say("pdf.notWanted");
  if (printed.ok) return say("pdf.made", { paper, program: printed.value.program });
  if (printed.problem.code === "no-program") return say("pdf.noProgram");
  return say("pdf.failed", { reason: printed.problem.reason === "" ? printed.problem.code : printed.problem.reason });
};

/** A photograph as the draft on the screen shows it: by the server's own address, not yet copied. */
const screenPhoto = (photo: ChosenPhoto, source: AccountSource, urlOf: (id: string) => string): AccountPhoto => {
  const original = source.originals.get(photo.id);
  return { ...photo, files: [{ path: urlOf(photo.id), widthPx: original?.widthPx ?? 1, heightPx: original?.heightPx ?? 1 }] };
};

/** The page of a taxon as it would be printed, section by section, for reading and editing. @throws {NotInBook} */
export const draftPage = async (
  workbench: Workbench,
  { tableId, taxonId }: { readonly tableId: TableId; readonly taxonId: TaxonId },
  urlOf: (photoId: string) => string,
): Promise<PageDraft> => {
  const source = await accountSource(workbench, { tableId, taxonId });
  const speak = speaker(source.input.book.language);
  const model = speciesAccount({ ...source.input, photos: source.photos.map((photo) => screenPhoto(photo, source, urlOf)) }, speak);
  const { account } = source.input;
  return {
    taxonId,
    name: [...model.name].map(({ text, italic }) => ({ text, italic })),
    plain: model.nameText,
    vernacular: model.vernacular,
    account: account ?? {
      id: `account-${taxonId}` as NonNullable<typeof account>["id"],
      taxonId,
      tableId,
      // None chosen: else the first word written would shut out every plant settled later.
      plantIds: [],
      author: "",
      licence: "",
      edited: {},
    },
    notice: model.notices.join(" "),
    sections: accountSections.map((section) => ({
      section,
      title: model.titles[section],
      html: sectionHtml(model, section, speak).markup,
      origin: model.edited[section] === undefined ? ("drafted" as const) : ("edited" as const),
      draftText: sectionDraftText(model, section),
    })),
    missingAlt: source.photos
      .filter((photo) => photo.altText === "")
      .map((photo) => ({ photoId: photo.id, fileName: source.originals.get(photo.id)?.fileName ?? "", draft: altDraft(photo, speak) })),
    heldBack: [...source.heldBack],
  };
};

/** The taxa for which at least one plant stands alone, with their pages. */
export const listPages = async (workbench: Workbench): Promise<PageCard[]> => {
  const [book, day] = [await readBookFile(workbench.store), await readingDay(workbench, undefined)];
  const cards = new Map<string, PageCard>();
  for (const file of book.plants) {
    const found = ruleCaseOf(book, file, day);
    if (found.word !== "species" && found.word !== "cf") continue;
    const taxon = file.table.taxa.find((t) => t.id === found.taxonIds[0]);
    if (taxon === undefined) continue;
    const key = `${file.table.id}|${taxon.id}`;
    const known = cards.get(key);
    if (known !== undefined) {
      known.plantIds.push(file.plant.id);
      known.nicks.push(file.plant.nick);
      known.settled ||= found.outcome.settled;
      continue;
    }
    const name = nameParts(taxon.name, taxon.authorship);
    const page = join(pageFolder(workbench.store.folder, file.table.id, taxon), "index.html");
    cards.set(key, {
      taxonId: taxon.id,
      name: name.map(({ text, italic }) => ({ text, italic })),
      plain: nameText(name),
      vernacular: taxon.vernacular["en"] ?? "",
      tableId: file.table.id,
      plantIds: [file.plant.id],
      nicks: [file.plant.nick],
      settled: found.outcome.settled,
      published: await stat(page).then(
        (file_) => file_.mtime.toISOString(),
        () => null,
      ),
    });
  }
  return [...cards.values()].toSorted((a, b) => a.plain.localeCompare(b.plain, "en"));
};
