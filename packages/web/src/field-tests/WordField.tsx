import { FieldError, Input, Label, TextField } from 'react-aria-components';

interface WordFieldProps {
  label: string;
  value: string;
  onChange(value: string): void;
  type?: 'text' | 'date';
  maxLength?: number;
  required?: boolean;
  /** What is wrong with it. */
  problem?: string | null;
  /** Takes the whole row. */
  wide?: boolean;
}

/** Words or a date. */
export function WordField({ label, value, onChange, type = 'text', ...rest }: WordFieldProps) {
  return (
    <TextField
      className={`test-field test-field-${rest.wide ? 'wide' : type}`}
      value={value}
      onChange={onChange}
      type={type}
      isRequired={rest.required}
      maxLength={rest.maxLength}
      isInvalid={rest.problem != null}
      validationBehavior="aria"
      autoComplete="off"
    >
      <Label>{label}</Label>
      <span className="test-field-line">
        <Input />
      </span>
      <FieldError>{rest.problem}</FieldError>
    </TextField>
  );
}
