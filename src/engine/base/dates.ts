/**
 * Calendar dates and instants as text. A visit and a stage have a calendar date without a zone; a photograph has a
 * local time and, where the camera or the spot knows it, an offset from UTC. ISO 8601 text sorts as time does.
 */
import { z } from "zod";

const daysInMonth = (year: number, month: number): number => new Date(Date.UTC(year, month, 0)).getUTCDate();

const isRealDate = (text: string): boolean => {
  const [year, month, day] = text.split("-").map(Number) as [number, number, number];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
};

/** A calendar date, YYYY-MM-DD, that exists. */
export const isoDate = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, "write the date as YYYY-MM-DD")
  .refine(isRealDate, "this day does not exist")
  .brand<"IsoDate">();
export type IsoDate = z.infer<typeof isoDate>;

/** A local wall-clock time without zone, YYYY-MM-DDTHH:MM:SS. */
export const localTime = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\d$/, "write the time as YYYY-MM-DDTHH:MM:SS")
  .refine((text) => isRealDate(text.slice(0, 10)), "this day does not exist")
  .brand<"LocalTime">();
export type LocalTime = z.infer<typeof localTime>;

/** Offset of local time from UTC as in ISO 8601: `+01:00`, `-03:30`, `Z`. */
export const utcOffset = z.string().regex(/^(Z|[+-](0\d|1[0-4]):[0-5]\d)$/, "write the offset as +HH:MM");

/** Seconds since 1970-01-01T00:00:00 on the same wall clock; for differences between local times of one zone only. */
export const secondsOf = (time: LocalTime): number => Date.parse(`${time}Z`) / 1000;

/** The local time `seconds` later (earlier when negative), on the same wall clock. */
export const shiftTime = (time: LocalTime, seconds: number): LocalTime =>
  new Date((secondsOf(time) + Math.round(seconds)) * 1000).toISOString().slice(0, 19) as LocalTime;

/** The calendar date of a local time. */
export const dateOf = (time: LocalTime): IsoDate => time.slice(0, 10) as IsoDate;

/** Day of the year, 1 for 1 January; 366 at the end of a leap year. */
export const dayOfYear = (date: IsoDate): number => {
  const year = Number(date.slice(0, 4));
  return Math.round((Date.parse(`${date}T00:00:00Z`) - Date.UTC(year, 0, 1)) / 86_400_000) + 1;
};

/** The date `days` later (earlier when negative). */
export const addDays = (date: IsoDate, days: number): IsoDate =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10) as IsoDate;
