/**
 * Brings photographs home: each file is kept as it is under the hash of its bytes, looked at, given its small copies, and
 * recorded. A file counts as brought when its record is committed and not before; what was counted is never lost, and
 * bringing the same files again finishes what a crash left. A refused file leaves nothing behind, and no source is touched.
 */
import { Readable, Transform } from "node:stream";
import type { BroughtFile } from "../contract/index.js";
import { localTime, photo as photoSchema, shiftTime } from "../engine/index.js";
import type { LocalTime, Photo, PhotoId } from "../engine/index.js";
import { derivativeSizes, extensionDisagrees, formatName, maxFileBytes } from "../media/index.js";
import type { DerivativePx, PhotoRefusal, PhotoWorkers, ReadPhoto } from "../media/index.js";
import type { BookStore } from "../store/index.js";
import { say } from "../words/index.js";
import type { Word } from "../words/index.js";

/** One file to bring. */
export interface PhotoSource {
  /** As it was called outside, any text; kept as text only, never used as a path. */
  readonly name: string;
  /** Called once, when its turn comes. A failure refuses this file only. */
  open(): Readable | Uint8Array | Promise<Readable | Uint8Array>;
}

export interface BringEffects {
  readonly store: BookStore;
  readonly workers: PhotoWorkers;
  /** The present instant. */
  readonly now: () => Date;
  /** Aborted: nothing further is begun, what is in hand is finished, and what is finished stays. */
  readonly signal?: AbortSignal;
  /** Called for each file once its fate is sure: a new one after its record is committed. In order of completion. */
  readonly onOutcome?: (outcome: BroughtFile) => void;
  readonly progress?: (done: number) => void;
}

export interface BringReport {
  readonly fresh: number;
  readonly here: number;
  readonly refused: number;
  readonly cancelled: boolean;
  /** What became of each file, in order of completion. */
  readonly files: readonly BroughtFile[];
}

/** The longest name that is kept, UTF-16 units, as the record of a photograph allows. */
const maxNameLength = 1024;
/** Records committed together at most. */
const maxBatch = 32;
/** A camera's time this much later than now has not come yet, whatever the time zone, seconds. */
const futureS = 2 * 86_400;

/**
 * Brings files. Memory does not grow with their number but for a short line of outcome each: as many files are in hand at
 * once as there are threads, and one more.
 *
 * @throws what the store throws when the disc is full or the book cannot be written: the files counted before are kept.
 */
export const bringPhotos = async (
  sources: Iterable<PhotoSource> | AsyncIterable<PhotoSource>,
  effects: BringEffects,
): Promise<BringReport> => {
  const { store, signal } = effects;
  const files: BroughtFile[] = [];
  const counts = { new: 0, "already-here": 0, refused: 0 };
  const committer = createCommitter(store);
  const fates = new Map<PhotoId, Promise<BroughtFile>>();
  const bringOne = async (source: PhotoSource): Promise<void> => {
    const outcome = await bringFile(source, { ...effects, fates, commit: committer.commit });
    counts[outcome.outcome] += 1;
    files.push(outcome);
    effects.onOutcome?.(outcome);
    effects.progress?.(files.length);
  };
  const pending: AsyncIterator<PhotoSource, unknown> | Iterator<PhotoSource, unknown> =
    Symbol.asyncIterator in sources ? sources[Symbol.asyncIterator]() : sources[Symbol.iterator]();
  let ended = false;
  // Iterators are asked one at a time, whoever's turn it is.
  let asking: Promise<unknown> = Promise.resolve();
  const next = async (): Promise<PhotoSource | undefined> => {
    const answer = asking.then(async () => {
      if (ended || signal?.aborted === true) return undefined;
      const answered: IteratorResult<PhotoSource, unknown> = await pending.next();
      if (answered.done !== true) return answered.value;
      ended = true;
      return undefined;
    });
    asking = answer.catch(() => undefined);
    return await answer;
  };
  const lane = async (): Promise<void> => {
    for (let source = await next(); source !== undefined; source = await next()) {
      try {
        await bringOne(source);
      } catch (error) {
        ended = true;
        throw error;
      }
    }
  };
  // Every lane ends before anything is said, so that nothing is still being written afterwards.
  const lanes = await Promise.allSettled(Array.from({ length: effects.workers.threads + 1 }, lane));
  if (!ended) await pending.return?.();
  const failed = lanes.find((result) => result.status === "rejected");
  if (failed !== undefined) throw failed.reason as Error;
  return { fresh: counts.new, here: counts["already-here"], refused: counts.refused, cancelled: signal?.aborted === true, files };
};

