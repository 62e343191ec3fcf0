import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';

interface ChoiceProps<T extends string> {
  label: string;
  value: T;
  options: readonly { value: T; text: string }[];
  onChange(value: T): void;
}

/** One of a list, shown as text in the line until it is pressed. The list is made only then. */
export function Choice<T extends string>({ label, value, options, onChange }: ChoiceProps<T>) {
  const text = options.find((option) => option.value === value)?.text ?? value;
  return (
    <MenuTrigger>
      <Button className="choice-button" aria-label={`${label}: ${text}`}>
        {text}
        <span aria-hidden="true" className="choice-mark">
          ▾
        </span>
      </Button>
      <Popover className="popover">
        <Menu
          className="list"
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
            <MenuItem
              key={option.value}
              id={option.value}
              className="list-item"
              textValue={option.text}
            >
              {option.text}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
