import { Button, Group, Input, NumberField } from 'react-aria-components';

interface MinutesFieldProps {
  /** Spoken name with its unit. */
  label: string;
  value: number;
  isDisabled?: boolean;
  onChange(minutes: number): void;
}

const LONGEST_MIN = 120;

/** Minutes, typed or stepped by halves. */
export function MinutesField({ label, value, isDisabled, onChange }: MinutesFieldProps) {
  return (
    <NumberField
      aria-label={label}
      className="minutes"
      value={value}
      minValue={0}
      maxValue={LONGEST_MIN}
      step={0.1}
      isDisabled={isDisabled}
      onChange={(minutes) => Number.isFinite(minutes) && onChange(minutes)}
    >
      <Group className="minutes-group">
        <Button slot="decrement">−</Button>
        <Input />
        <span className="unit">min</span>
        <Button slot="increment">+</Button>
      </Group>
    </NumberField>
  );
}