/** What a refusal of the media layer says, in words. */
export const refusalText = (refusal: PhotoRefusal): string => {
  const { found, ...values } = refusal.values;
  return say(`photo.refused.${refusal.code}`, found === undefined ? values : { ...values, found: say(`photo.found.${found}` as Word) });
};

interface FileEffects extends BringEffects {
  /** Files of the same content in one bringing share one fate: those in hand, and those that were refused. */
  readonly fates: Map<PhotoId, Promise<BroughtFile>>;
  readonly commit: (photo: Photo) => Promise<boolean>;
}

const bringFile = async (source: PhotoSource, effects: FileEffects): Promise<BroughtFile> => {
  const { store, fates } = effects;
  const fileName = cutName(source.name).name;
  const added = await keepOriginal(source, store);
  if ("code" in added) return refusedFile(fileName, added);
  const { id } = added;
  const same = fates.get(id);
  if (same !== undefined) {
    const fate = await same;
    if (fate.outcome !== "refused") return { fileName, outcome: "already-here", photoId: id, code: "", text: "" };
    // This copy may have come in after the first was taken away.
    if ((await store.get("photo", id)) === undefined) await store.files.discardOriginal(id);
    return { ...fate, fileName };
  }
  const fate = lookAt({ ...added, fileName, name: source.name }, effects);
  fates.set(id, fate);
  try {
    const outcome = await fate;
    if (outcome.outcome !== "refused") fates.delete(id);
    return outcome;
  } catch (error) {
    fates.delete(id);
    throw error;
  }
};

const refusedFile = (fileName: string, refusal: PhotoRefusal): BroughtFile => ({
  fileName,
  outcome: "refused",
  photoId: null,
  code: refusal.code,
  text: refusalText(refusal),
});

/** From the kept original to the committed record. */
const lookAt = async (
  file: { readonly id: PhotoId; readonly path: string; readonly fileName: string; readonly name: string },
  { store, workers, now, commit }: FileEffects,
): Promise<BroughtFile> => {
  const { id, fileName } = file;
  const known = await store.get("photo", id);
  const here = (refusal?: PhotoRefusal): BroughtFile => ({
    fileName,
    outcome: "already-here",
    photoId: id,
    code: refusal?.code ?? "",
    text: refusal === undefined ? "" : refusalText(refusal),
  });
  const sizes = await missingSizes(store, id);
  if (known !== undefined && sizes.length === 0) return here();
  const read = await workers.read(file.path, { sizes });
  if (!read.ok) {
    if (known !== undefined) return here(read.problem);
    await store.files.discardOriginal(id);
    return refusedFile(fileName, read.problem);
  }
  for (const derivative of read.value.derivatives) await store.files.writeDerivative(id, derivative.size, derivative.jpeg);
  if (known !== undefined) return here();
  const record = photoRecord({ id, name: file.name, read: read.value, now: now() });
  if (!(await commit(record))) return here();
  return { fileName, outcome: "new", photoId: id, code: "", text: record.metadataNote };
};

/** The sizes of small copies that are not there. */
export const missingSizes = async (store: BookStore, id: PhotoId): Promise<readonly DerivativePx[]> => {
  const there = await Promise.all(derivativeSizes.map((size) => store.files.hasDerivative(id, size)));
  return derivativeSizes.filter((_, index) => there[index] !== true);
};

/** Copies the source into the book. A failing source is a refusal; a failing book is thrown. */
const keepOriginal = async (source: PhotoSource, store: BookStore): Promise<{ id: PhotoId; path: string } | PhotoRefusal> => {
  const unread = (error: unknown): PhotoRefusal => ({
    code: "cannot-be-read",
    values: { why: error instanceof Error ? error.message : String(error) },
  });
  let opened;
  try {
    opened = await source.open();
  } catch (error) {
    return unread(error);
  }
  let refusal: PhotoRefusal | null = null;
  let seen = 0;
  const refuseAs = (why: PhotoRefusal): Error => {
    refusal ??= why;
    return new Error(`the source was refused: ${why.code}`);
  };
  const tooMany = (bytes: number): PhotoRefusal => ({
    code: "too-many-bytes",
    values: { megabytes: Math.round(bytes / 1024 / 1024), most: maxFileBytes / 1024 / 1024 },
  });
  let bytes: Readable | Uint8Array;
  if (opened instanceof Uint8Array) {
    if (opened.length === 0) return { code: "empty", values: {} };
    if (opened.length > maxFileBytes) return tooMany(opened.length);
    bytes = opened;
  } else {
    const from = opened;
    const counted = new Transform({
      transform: (chunk: Uint8Array, _encoding, done) => {
        seen += chunk.length;
        if (seen > maxFileBytes) done(refuseAs(tooMany(seen)));
        else done(null, chunk);
      },
      // An empty stream never reaches the book.
      flush: (done) => done(seen === 0 ? refuseAs({ code: "empty", values: {} }) : null),
    });
    from.once("error", (error) => counted.destroy(refuseAs(unread(error))));
    from.once("close", () => {
      if (!from.readableEnded && !counted.destroyed) counted.destroy(refuseAs(unread(new Error("it ended too early"))));
    });
    counted.once("close", () => from.destroy());
    // The source may fail before the store listens; an error nobody listens to would end the program.
    counted.on("error", () => undefined);
    bytes = from.pipe(counted);
  }
  try {
    const { id, path } = await store.files.addOriginal(bytes);
    return { id, path };
  } catch (error) {
    // Set in the stream's events, which the compiler does not see.
    const why = refusal as PhotoRefusal | null;
    if (why !== null) return why;
    throw error;
  }
};

