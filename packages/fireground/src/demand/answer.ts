import type { QuantityProblem } from '@plugside/hydraulics';
import type { Notice } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import type { BuildingField } from './building.ts';
import { fieldWords } from './building-fields.ts';

/** Ways to say what a building asks for, and what the crew has in use. */
export type DemandMethod =
  | 'area and involvement'
  | 'volume'
  | 'insurance rating'
  | 'rural supply'
  | 'fire code'
  | 'sprinklers'
  | 'standpipe'
  | 'lines in use';

/** Where a method comes from. */
export interface DemandSource {
  title: string;
  /** Left out where the source that was read names none. */
  edition?: string;
  /** Some of its figures were recalled, not read: the notices say which. */
  fromMemory: boolean;
}

/** One line of the arithmetic. */
export interface DemandStep {
  /** A sentence in the reader's units. */
  text: string;
  /** What the line comes to, in its inside unit. */
  value: number;
  /** Symbol of the inside unit, or a word for what is counted; empty for a pure number. */
  unit: string;
}

/** Why a method says nothing. */
export interface Unanswered {
  /** Inputs to give, by name. */
  fields: BuildingField[];
  /** What to give, as a sentence. */
  text: string;
  /** An input that was given, but out of its range. */
  problem?: QuantityProblem;
}

/** What one method asks for. Figures are in inside units: gpm, min, gal. */
export interface DemandAnswer {
  method: DemandMethod;
  title: string;
  /** What it can take of a building, needed or not. */
  inputs: readonly BuildingField[];
  /** Needed flow [gpm]; null where the method is unanswered. */
  neededGpm: number | null;
  /** How long it is to last [min]; left out where the method does not say. */
  durationMin?: number;
  /** Water in all [gal]; left out where the method does not say. */
  totalGal?: number;
  steps: DemandStep[];
  source: DemandSource;
  notices: Notice[];
  unanswered?: Unanswered;
}

export interface DemandOptions {
  /** For the sentences; US where left out. Figures are always in inside units. */
  units?: UnitSystem;
}

/** What is the same in every answer of a method. */
export type DemandAbout = Pick<DemandAnswer, 'method' | 'title' | 'inputs' | 'source'>;

type Worked = Omit<DemandAnswer, keyof DemandAbout | 'unanswered' | 'neededGpm'> & {
  neededGpm: number;
};

/** An answer that was worked out. */
export const answered = (about: DemandAbout, worked: Worked): DemandAnswer => ({
  ...about,
  ...worked,
});

/** An answer that waits for inputs. */
export function unanswered(about: DemandAbout, fields: readonly BuildingField[]): DemandAnswer {
  return without(about, {
    fields: [...fields],
    text: `Give ${listed(fields.map(fieldWords))}.`,
  });
}

/** "a, b and c" */
function listed(words: readonly string[]): string {
  const last = words[words.length - 1] ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/** An answer that is left out for a reason of its own. */
export function without(about: DemandAbout, why: Unanswered): DemandAnswer {
  return { ...about, neededGpm: null, steps: [], notices: [], unanswered: why };
}

export const step = (text: string, value: number, unit: string): DemandStep => ({
  text,
  value,
  unit,
});

export const caution = (text: string): Notice => ({ level: 'caution', text });
export const fact = (text: string): Notice => ({ level: 'fact', text });
