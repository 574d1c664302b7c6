/** The front door of the engine: an explicit list of names. Everything here is pure: no files, no clock, no page. */

// base
export {
  accountId,
  characterId,
  happeningId,
  lookId,
  outingId,
  permissionId,
  personId,
  photoId,
  plantId,
  readingId,
  slipId,
  sourceId,
  spotId,
  stageId,
  stageRecordId,
  stateId,
  stopId,
  tableId,
  taxonId,
  viewId,
  voucherId,
} from "./base/ids.js";
export type {
  AccountId,
  CharacterId,
  HappeningId,
  LookId,
  OutingId,
  PermissionId,
  PersonId,
  PhotoId,
  PlantId,
  ReadingId,
  SlipId,
  SourceId,
  SpotId,
  StageId,
  StageRecordId,
  StateId,
  StopId,
  TableId,
  TaxonId,
  ViewId,
  VoucherId,
} from "./base/ids.js";
export { addDays, dateOf, dayOfYear, isoDate, localTime, secondsOf, shiftTime, utcOffset } from "./base/dates.js";
export type { IsoDate, LocalTime } from "./base/dates.js";
export { escapeHtml } from "./base/html-text.js";
export { logAddExp, logSumExp } from "./base/log-space.js";
export { logNormalCdf, logNormalInterval, normalCdf, normalQuantile } from "./base/normal.js";
export { randomSource } from "./base/random.js";
export type { RandomSource } from "./base/random.js";
export { fail, ok } from "./base/result.js";
export type { Problem, Result } from "./base/result.js";

// names
export { abbreviatedGenus, nameHtml, nameParts, nameText } from "./names/name-parts.js";
export type { NameQualifier, NameSpan } from "./names/name-parts.js";

// characters
export { compareParts, partOfPhoto, partOrder, person, stage, view } from "./characters/vocabulary.js";
export type { Person, Stage, View } from "./characters/vocabulary.js";
export { answerKind, character, state, tool, tools } from "./characters/character.js";
export type { AnswerKind, Character, State, Tool } from "./characters/character.js";
export { hybridPair, referenceTable, score, scoreValue, source, taxon } from "./characters/reference-table.js";
export type { HybridPair, ReferenceTable, Score, ScoreValue, Source, Taxon } from "./characters/reference-table.js";
export { look, lookStatus, lookStatuses, reading } from "./characters/evidence.js";
export type { Look, LookStatus, Reading } from "./characters/evidence.js";
export {
  followedPlant,
  happening,
  outing,
  permission,
  photo,
  publicPlaceClass,
  resultWord,
  slip,
  spot,
  stageRecord,
  stop,
  voucher,
} from "./characters/followed-plant.js";
export type {
  FollowedPlant,
  Happening,
  Outing,
  Permission,
  Photo,
  PublicPlaceClass,
  ResultWord,
  Slip,
  Spot,
  StageRecord,
  Stop,
  Voucher,
} from "./characters/followed-plant.js";
export { account, accountSection, accountSections, bookContent, bookInfo, settledRule } from "./characters/book-content.js";
export type { Account, AccountSection, BookContent, BookInfo, SettledRule } from "./characters/book-content.js";

export { conflictsOf, statesSaid } from "./characters/conflicts.js";
export type { Conflict } from "./characters/conflicts.js";
export { ratiosOf } from "./characters/ratios.js";
export { existenceOf } from "./characters/existence.js";
export { evidenceBoard, proofOfCell } from "./characters/evidence-board.js";
export type { BoardCellKind, BoardInput, EvidenceCell, EvidenceRow } from "./characters/evidence-board.js";

// season
export { nextWindow, readMonths, stageWindow } from "./season/stage-window.js";
export type { DateWindow } from "./season/stage-window.js";

// outing: the camera's clock and the views
export { clockShift, countInside, maxShiftS, minPhotos } from "./outing/clock-shift.js";
export type { ClockShift, ShiftDoubt, StopTimes } from "./outing/clock-shift.js";
export { missingViews, stageOfPhoto } from "./outing/missing-views.js";
export type { StageViews } from "./outing/missing-views.js";
export { placePhotos } from "./outing/place-photos.js";
export type { Placement, Walk } from "./outing/place-photos.js";
export { gowerDistances, gowerPairIndex } from "./characters/gower.js";
export type { GowerColumn } from "./characters/gower.js";

// determination
export { separations, shortestDiagnosis } from "./determination/apart.js";
export type { Separation, ShortestDiagnosis } from "./determination/apart.js";
export { buildCase, characterEvidence } from "./determination/case.js";
export { caseByRule } from "./determination/case-by-rule.js";
export type { CaseByRule, CaseInput } from "./determination/case-by-rule.js";
export { evidenceUpTo, findingsOf, upperShareOfNoneIn } from "./determination/findings.js";
export type { PlantEvidence } from "./determination/findings.js";
export { hybridPairs } from "./determination/hybrid-pairs.js";
export { difference, maySpeakAgainst, meet } from "./determination/meeting.js";
export { checksAtStages, nextChecks, openPairs } from "./determination/next-check.js";
export { applyRule, rivalsToExclude, weighTaxa } from "./determination/rule.js";
export type { TaxonBeforeRule } from "./determination/rule.js";
export { scoreLookup } from "./determination/score-lookup.js";
export type { ScoreLookup } from "./determination/score-lookup.js";
export type {
  CaseFile,
  CharacterFinding,
  Finding,
  HybridPairStanding,
  Meeting,
  NextCheck,
  RivalStanding,
  RuleOutcome,
  Witness,
} from "./determination/case-file.js";

