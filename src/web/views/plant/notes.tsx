import type { PlantPage } from "../../../contract/index.js";
import { say } from "../../../words/index.js";
import { longDate, mediumDate } from "../../parts/dates.js";

/** What stands beneath board and photographs: views still missing, stages seen, happenings, vouchers. */
export const PlantNotes = ({ page }: { readonly page: PlantPage }) => {
  const stageName = (id: string | null): string | undefined => page.board.stages.find((stage) => stage.id === id)?.name;
  const missing = page.board.stages.flatMap((stage) => {
    const views = page.missingViews.filter((view) => view.stageId === stage.id);
    return views.length === 0 ? [] : [{ stage: stage.name, names: views.map((view) => view.name) }];
  });
  return (
    <div className="plant-notes">
      <section aria-labelledby="missing-head">
        <h2 className="column-head" id="missing-head">
          {say("web.plant.missing")}
        </h2>
        {page.missingViews.length === 0 ? (
          <p>{say("web.plant.missing.none")}</p>
        ) : (
          <ul className="bare ruled">
            {missing.map(({ stage, names }) => (
              <li key={stage}>
                <b>{stage}:</b> {names.join("; ")}
              </li>
            ))}
          </ul>
        )}
      </section>
      <section aria-labelledby="stages-head">
        <h2 className="column-head" id="stages-head">
          {say("web.plant.stages")}
        </h2>
        {page.stageRecords.length === 0 ? (
          <p>{say("web.plant.stages.none")}</p>
        ) : (
          <ul className="bare ruled">
            {page.stageRecords.map((record) => (
              <li key={record.id}>
                <time className="side" dateTime={record.date}>
                  {mediumDate(record.date)}
                </time>{" "}
                {stageName(record.stageId) ?? say("web.plant.stages.nothing")}
                {record.answer === "unsure" ? "?" : ""}
                {record.sharePercent === null ? "" : `, ${say("web.plant.stages.share", { share: record.sharePercent })}`}
                {record.why === "" ? "" : `: ${record.why}`}
              </li>
            ))}
          </ul>
        )}
      </section>
      {page.happenings.length === 0 ? null : (
        <section aria-labelledby="happenings-head">
          <h2 className="column-head" id="happenings-head">
            {say("web.plant.happenings")}
          </h2>
          <ul className="bare ruled">
            {page.happenings.map((happening) => (
              <li key={happening.id}>
                {say("web.plant.happening", {
                  kind: happening.kind,
                  date: longDate(happening.date),
                  ends: happening.endsYear ? "yes" : "no",
                })}
                {happening.note === "" ? "" : ` (${happening.note})`}
              </li>
            ))}
          </ul>
        </section>
      )}
      {page.vouchers.length === 0 ? null : (
        <section aria-labelledby="vouchers-head">
          <h2 className="column-head" id="vouchers-head">
            {say("web.plant.vouchers")}
          </h2>
          <ul className="bare ruled">
            {page.vouchers.map((voucher) => (
              <li key={voucher.id}>
                <b>{voucher.number}</b>, {longDate(voucher.date)}:{" "}
                {voucher.refusedBecause === null
                  ? say("web.plant.voucher", {
                      taken: voucher.stemsTaken,
                      patch: voucher.stemsInPatch,
                      parts: voucher.parts,
                      kept: voucher.kept,
                    })
                  : say("web.plant.voucher.refused", { why: voucher.refusedBecause })}
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
};
