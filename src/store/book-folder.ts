/** Where the things of a book lie, and its backups. */
import { existsSync, readdirSync, statSync } from "node:fs";
import { readdir, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { makeFolder, syncFolder } from "./durable-files.js";

const DATABASE = "stipule.sqlite";
/** What may lie in a folder without making it somebody's: written by desktops, not by people. */
const ignorable = new Set([".DS_Store", "Thumbs.db", "desktop.ini", ".directory"]);
const skeleton = ["originals", "derived", "incoming", "backups"] as const;

export const databasePath = (folder: string): string => join(folder, DATABASE);
/** Whether a write-ahead log with something in it lies beside the database. */
export const hasWal = (folder: string): boolean => (statSync(join(folder, `${DATABASE}-wal`), { throwIfNoEntry: false })?.size ?? 0) > 0;

export const makeSkeleton = async (folder: string): Promise<void> => {
  for (const name of skeleton) await makeFolder(join(folder, name));
};

/** What lies in a folder besides what a killed beginning may have left; empty when the folder is free or not there. */
export const othersIn = (folder: string): readonly string[] => {
  if (!existsSync(folder)) return [];
  return readdirSync(folder).filter((name) => {
    if (ignorable.has(name) || name.startsWith("stipule.lock") || name === "incoming") return false;
    const isSkeleton = skeleton.some((one) => one === name);
    return !(isSkeleton && readdirSync(join(folder, name)).length === 0);
  });
};

/** Backups of the book, oldest first, as paths. Their names carry the instant, so text order is time order. */
export const backupsIn = (folder: string): readonly string[] => {
  const backups = join(folder, "backups");
  if (!existsSync(backups)) return [];
  return readdirSync(backups, { withFileTypes: true })
    .flatMap((entry) => (entry.isFile() ? [entry.name] : []))
    .filter((name) => /^stipule-\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}-\d{3}Z\.sqlite$/.test(name))
    .toSorted()
    .map((name) => join(backups, name));
};

export const latestBackup = (folder: string): string | null => backupsIn(folder).at(-1) ?? null;

/** An instant as it may stand in a file name on every system: no colons. */
export const stamp = (at: Date): string => at.toISOString().replaceAll(":", "-").replace(".", "-");

/** The instant in a backup's name. */
export const takenAt = (backup: string): Date => {
  const [, date = "", hour = "", minute = "", second = "", milli = ""] =
    /stipule-(\d{4}-\d{2}-\d{2})T(\d{2})-(\d{2})-(\d{2})-(\d{3})Z\.sqlite$/.exec(backup) ?? [];
  return new Date(`${date}T${hour}:${minute}:${second}.${milli}Z`);
};

export const backupPath = (folder: string, at: Date): string => join(folder, "backups", `stipule-${stamp(at)}.sqlite`);

const KEEP = 5;

/** Keeps the newest backups and removes the others. */
export const thinBackups = async (folder: string): Promise<void> => {
  for (const path of backupsIn(folder).slice(0, -KEEP)) await rm(path, { force: true });
};

/** Removes what a killed run left half written. @returns how many files */
export const removeLeftovers = async (folder: string): Promise<number> => {
  const names = await readdir(join(folder, "incoming"));
  for (const name of names) await rm(join(folder, "incoming", name), { force: true, recursive: true });
  return names.length;
};

/** Moves the database and its companions aside; the database first, so that no step leaves it without its log. */
export const setDatabaseAside = async (folder: string, to: string): Promise<void> => {
  await makeFolder(to);
  for (const name of [DATABASE, `${DATABASE}-wal`, `${DATABASE}-shm`]) {
    if (existsSync(join(folder, name))) await rename(join(folder, name), join(to, name));
  }
  await syncFolder(to);
  await syncFolder(folder);
};
