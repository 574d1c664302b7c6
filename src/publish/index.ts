/** The front door of publishing: an account in, text files out. Pure; no file is read or written here. */
export { speciesAccount, altDraft, placeText, proseWords } from "./species-account.js";
export { accountFolder, fontFiles } from "./account-folder.js";
export type { FolderFile, FontFile } from "./account-folder.js";
export { sectionDraftText, sectionHtml } from "./section-html.js";
export type { Html } from "./html.js";
export type {
  AccountCase,
  AccountInput,
  AccountPhoto,
  AccountPlant,
  PhotoFile,
  PublicDate,
  PublicLook,
  PublicReading,
  PublicSlip,
  PublicSpot,
  PublicStageRecord,
  PublicVoucher,
} from "./account-input.js";
export type {
  AccountModel,
  DescriptionPart,
  EvidenceEntry,
  Figure,
  Line,
  Mark,
  MeasureRow,
  PlantBlock,
  RivalBlock,
  StageRow,
  Step,
} from "./account-model.js";
