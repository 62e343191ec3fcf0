import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';

interface SwitcherProps<T extends string> {
  label: string;
  value: T;
  options: readonly { value: T; text: string; spoken?: string }[];
  onChange(value: T): void;
  className?: string;
}

/** Two or three states side by side, one of them on. */
export function Switcher<T extends string>(props: SwitcherProps<T>) {
  const { label, value, options, onChange, className = 'switcher' } = props;
  return (
    <ToggleButtonGroup
      className={className}
      aria-label={label}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[value]}
      onSelectionChange={(keys) => {
        const [key] = keys;
        if (key !== undefined && key !== value) onChange(key as T);
      }}
    >
      {options.map((option) => (
        <ToggleButton key={option.value} id={option.value} aria-label={option.spoken}>
          {option.text}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}
