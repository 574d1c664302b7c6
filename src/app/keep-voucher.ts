/** Keeps a voucher, unless the 1-in-20 rule or a permission is against it. A voucher noted as refused is always kept: it records a no. */
import type { Voucher } from "../engine/index.js";
import type { EditSummary } from "../store/index.js";
import { say } from "../words/index.js";
import { Refused } from "./app-error.js";
import { mayCollect } from "./may-collect.js";
import { writeRecord } from "./write-record.js";
import type { Workbench } from "./workbench.js";

/** @throws {Refused} `voucher-refused`, one fault a reason; what `writeRecord` throws. */
export const keepVoucher = async (workbench: Workbench, id: string, voucher: Voucher): Promise<EditSummary> => {
  if (voucher.refusedBecause === null && voucher.stemsTaken > 0 && (await workbench.store.get("plant", voucher.plantId)) !== undefined) {
    const answer = await mayCollect(workbench, voucher.plantId, voucher.date, voucher.stemsTaken, {
      stems: voucher.stemsInPatch,
      except: voucher.id,
    });
    if (!answer.allowed) {
      const detail = say("refused.voucher", { reasons: answer.reasons.map((reason) => reason.text).join(" ") });
      throw new Refused(
        { code: "voucher-refused", detail, kept: say("refused.kept"), remedy: say("refused.voucher-remedy") },
        answer.reasons.map((reason) => ({
          pointer: reason.code === "one-in-twenty" ? "/stemsTaken" : "/plantId",
          value: reason.code === "one-in-twenty" ? String(voucher.stemsTaken) : voucher.plantId,
          detail: reason.text,
        })),
      );
    }
  }
  return writeRecord(workbench, "voucher", id, voucher);
};
