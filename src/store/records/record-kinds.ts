/** What a book keeps one by one, and under which word the store is asked for it. */
import type {
  Account,
  FollowedPlant,
  Happening,
  Look,
  Outing,
  Permission,
  Person,
  Photo,
  Reading,
  Slip,
  Spot,
  Stage,
  StageRecord,
  Stop,
  View,
  Voucher,
} from "../../engine/index.js";

/** The kinds of records that are edited one by one, with the type of each. Reference tables have calls of their own. */
export interface RecordOf {
  person: Person;
  stage: Stage;
  view: View;
  spot: Spot;
  permission: Permission;
  plant: FollowedPlant;
  happening: Happening;
  outing: Outing;
  stop: Stop;
  stageRecord: StageRecord;
  look: Look;
  reading: Reading;
  slip: Slip;
  voucher: Voucher;
  photo: Photo;
  account: Account;
}
export type RecordKind = keyof RecordOf;
