import { useId, useRef, useState } from "react";
import type { KeyboardEvent } from "react";
import { useLocation } from "wouter";
import type { YearView } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { longDate, shortDate } from "../../parts/dates.js";
import { stageLetters } from "../../parts/stage-letters.js";
import { addressWith } from "../../parts/to.js";
import { angleOf, arcSpans, bandPath, half, placeOf, pointAt, ringRadii } from "./dial-geometry.js";
import { Hatches, hatchOf } from "./hatches.js";

type Ring = YearView["rings"][number];
type Mark = Ring["marks"][number];

const monthNames = Array.from({ length: 12 }, (_, month) =>
  new Intl.DateTimeFormat("en-GB", { month: "short", timeZone: "UTC" }).format(Date.UTC(2000, month, 1)),
);

/** What an arc says in words. */
export const markSentence = (ring: Ring, mark: Mark): string => {
  const facts = { plant: ring.nick, date: longDate(mark.date), stage: mark.stageName, why: mark.why };
  if (mark.kind === "seen") return say("web.year.mark.seen", { ...facts, photos: mark.photoCount, looks: mark.lookCount });
  if (mark.kind === "unsure") return say("web.year.mark.unsure", facts);
  return say(mark.kind === "not-reached" ? "web.year.mark.not-reached" : "web.year.mark.nothing-left", {
    ...facts,
    given: mark.why === "" ? "no" : "yes",
  });
};

/** Where an arc leads: the plant as it stood on that day. */
export const markAddress = (ring: Ring, mark: Mark): string => addressWith(`/plants/${ring.plantId}`, { upTo: mark.date });

/**
 * The year as a dial like the disc of a tree: a ring for each plant, arcs for stages with tint, hatch and letters, open dots for
 * outings, a needle at the reading day. One stop of the Tab key; arrow keys move along and across the rings, Enter opens.
 */
