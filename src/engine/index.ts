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
export { fail, ok } from "./base/result.js";
export type { Problem, Result } from "./base/result.js";

// characters
export { compareParts, partOrder, person, stage, view } from "./characters/vocabulary.js";
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

// determination
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
