import { Button } from 'react-aria-components';

interface KeptNoteProps {
  /** [ms since 1970] */
  typedAtMs: number;
  onDiscard(): void;
}

/** Says that a form holds what was typed before and never saved, and takes it away again. */
export function KeptNote({ typedAtMs, onDiscard }: KeptNoteProps) {
  return (
    <p className="kept-note" role="status">
      Typed earlier, {dayAndTime(typedAtMs)}, not saved: it is still in the form.{' '}
      <Button className="plain-button" onPress={onDiscard}>
        Discard it
      </Button>
    </p>
  );
}

/** On this device's clock: `2026-11-30 23:10`. */
function dayAndTime(ms: number): string {
  const at = new Date(ms);
  const two = (part: number) => String(part).padStart(2, '0');
  const day = [at.getFullYear(), two(at.getMonth() + 1), two(at.getDate())].join('-');
  return `${day} ${two(at.getHours())}:${two(at.getMinutes())}`;
}