/** Half characters, which no encoding can write, become U+FFFD. */
const wellFormed = (text: string): string => text.replaceAll(/\p{Cs}/gu, "\u{fffd}");

const cutName = (given: string): { name: string; isCut: boolean } => {
  const text = wellFormed(given);
  if (text.length <= maxNameLength) return { name: text, isCut: false };
  // Not through the middle of a character of two units.
  const cut = text.slice(0, maxNameLength).replace(/\p{Cs}$/u, "");
  return { name: cut, isCut: true };
};

/** The record of a photograph just read. Exported for tests. */
export const photoRecord = (of: { readonly id: PhotoId; readonly name: string; readonly read: ReadPhoto; readonly now: Date }): Photo => {
  const { metadata, format } = of.read;
  const { name, isCut } = cutName(of.name);
  const notes = metadata.notes.map((note) => say(`photo.note.${note.code}`, note.values));
  if (extensionDisagrees(name, format)) notes.push(say("photo.note.extension", { format: formatName[format] }));
  if (of.read.pageCount > 1) notes.push(say("photo.note.pages", { count: of.read.pageCount }));
  if (isCut) notes.push(say("photo.note.name-cut", { most: maxNameLength }));
  if (metadata.takenCamera !== null && metadata.takenCamera > latestTime(of.now)) {
    notes.unshift(say("photo.note.time-in-future", { time: metadata.takenCamera.replace("T", " ") }));
  }
  return photoSchema.parse({
    id: of.id,
    fileName: name,
    format,
    bytes: of.read.bytes,
    widthPx: of.read.widthPx,
    heightPx: of.read.heightPx,
    orientation: of.read.orientation,
    takenCamera: metadata.takenCamera,
    takenOffset: metadata.takenOffset,
    metadataNote: wellFormed(notes.join(" ").slice(0, 400)),
    lat: metadata.lat,
    lon: metadata.lon,
    altitudeM: metadata.altitudeM,
    camera: metadata.camera,
    broughtAt: of.now.toISOString(),
  });
};

const latestTime = (now: Date): LocalTime => shiftTime(localTime.parse(now.toISOString().slice(0, 19)), futureS);

/**
 * Commits records as they come: what arrives while one edit is being written goes into the next together. Says whether the
 * record is new: another bringing may have been quicker, and what has been said of its photograph since must stay.
 */
const createCommitter = (store: BookStore): { readonly commit: (photo: Photo) => Promise<boolean> } => {
  const waiting: { photo: Photo; resolve: (isNew: boolean) => void; reject: (error: unknown) => void }[] = [];
  let running = false;
  const write = async (batch: readonly { readonly photo: Photo }[]): Promise<ReadonlySet<PhotoId>> =>
    await store.edit({ label: say("edit.bring", { count: batch.length }), undoable: false }, async (edit) => {
      const fresh = new Set<PhotoId>();
      for (const { photo } of batch) {
        if ((await edit.get("photo", photo.id)) !== undefined) continue;
        await edit.put("photo", photo);
        fresh.add(photo.id);
      }
      return fresh;
    });
  const run = async (): Promise<void> => {
    running = true;
    while (waiting.length > 0) {
      const batch = waiting.splice(0, maxBatch);
      try {
        const fresh = await write(batch);
        for (const { photo, resolve } of batch) resolve(fresh.has(photo.id));
      } catch (error) {
        for (const { reject } of batch) reject(error);
      }
    }
    running = false;
  };
  return {
    commit: async (photo) =>
      await new Promise<boolean>((resolve, reject) => {
        waiting.push({ photo, resolve, reject });
        if (!running) void run();
      }),
  };
};
