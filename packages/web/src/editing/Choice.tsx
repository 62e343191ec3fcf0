import { Button, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';

interface ChoiceProps<T extends string> {
  label: string;
  value: T;
  options: readonly { value: T; text: string }[];
  onChange(value: T): void;
}

/** One of a list, shown as text in the line until it is pressed. */
export function Choice<T extends string>({ label, value, options, onChange }: ChoiceProps<T>) {
  return (
    <Select
      className="choice"
      aria-label={label}
      selectedKey={value}
      onSelectionChange={(key) => onChange(key as T)}
    >
      <Button className="choice-button">
        <SelectValue />
        <span aria-hidden="true" className="choice-mark">
          ▾
        </span>
      </Button>
      <Popover className="popover">
        <ListBox className="list">
          {options.map((option) => (
            <ListBoxItem
              key={option.value}
              id={option.value}
              className="list-item"
              textValue={option.text}
            >
              {option.text}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  );
}
