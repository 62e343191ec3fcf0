import { createContext } from 'react';

/** What was typed into fields of a form and could not be read as a number, by the field. */
export interface UnreadTexts {
  readonly texts: Readonly<Record<string, string>>;
  /** Null: what stands in the field can be read, or nothing does. */
  put(field: string, text: string | null): void;
}

/** Null where nobody keeps them. */
export const UnreadTextsContext = createContext<UnreadTexts | null>(null);