export const Dial = ({ year, onDay }: { readonly year: YearView; readonly onDay: (date: string) => void }) => {
  const id = useId().replaceAll(/[^\w-]/g, "");
  const [, navigate] = useLocation();
  const drawing = useRef<SVGSVGElement>(null);
  const [at, setAt] = useState<{ readonly ring: number; readonly mark: number }>({ ring: 0, mark: 0 });
  const letters = stageLetters(year.stages.map((stage) => stage.name));
  const stageIndex = new Map(year.stages.map((stage, index) => [stage.id, index]));
  const { radii, thickness } = ringRadii(year.rings.length);
  const firstWithMarks = Math.max(
    0,
    year.rings.findIndex((ring) => ring.marks.length > 0),
  );
  const current = (year.rings[at.ring]?.marks.length ?? 0) > at.mark ? at : { ring: firstWithMarks, mark: 0 };
  const needle = angleOf(placeOf(year.upTo, year.year));

  const onKeyDown = (event: KeyboardEvent): void => {
    const along = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
    const across = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (along === 0 && across === 0) return;
    event.preventDefault();
    const ring = Math.min(year.rings.length - 1, Math.max(0, current.ring + across));
    const last = (year.rings[ring]?.marks.length ?? 0) - 1;
    if (last < 0) return;
    const next = { ring, mark: Math.min(last, Math.max(0, current.mark + along)) };
    setAt(next);
    drawing.current?.querySelector<SVGAElement>(`[data-at="${next.ring}.${next.mark}"]`)?.focus();
  };

  const arc = (ring: Ring, ringAt: number, mark: Mark, markAt: number, [from, to]: readonly [number, number]) => {
    const radius = radii[ringAt] ?? 0;
    const stage = mark.stageId === null ? undefined : stageIndex.get(mark.stageId);
    const path = bandPath(angleOf(from), angleOf(to), radius, thickness);
    const address = markAddress(ring, mark);
    const sentence = markSentence(ring, mark);
    return (
      <a
        key={mark.outingId}
        className="dial-arc"
        href={address}
        aria-label={sentence}
        tabIndex={ringAt === current.ring && markAt === current.mark ? 0 : -1}
        data-at={`${ringAt}.${markAt}`}
        onKeyDown={onKeyDown}
        onFocus={() => setAt({ ring: ringAt, mark: markAt })}
        onClick={(event) => {
          if (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
          event.preventDefault();
          navigate(address);
        }}
      >
        <title>{sentence}</title>
        {stage === undefined ? (
          <path d={path} className="dial-none" fill={`url(#${id}-none)`} />
        ) : (
          <>
            <path d={path} className={`dial-stage stage-fill-${stage % 9}`} />
            <path d={path} className="dial-hatch" fill={`url(#${id}-${hatchOf(stage)})`} />
          </>
        )}
      </a>
    );
  };

  const [nx, ny] = pointAt(needle, 292);
  const [mx, my] = pointAt(needle, 62);
  return (
    <svg ref={drawing} className="dial" viewBox={`${-half} ${-half} ${2 * half} ${2 * half}`} aria-labelledby={`${id}-title ${id}-desc`}>
      <title id={`${id}-title`}>{say("web.year.dial.title", { year: String(year.year) })}</title>
      <desc id={`${id}-desc`}>
        {say("web.year.dial.desc", { plants: year.rings.length, outings: year.outings.length, date: longDate(year.upTo) })}
      </desc>
      <Hatches id={id} />
      <g aria-hidden="true">
        {monthNames.map((name, month) => {
          const begin = angleOf(placeOf(`${year.year}-${String(month + 1).padStart(2, "0")}-01`, year.year));
          const middle = angleOf(placeOf(`${year.year}-${String(month + 1).padStart(2, "0")}-15`, year.year));
          const [ax, ay] = pointAt(begin, 78);
          const [bx, by] = pointAt(begin, 298);
          const [tx, ty] = pointAt(middle, 313);
          return (
            <g key={name}>
              <path d={`M${ax} ${ay}L${bx} ${by}`} className="dial-month-line" />
              <text x={tx} y={ty} dy="0.35em" className="dial-month">
                {name}
              </text>
            </g>
          );
        })}
        {radii.map((radius, index) => (
          <path key={year.rings[index]?.plantId} d={bandPath(angleOf(0), angleOf(1), radius, 0.6)} className="dial-ring" />
        ))}
      </g>
      {year.rings.map((ring, ringAt) => {
        const spans = arcSpans(
          ring.marks.map((mark) => mark.date),
          year.year,
        );
        return (
          <g key={ring.plantId}>
            {ring.marks.map((mark, markAt) => arc(ring, ringAt, mark, markAt, spans[markAt] ?? [0, 0]))}
            {ring.happenings.map((happening) => {
              const [x, y] = pointAt(angleOf(placeOf(happening.date, year.year)), radii[ringAt] ?? 0);
              return (
                <path key={happening.id} d={`M${x - 6} ${y - 6}l12 12m0-12l-12 12`} className="dial-happening">
                  <title>{say("web.year.happening", { plant: ring.nick, kind: happening.kind, date: longDate(happening.date) })}</title>
                </path>
              );
            })}
            <text x={0} y={-(radii[ringAt] ?? 0)} dy="0.35em" className="dial-name" aria-hidden="true">
              {ring.nick}
            </text>
          </g>
        );
      })}
      <g aria-hidden="true">
        {year.outings.map((outing) => {
          const [x, y] = pointAt(angleOf(placeOf(outing.date, year.year)), 292);
          return (
            // The keyboard has the same by the reading day at the top.
            <circle key={outing.outingId} cx={x} cy={y} r={6} className="dial-outing" onClick={() => onDay(outing.date)}>
              <title>
                {say("web.year.outing", { date: longDate(outing.date), goal: outing.goal, given: outing.goal === "" ? "no" : "yes" })}
              </title>
            </circle>
          );
        })}
        <path d={`M${mx} ${my}L${nx} ${ny}`} className="dial-needle" />
        {year.rings.map((ring, ringAt) => {
          const spans = arcSpans(
            ring.marks.map((mark) => mark.date),
            year.year,
          );
          return ring.marks.map((mark, markAt) => {
            const stage = mark.stageId === null ? undefined : stageIndex.get(mark.stageId);
            const [from, to] = spans[markAt] ?? [0, 0];
            const [x, y] = pointAt(angleOf((from + to) / 2), radii[ringAt] ?? 0);
            return stage === undefined ? null : (
              <text key={`${ring.plantId} ${mark.outingId}`} x={x} y={y} dy="0.35em" className={`dial-letters stage-halo-${stage % 9}`}>
                {letters[stage]}
                {mark.kind === "unsure" ? "?" : ""}
              </text>
            );
          });
        })}
        <text x={0} y={-2} className="dial-year">
          {year.year}
        </text>
        <text x={0} y={24} className="dial-day">
          {shortDate(year.upTo)}
        </text>
      </g>
    </svg>
  );
};
