/**
 * Every number the probability side assumes, in one place, with where it comes from. Those marked "common practice, no
 * source" are starting points until specimens of known name are there to fit them.
 */

/** How practised the observer is. */
export type ObserverClass = "professional" | "trained" | "novice";

/**
 * Chance that a state is reported wrongly, for characters of up to three states.
 * Background: novices got 79 % of 25 plant characters right (Wäldchen et al. 2023, People and Nature); trained laboratories
 * repeat tests with 4-8 % error (Sneath 1974, in: Evolution in the Microbial World). The three values are common practice.
 */
export const misreadingRates: Readonly<Record<ObserverClass, number>> = { professional: 0.03, trained: 0.08, novice: 0.2 };

export interface DeterminationOptions {
  readonly observer: ObserverClass;
  /** Prior chance that the plant is none of the taxa in the table, 0 <= x < 1. 0.02-0.10 by how complete the table is. */
  readonly noneOfThese: number;
  /** Relative prior weights by taxon id, >= 0; taxa not named get 1. null = every expected taxon alike. */
  readonly priors: Readonly<Record<string, number>> | null;
  /** Prior weight of a taxon not expected here, relative to an expected one. It never removes it. Common practice, no source. */
  readonly outOfRange: number;
  /** Correlation assumed between characters of one group, 0-1: m of them count as m / (1 + (m - 1) rho). No source. */
  readonly groupCorrelation: number;
  /**
   * Exponent on the log likelihoods of a group of which `members` characters are answered; null = the block weight
   * 1 / (1 + (members - 1) groupCorrelation). An exponent fitted on specimens is handed in here.
   */
  readonly groupExponent: ((group: string, members: number) => number) | null;
  /** Exponent on a character of role "support" (place, season, altitude). Common practice, no source. */
  readonly supportExponent: number;
  /** The most that one support character may speak between any two taxa, in decibans: 3 = a factor of two. */
  readonly supportLimitDecibans: number;
  /**
   * What a plant outside the table looks like: every state alike ("even"), as the taxa of the table on average
   * ("table"), or half of each ("mixed").
   */
  readonly background: "even" | "table" | "mixed";
  /** Chance that a measured series is a blunder (wrong organ, wrong unit); null = the misreading rate of the observer. */
  readonly blunder: number | null;
  /** Spread within one plant as a share of the value, used where a single value cannot show it. Common practice, no source. */
  readonly withinPlantSpread: number;
  /** Correlation of organs of one stem, where fewer stems than values are stated. Common practice, no source. */
  readonly stemCorrelation: number;
  /** Correlation of "not there" between organs of one plant: ten flowers of one plant are not ten plants. No source. */
  readonly absenceCorrelation: number;
  /** How much of a "fairly sure" report is kept; the rest says nothing. Common practice, no source. */
  readonly fairlyShare: number;
}

export const defaultDeterminationOptions: DeterminationOptions = {
  observer: "trained",
  noneOfThese: 0.05,
  priors: null,
  outOfRange: 0.1,
  groupCorrelation: 0.5,
  groupExponent: null,
  supportExponent: 0.25,
  supportLimitDecibans: 3,
  background: "mixed",
  blunder: null,
  withinPlantSpread: 0.15,
  stemCorrelation: 0.3,
  absenceCorrelation: 0.5,
  fairlyShare: 0.7,
};

/**
 * The options in full, checked.
 * @throws {RangeError} if a share is outside its range, naming it
 */
export const determinationOptions = (given: Partial<DeterminationOptions>): DeterminationOptions => {
  const options = { ...defaultDeterminationOptions, ...given };
  const between = (name: keyof DeterminationOptions, low: number, high: number): void => {
    const value = options[name];
    if (value === null) return;
    if (!(typeof value === "number" && value >= low && value <= high)) {
      throw new RangeError(`determinationOptions requires ${name} between ${low} and ${high}: got ${JSON.stringify(value)}`);
    }
  };
  between("noneOfThese", 0, 0.999999);
  between("outOfRange", 1e-9, 1);
  between("groupCorrelation", 0, 1);
  between("supportExponent", 0, 1);
  between("supportLimitDecibans", 0, 1000);
  between("blunder", 0, 0.5);
  between("withinPlantSpread", 0, 10);
  between("stemCorrelation", 0, 1);
  between("absenceCorrelation", 0, 1);
  between("fairlyShare", 0, 1);
  return options;
};

/** Exponent on a group with so many answered characters. */
export const groupExponent = (options: DeterminationOptions, group: string, members: number): number =>
  options.groupExponent === null ? 1 / (1 + (members - 1) * options.groupCorrelation) : options.groupExponent(group, members);
