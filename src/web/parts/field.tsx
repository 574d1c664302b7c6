import { useId } from "react";
import type { ReactNode } from "react";

/** What a field hands to its input so that label, hint and problem are read with it. */
export interface FieldInputProps {
  readonly id: string;
  readonly "aria-describedby": string | undefined;
  readonly "aria-invalid": true | undefined;
}

export interface FieldProps {
  readonly label: ReactNode;
  /** One plain sentence of help under the label. */
  readonly hint?: ReactNode;
  /** What is wrong with the value; read with the input. */
  readonly problem?: string | null | undefined;
  /** The input itself: `(props) => <input {...props} />`. */
  readonly children: (props: FieldInputProps) => ReactNode;
}

/** A labelled input. */
export const Field = ({ label, hint, problem, children }: FieldProps) => {
  const id = useId();
  const wrong = problem !== undefined && problem !== null && problem !== "";
  const described = [hint === undefined ? "" : `${id}-hint`, wrong ? `${id}-problem` : ""].filter((part) => part !== "").join(" ");
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {hint === undefined ? null : (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {children({ id, "aria-describedby": described === "" ? undefined : described, "aria-invalid": wrong ? true : undefined })}
      {wrong ? (
        <p className="field-problem" id={`${id}-problem`}>
          {problem}
        </p>
      ) : null}
    </div>
  );
};
