/**
 * How easily the leading taxon would change: the least number of looks that would have to be wrong, and which; and how
 * surprising each finding is if the leader is right.
 */
import { normalCdf } from "../base/normal.js";
import type { CharacterId } from "../base/ids.js";
import { logLikelihoodColumn, measuredLogLikelihood } from "./columns.js";
import { valueAt, type EvidenceColumn } from "./evidence-column.js";
import { groupExponent } from "./determination-options.js";
import { statesSeen } from "./evidence-input.js";
import { measuredSummary } from "./measured-summary.js";
import { blunderRate, misreadingMatrix, misreadingRate } from "./misreading.js";
import { normalise } from "./posterior.js";
import { standing } from "./prepared-table.js";
import { hypothesisAt, hypothesisIndex, type AnsweredCharacter, type Hypothesis, type RunningEvidence } from "./running-evidence.js";

export interface Robustness {
  readonly leader: Hypothesis;
  /**
   * Least number of characters whose removal or reversal puts another hypothesis first; null = no number of them does, or
   * there is no evidence.
   */
  readonly leastWrong: number | null;
  /** Those characters, greatest swing first; empty with null. */
  readonly characterIds: readonly CharacterId[];
  /** What would lead then. */
  readonly insteadLeads: Hypothesis | null;
}

/**
 * Least number of wrong findings. A finding is removed, or reversed: replaced by the single sure report of another state
 * that speaks most for the rival; a measured series by one whose mean is the rival's most frequent value.
 *
 * For each rival the characters of a group are taken by their swing (exact for independent characters: largest first),
 * removal and reversal compared for each number; the groups are then combined by the best sum of swings for each number,
 * which is exact also where removal changes the exponent of a group. Within one group removal and reversal are not mixed.
 * A character that hangs on another is only removed, with the columns of others held as they are.
 * @param rivalCount how many of the most probable rivals are tried (always with "none of these"), >= 1
 * Cost: O(taxa x characters x states) + O(rivals x characters^2).
 */
export const robustness = (running: RunningEvidence, rivalCount = 200): Robustness => {
  const joint = running.logJoint();
  const { first } = normalise(joint);
  const leader = hypothesisAt(running.table, first);
  const groups = groupsOf(running);
  const order = Array.from(joint.keys()).filter((h) => h !== first && (joint[h] ?? -Infinity) > -Infinity);
  order.sort((x, y) => (joint[y] ?? 0) - (joint[x] ?? 0) || x - y);
  const none = running.table.taxonIds.length;
  const rivals = order.filter((h, i) => i < rivalCount || h === none);
  let best: { count: number; ids: readonly CharacterId[]; rival: number } | null = null;
  for (const rival of rivals) {
    const found = fewestFor(
      groups,
      first,
      rival,
      (joint[first] ?? 0) - (joint[rival] ?? 0),
      best === null ? Infinity : best.count - 1,
      running,
    );
    if (found !== null) best = { count: found.length, ids: found, rival };
  }
  return {
    leader,
    leastWrong: best?.count ?? null,
    characterIds: best?.ids ?? [],
    insteadLeads: best === null ? null : hypothesisAt(running.table, best.rival),
  };
};

export interface Surprise {
  readonly characterId: CharacterId;
  /** Chance that a plant of the taxon gives a report as unlikely as this one or more so, 0-1. Small = surprising. */
  readonly chance: number;
}

/**
 * How surprising each finding is under one taxon, most surprising first. States: the chances of all reports no likelier
 * than the one made (of several, the least likely that was made; between two, the likeliest). Measured: the two-sided tail
 * of the mean in the taxon's spread plus that of the reading. "None of these" and taxa without a score give no surprise.
 */
export const surprises = (running: RunningEvidence, hypothesis: Hypothesis): readonly Surprise[] => {
  const t = hypothesisIndex(running.table, hypothesis);
  const taxonCount = running.table.taxonIds.length;
  if (t === taxonCount) return [];
  const found = running.answered().flatMap(({ character, evidence }): readonly Surprise[] => {
    const { columns } = character;
    if (columns.standing[t] === standing.unknown) return [];
    if (columns.standing[t] === standing.notApplicable) {
      return [{ characterId: character.id, chance: misreadingRate(1, character.misreading, running.options.observer) }];
    }
    if (columns.kind === "states") {
      const k = columns.stateIds.length;
      const matrix = misreadingMatrix(k, columns.ordered, misreadingRate(k, character.misreading, running.options.observer));
      const chances = Array.from({ length: k }, (_, said) => {
        let sum = 0;
        for (let s = 0; s < k; s += 1) sum += (columns.frequency[s * taxonCount + t] ?? 0) * (matrix[s * k + said] ?? 0);
        return sum;
      });
      const states = evidence.states.length > 0 || columns.absence < 0 ? evidence.states : [columns.stateIds[columns.absence]];
      const said = states.map((state) => chances[columns.stateIds.findIndex((id) => id === state)] ?? 1);
      const own = evidence.sureness === "between-two" ? Math.max(...said) : Math.min(...said);
      const chance = chances.reduce((sum, other) => sum + (other <= own + 1e-12 ? other : 0), 0);
      return [{ characterId: character.id, chance: Math.min(1, chance) }];
    }
    const seen = measuredSummary(evidence, columns.isCount, running.options);
    if (seen === null) return [];
    const log = columns.isLog[t] === 1;
    if (log && seen.mean <= 0) return [{ characterId: character.id, chance: 0 }];
    const x = log ? Math.log(seen.mean) : seen.mean;
    const variance = log ? seen.variance / seen.mean / seen.mean : seen.variance;
    const low = Math.sqrt((columns.sdLow[t] ?? 1) ** 2 + variance);
    const high = Math.sqrt((columns.sdHigh[t] ?? 1) ** 2 + variance);
    const distance = x - (columns.mode[t] ?? 0);
    const beyond = distance < 0 ? (low / (low + high)) * normalCdf(distance / low) : (high / (low + high)) * normalCdf(-distance / high);
    const below = distance < 0 ? 2 * beyond : 1 - 2 * beyond;
    return [{ characterId: character.id, chance: Math.min(1, 2 * Math.min(below, 1 - below)) }];
  });
  return [...found].sort((x, y) => x.chance - y.chance || (x.characterId < y.characterId ? -1 : 1));
};