// measurement
export { median, quantile } from "./measurement/quantile.js";
export type { QuantileType } from "./measurement/quantile.js";
export { convertLength, unitFactor, unitOf } from "./measurement/length-unit.js";
export { decimalsOfError, quantileSampleSize, sampleNotation, writeFloraRange } from "./measurement/flora-notation.js";
export type { FloraNumbers, SampleNotation } from "./measurement/flora-notation.js";
export { readFloraRange } from "./measurement/read-flora-range.js";
export type { FloraAlternatives, FloraQuantity, FloraRange } from "./measurement/read-flora-range.js";
export { questionsOfSeries, readingSeries } from "./measurement/reading-series.js";
export type { ExpectedRange, ReadingSeries, SeriesQuestion } from "./measurement/reading-series.js";

// outing
export { givesPlaceAway, halfDiagonalM, publicPlace } from "./outing/public-place.js";
export type { PublicPlace } from "./outing/public-place.js";

// exchange
export { readLooksCsv } from "./exchange/looks-csv.js";
export type { LooksReading, Specimen } from "./exchange/looks-csv.js";
export { readTableCsv } from "./exchange/table-csv/read.js";
export type { TableReading } from "./exchange/table-csv/read.js";
export { writeTableCsv } from "./exchange/table-csv/write.js";
export { patternTable, starterCharacters, starterStages, starterViews } from "./exchange/starter-vocabulary.js";
export { readDemoYear } from "./exchange/demo-year.js";
export type { DemoPhoto, DemoYear } from "./exchange/demo-year.js";

// prose
export {
  describeFindings,
  describeTaxon,
  findingWords,
  joined,
  pooledWords,
  scoreWords,
  stateNames,
  unitOfCharacter,
} from "./prose/description.js";
export type { DescribedPart, EvidenceRef, PooledReading, ProseSentence, ProseWords } from "./prose/description.js";

// determination: chances
export { defaultDeterminationOptions, misreadingRates } from "./determination/determination-options.js";
export type { DeterminationOptions, ObserverClass } from "./determination/determination-options.js";
export { lookedNotThere, statesSeen, valuesMeasured } from "./determination/evidence-input.js";
export type { CharacterEvidence, Sureness } from "./determination/evidence-input.js";
export { expectedInformation, informationOfOutcomes, informationOfValues } from "./determination/information.js";
export type { ExpectedInformation, ValueHypothesis } from "./determination/information.js";
export { gatherEvidence, posterior, posteriorOf, probabilitiesOf } from "./determination/posterior.js";
export type { Chance, Posterior } from "./determination/posterior.js";
export { assembleTable, frequencyKinds, prepareCharacter, prepareTable, standing } from "./determination/prepared-table.js";
export type { FrequencyKinds, MeasureColumns, PreparedCharacter, PreparedTable, StateColumns } from "./determination/prepared-table.js";
export { robustness, surprises } from "./determination/robustness.js";
export type { Robustness, Surprise } from "./determination/robustness.js";
export { startEvidence } from "./determination/running-evidence.js";
export type { AnsweredCharacter, Hypothesis, RunningEvidence } from "./determination/running-evidence.js";
export { defaultRangeConvention, distributionOfScore, frequenciesFromCounts, frequencyWords } from "./determination/score-distribution.js";
export type { RangeConvention, ScoreDistribution } from "./determination/score-distribution.js";
export { fitLogNormal, fittedNormal, fitTwoPieceNormal, quantileOf, rangeWidthInSd } from "./determination/two-piece-normal.js";
export type { QuantilePoint, TwoPieceNormal } from "./determination/two-piece-normal.js";
export { typicality } from "./determination/typicality.js";
export type { Typicality } from "./determination/typicality.js";
export { decibans, weightOfEvidence } from "./determination/weight-of-evidence.js";
export type { CharacterWeight, GroupWeight, WeightOfEvidence } from "./determination/weight-of-evidence.js";

// diagram
export { demoSketch, demoSketches } from "./diagram/demo-sketches.js";
export { drawDog } from "./diagram/dog.js";
export { composePlate, groundShrink } from "./diagram/plate.js";
export type { GroundKind, Plate, PlateRequest, PlateTruth } from "./diagram/plate.js";
export { seededRandom } from "./diagram/seeded-random.js";
export type { SeededRandom } from "./diagram/seeded-random.js";
export { pathPoints } from "./diagram/drawing.js";
export type { CircleShape, Drawing, Figure, GroupShape, Paint, PathShape, PointMm, Shape, TextShape, Truth } from "./diagram/drawing.js";
export { drawFigure, figureViews } from "./diagram/figure.js";
export type { FigureRequest, FigureView } from "./diagram/figure.js";
export { crossOf, figureParameters } from "./diagram/figure-parameters.js";
export type { FigureParameters, LeafFoot, WinterOrgan } from "./diagram/figure-parameters.js";
export { drawSketch, sketchMm } from "./diagram/sketch.js";
export type { SketchSpec } from "./diagram/sketch.js";
export type { StageId as FigureStage } from "./diagram/habit.js";
export type { Setting as LandscapeSetting } from "./diagram/landscape.js";
export { shapesToSvg, toSvg } from "./diagram/to-svg.js";
export type { SvgOptions } from "./diagram/to-svg.js";
