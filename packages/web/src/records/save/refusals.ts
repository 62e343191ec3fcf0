/** What the server refused, by the field that it is about, in the words and units of the form. */
import type { UnitSystem } from '@plugside/fireground';
import type { Kind } from '@plugside/records/model';
import type { RefusedField } from '../../api/problem.ts';
import { unitOf } from '../fields/allowed-words.ts';
import type { FieldSpec } from '../fields/field.ts';
import { limitsAt } from '../fields/limits.ts';
import type { Problems } from '../form/draft.ts';
import { fieldText, outOfRangeWords } from '../form/field-text.ts';

export interface Refusals {
  /** By place in the form. */
  byPlace: Problems;
  /** About nothing that the form shows. */
  others: readonly string[];
}

/** Sorts refusals onto the fields of a form. */
export function refusalsOf(
  kind: Kind,
  table: readonly FieldSpec[],
  issues: readonly RefusedField[],
  system: UnitSystem,
): Refusals {
  const byPlace: Record<string, string> = {};
  const others: string[] = [];
  for (const issue of issues) {
    const found = specAt(table, issue.path);
    if (!found || byPlace[issue.path]) {
      others.push([issue.message, issue.remedy].filter(Boolean).join(' '));
      continue;
    }
    byPlace[issue.path] = refusalWords(kind, found, issue, system);
  }
  return { byPlace, others };
}

function specAt(table: readonly FieldSpec[], path: string): FieldSpec[] | undefined {
  const [field = '', inside] = path.replaceAll(/\[\d+\]/g, '').split('.');
  const spec = table.find((one) => one.field === field && !one.elsewhere);
  if (!spec) return undefined;
  const { type } = spec;
  const within = type.is === 'parts' ? type.parts : type.is === 'rows' ? type.columns : [];
  const part = within.find((one) => one.field === inside);
  return part ? [spec, part] : [spec];
}

/** A number out of range is said in the reader's units; anything else as the server says it. */
function refusalWords(
  kind: Kind,
  specs: readonly FieldSpec[],
  issue: RefusedField,
  system: UnitSystem,
): string {
  const spec = specs.at(-1)!;
  if (spec.type.is === 'quantity' && typeof issue.value === 'number') {
    const shown = `${fieldText(spec, issue.value, system)} ${unitOf(spec, system)}`;
    const limits = limitsAt(
      kind,
      specs.map(({ field }) => field),
    );
    return outOfRangeWords(spec, shown, limits, system);
  }
  const message = issue.message.startsWith(issue.path)
    ? spec.label + issue.message.slice(issue.path.length)
    : issue.message;
  return [message, issue.remedy].filter(Boolean).join(' ');
}
