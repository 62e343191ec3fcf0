import { spelled } from './room-codes.ts';

/** A drill's code in a line: written whole, spoken letter by letter. */
export function Code({ code }: { code: string }) {
  return (
    <b className="code-word">
      <span aria-hidden="true">{code}</span>
      <span className="hidden-text">{spelled(code)}</span>
    </b>
  );
}
