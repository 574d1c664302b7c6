/** Fields of the working forms: a line or a few lines of text, and a choice of one of a few. */
import type { ReactNode } from "react";
import { Field } from "../parts/field.js";

interface TextFieldProps {
  readonly label: string;
  readonly help?: string | undefined;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onBlur?: (() => void) | undefined;
  readonly type?: "text" | "date" | "time";
  /** More than one line. */
  readonly rows?: number;
  readonly required?: boolean;
  readonly problem?: string | undefined;
  readonly placeholder?: string;
  readonly inputMode?: "decimal" | "numeric" | "text";
  readonly maxLength?: number;
  /** The first field of a dialog. */
  readonly first?: boolean;
}

export const TextField = ({
  label,
  help,
  value,
  onChange,
  onBlur,
  type = "text",
  rows,
  required = false,
  problem,
  placeholder = "",
  inputMode = "text",
  maxLength = 4000,
  first = false,
}: TextFieldProps) => (
  <Field label={label} problem={problem} {...(help === undefined ? {} : { hint: help })}>
    {(props) =>
      rows === undefined ? (
        <input
          {...props}
          type={type}
          {...{ value, required, placeholder, inputMode, maxLength }}
          autoFocus={first}
          onBlur={onBlur}
          onChange={(event) => onChange(event.target.value)}
        />
      ) : (
        <textarea
          {...props}
          {...{ value, required, placeholder, rows, maxLength }}
          onBlur={onBlur}
          onChange={(event) => onChange(event.target.value)}
        />
      )
    }
  </Field>
);

export const Choose = <T extends string>(props: {
  readonly label: string;
  readonly help?: string | undefined;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
}): ReactNode => (
  <Field label={props.label} {...(props.help === undefined ? {} : { hint: props.help })}>
    {(given) => (
      <select
        {...given}
        value={props.value}
        onChange={(event) => {
          const chosen = props.options.find((option) => option.value === event.target.value);
          if (chosen !== undefined) props.onChange(chosen.value);
        }}
      >
        {props.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    )}
  </Field>
);
