/** Handlers of the records that are written one by one, and of the shelves they stand on. */
import { keepReading, keepSlip, keepVoucher, listOutings, listPlaces, removeRecord, writeRecord } from "../../app/index.js";
import type { WrittenKind } from "../../app/index.js";
import type { Desk, Handlers } from "../handlers.js";

type Put<T> = (input: { readonly params: { readonly id: string }; readonly body: T }, desk: Desk) => ReturnType<typeof written>;
const written = async (edit: ReturnType<typeof removeRecord>) => ({ edit: await edit });

type RecordOfKind<K extends WrittenKind> = Parameters<typeof writeRecord<K>>[3];
const put =
  <K extends WrittenKind>(kind: K): Put<RecordOfKind<K>> =>
  ({ params, body }, { workbench }) =>
    written(writeRecord(workbench, kind, params.id, body));
const remove =
  (kind: WrittenKind) =>
  ({ params }: { readonly params: { readonly id: string } }, { workbench }: Desk) =>
    written(removeRecord(workbench, kind, params.id));

export const recordHandlers = {
  "GET /api/places": (_input, { workbench }) => listPlaces(workbench),
  "GET /api/outings": async (_input, { workbench }) => ({ outings: await listOutings(workbench) }),
  "PUT /api/people/{id}": put("person"),
  "PUT /api/views/{id}": put("view"),
  "PUT /api/spots/{id}": put("spot"),
  "DELETE /api/spots/{id}": remove("spot"),
  "PUT /api/permissions/{id}": put("permission"),
  "DELETE /api/permissions/{id}": remove("permission"),
  "PUT /api/plants/{id}": put("plant"),
  "DELETE /api/plants/{id}": remove("plant"),
  "PUT /api/happenings/{id}": put("happening"),
  "DELETE /api/happenings/{id}": remove("happening"),
  "PUT /api/outings/{id}": put("outing"),
  "DELETE /api/outings/{id}": remove("outing"),
  "PUT /api/stops/{id}": put("stop"),
  "DELETE /api/stops/{id}": remove("stop"),
  "PUT /api/stage-records/{id}": put("stageRecord"),
  "DELETE /api/stage-records/{id}": remove("stageRecord"),
  "PUT /api/looks/{id}": put("look"),
  "DELETE /api/looks/{id}": remove("look"),
  "PUT /api/readings/{id}": ({ params, body }, { workbench }) => written(keepReading(workbench, params.id, body.reading, body.confirmed)),
  "DELETE /api/readings/{id}": remove("reading"),
  "PUT /api/slips/{id}": ({ params, body }, { workbench }) => written(keepSlip(workbench, params.id, body)),
  "PUT /api/vouchers/{id}": ({ params, body }, { workbench }) => written(keepVoucher(workbench, params.id, body)),
  "PUT /api/accounts/{id}": put("account"),
} satisfies Partial<Handlers>;