interface Member {
  readonly answered: AnsweredCharacter;
  /** Columns of every other single report, for characters of states that hang on no other. */
  readonly others: readonly EvidenceColumn[];
}

interface Group {
  readonly members: readonly Member[];
  /** Exponent of the group when so many of its characters speak. */
  readonly exponent: (count: number) => number;
}

const groupsOf = (running: RunningEvidence): readonly Group[] => {
  const byGroup = new Map<string, Member[]>();
  for (const answered of running.answered()) {
    const { character, evidence } = answered;
    const { columns } = character;
    const others =
      columns.kind !== "states" || character.onlyIf !== null || character.role === "support"
        ? []
        : columns.stateIds.flatMap((state) => {
            const column = logLikelihoodColumn(
              running.table,
              statesSeen(character.id, evidence.group, [state]),
              running.evidenceOf,
              running.options,
            );
            return column === null ? [] : [column];
          });
    byGroup.set(evidence.group, [...(byGroup.get(evidence.group) ?? []), { answered, others }]);
  }
  return [...byGroup].map(([group, members]) => ({ members, exponent: (count) => groupExponent(running.options, group, count) }));
};

/** The fewest findings whose removal or reversal lifts the rival over the leader, at most `limit`; null when none do. */
const fewestFor = (
  groups: readonly Group[],
  leader: number,
  rival: number,
  lead: number,
  limit: number,
  running: RunningEvidence,
): readonly CharacterId[] | null => {
  /** best[c]: greatest swing with c findings changed. */
  let best: readonly Change[] = [{ swing: 0, ids: [] }];
  for (const group of groups) {
    const own = swingsOf(group, leader, rival, running);
    const next: Change[] = [];
    best.forEach((before, c) => {
      own.forEach((change, k) => {
        const swing = before.swing + change.swing;
        const there = next[c + k];
        if (there === undefined || swing > there.swing) next[c + k] = { swing, ids: [...before.ids, ...change.ids] };
      });
    });
    best = next;
  }
  const count = best.findIndex((change, c) => c > 0 && c <= limit && change.swing > lead);
  return count < 0 ? null : (best[count]?.ids ?? null);
};

interface Change {
  readonly swing: number;
  readonly ids: readonly CharacterId[];
}

/** For each number of changed findings in a group, the greatest swing from leader to rival. */
const swingsOf = (group: Group, leader: number, rival: number, running: RunningEvidence): readonly Change[] => {
  const m = group.members.length;
  const full = group.exponent(m);
  const speaks = group.members.map(({ answered, others }) => {
    const role = answered.exponent / full;
    const now = role * (answered.logLikelihoodAt(leader) - answered.logLikelihoodAt(rival));
    let turned = Math.min(now, 0);
    for (const other of others) turned = Math.min(turned, role * (valueAt(other, leader) - valueAt(other, rival)));
    turned = Math.min(turned, role * measuredAtRival(answered, leader, rival, running));
    return { id: answered.character.id, now, turned };
  });
  const total = speaks.reduce((sum, { now }) => sum + now, 0);
  const byRemoval = [...speaks].sort((x, y) => y.now - x.now || (x.id < y.id ? -1 : 1));
  const byReversal = [...speaks].sort((x, y) => y.now - y.turned - (x.now - x.turned) || (x.id < y.id ? -1 : 1));
  const changes: Change[] = [{ swing: 0, ids: [] }];
  for (let k = 1; k <= m; k += 1) {
    const removed = byRemoval.slice(0, k);
    const left = total - removed.reduce((sum, { now }) => sum + now, 0);
    const removalSwing = full * total - (k < m ? group.exponent(m - k) * left : 0);
    const reversed = byReversal.slice(0, k);
    const reversalSwing = full * reversed.reduce((sum, { now, turned }) => sum + now - turned, 0);
    const isRemoval = removalSwing >= reversalSwing;
    changes.push({ swing: Math.max(removalSwing, reversalSwing), ids: (isRemoval ? removed : reversed).map(({ id }) => id) });
  }
  return changes;
};

/** Log likelihood ratio of leader and rival had the series its mean at the rival's mode; 0 where that cannot be said. */
const measuredAtRival = ({ character, evidence }: AnsweredCharacter, leader: number, rival: number, running: RunningEvidence): number => {
  const { columns } = character;
  if (columns.kind !== "measure" || character.onlyIf !== null || character.role === "support") return 0;
  if (columns.standing[leader] !== standing.known || columns.standing[rival] !== standing.known) return 0;
  const seen = measuredSummary(evidence, columns.isCount, running.options);
  if (seen === null) return 0;
  const mode = columns.mode[rival] ?? 0;
  const moved = { ...seen, mean: columns.isLog[rival] === 1 ? Math.exp(mode) : mode };
  const blunder = blunderRate(running.options, character.misreading);
  return measuredLogLikelihood(columns, leader, moved, blunder) - measuredLogLikelihood(columns, rival, moved, blunder);
};
