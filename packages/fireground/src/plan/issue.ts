/** What is wrong with a plan, told so that the reader can mend it. */
export interface PlanIssue {
  /** Place in the written form: `lines[2].length`. Empty for the plan as a whole. */
  path: string;
  /** What stands there. */
  value: unknown;
  allowed: string;
  remedy: string;
  /** All of it in one line: place, fault, what is allowed, remedy. */
  message: string;
}

/** An issue found in a text: where it stands, counted from 1. */
export interface ReadIssue extends PlanIssue {
  line: number;
  column: number;
}

/** What an issue says before its place is known. */
export interface Fault {
  /** `−5 ft is below 0 ft`. */
  fault: string;
  allowed: string;
  remedy: string;
}

/** An issue at a place in the written form. */
export function issueAt(path: string, value: unknown, fault: Fault): PlanIssue {
  const place = path === '' ? 'The plan' : path;
  const stop = fault.fault.endsWith('?') ? '' : '.';
  return {
    path,
    value,
    allowed: fault.allowed,
    remedy: fault.remedy,
    message: `${place}: ${fault.fault}${stop} Allowed: ${fault.allowed}. ${fault.remedy}`,
  };
}

export type PathStep = string | number;

/** `['lines', 2, 'length']` as `lines[2].length`. */
export function pathText(steps: readonly PathStep[]): string {
  let text = '';
  for (const step of steps) {
    if (typeof step === 'number') text += `[${step}]`;
    else text += text === '' ? step : `.${step}`;
  }
  return text;
}

/** The steps behind a path's text; keys of the written form have neither point nor bracket. */
export function pathSteps(text: string): PathStep[] {
  return [...text.matchAll(/\[(\d+)\]|[^.[\]]+/g)].map(([step, index]) =>
    index === undefined ? step : Number(index),
  );
}

/** A value as a message shows it: short, strings in quotes. */
export function showValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'an empty value';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a group of keys';
  const text = typeof value === 'string' ? `"${value}"` : String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
