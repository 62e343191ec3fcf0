import { deferral, type Plan, writePlan } from '@plugside/fireground';

/** Raised when a key is renamed or removed; new keys do not raise it. */
export const envelopeVersion = 1;

/** Said in every JSON answer, so that no number is read in the wrong unit. */
export const unitsNote = {
  flow: 'gpm (US)',
  pressure: 'psi gauge',
  length: 'ft',
  diameter: 'in',
  volume: 'gal (US)',
  velocity: 'ft/s',
  vacuum: 'inHg',
  force: 'lbf',
} as const;

/** The JSON document of an answer. */
export function envelope(command: string, data: Record<string, unknown>): string {
  const document = {
    plugside: { command, format: envelopeVersion },
    units: unitsNote,
    ...data,
    deferral,
  };
  return JSON.stringify(document, null, 2);
}

/** A plan as a program can write it to a file and read it back. */
export function writtenPlan(plan: Plan): unknown {
  return JSON.parse(writePlan(plan, 'json'));
}

/** An answer with its plan in written form. */
export function withWrittenPlan<T extends { plan: Plan }>(answer: T) {
  return { ...answer, plan: writtenPlan(answer.plan) };
}
