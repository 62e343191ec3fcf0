import type { Origin } from '../plan/plan.ts';

/** Short makers of an `Origin`, so that the tables read as tables. */
export const standard = (text: string): Origin => ({ kind: 'standard', text });
export const practice = (text: string): Origin => ({ kind: 'common practice', text });
export const byDefault = (text: string): Origin => ({ kind: 'default', text });
export const measured = (text: string): Origin => ({ kind: 'measured', text });
export const maker = (text: string): Origin => ({ kind: 'maker', text });
