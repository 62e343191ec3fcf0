import { fieldsByKind, type Mapping, readCrs, type Source, unitsOf } from '@plugside/records';
import { ProblemError } from '../problem.ts';
import { mappingSchema } from './mapping-schema.ts';

interface Issue {
  path: string;
  value: unknown;
  allowed: string;
  message: string;
  remedy: string;
}

/**
 * A mapping for this file, as it was sent.
 * @throws ProblemError 422 telling each fault: its shape, fields that the kind has not, columns that
 * the file has not, a coordinate system that is not known
 */
export function checkedMapping(given: unknown, source: Source): Mapping {
  const read = mappingSchema.safeParse(given);
  if (!read.success) {
    throw refused(
      read.error.issues.map(({ path, message }) => {
        const where = path.reduce<string>(
          (text, step) =>
            typeof step === 'number' ? `${text}[${step}]` : `${text}${text && '.'}${String(step)}`,
          '',
        );
        return issue(
          where,
          valueAt(given, path),
          message,
          'Send the mapping as it was read, with changes.',
        );
      }),
    );
  }
  const mapping: Mapping = read.data;
  const issues = [...fieldIssues(mapping), ...columnIssues(mapping, source), ...crsIssues(mapping)];
  if (issues.length > 0) throw refused(issues);
  return mapping;
}

function fieldIssues(mapping: Mapping): Issue[] {
  const specs = fieldsByKind[mapping.kind];
  const known = [...specs.map(({ field }) => field), 'origins'];
  const issues: Issue[] = [];
  const taken = new Set<string>();
  mapping.fields.forEach(({ field, unit }, at) => {
    const spec = specs.find((one) => one.field === field);
    if (!known.includes(field)) {
      issues.push(issue(`fields[${at}].field`, field, known.join(', '), 'Choose another field.'));
    } else if (taken.has(field)) {
      issues.push(
        issue(`fields[${at}].field`, field, 'each field once', 'Name all its columns in one.'),
      );
    }
    taken.add(field);
    if (unit === undefined || spec?.type.is !== 'measure') return;
    const units: readonly string[] = unitsOf(spec.type.of);
    if (!units.includes(unit)) {
      issues.push(issue(`fields[${at}].unit`, unit, units.join(', '), 'Choose another unit.'));
    }
  });
  return issues;
}

function columnIssues(mapping: Mapping, { columns }: Source): Issue[] {
  const { idColumn, sourceColumn, recordColumn, place, fields, only = [] } = mapping;
  const named: [string, string | undefined][] = [
    ['idColumn', idColumn],
    ['sourceColumn', sourceColumn],
    ['recordColumn', recordColumn],
    ['place.longitude', place?.longitude],
    ['place.latitude', place?.latitude],
    ['place.point', place?.point],
    ...only.map(({ column }, at): [string, string] => [`only[${at}].column`, column]),
    ...fields.flatMap((field, at) =>
      field.columns.map((column, of): [string, string] => [`fields[${at}].columns[${of}]`, column]),
    ),
  ];
  return named
    .filter(([, column]) => column !== undefined && !columns.includes(column))
    .map(([path, column]) =>
      issue(path, column, columns.join(', '), 'Choose a column that the file has.'),
    );
}

function crsIssues({ place }: Mapping): Issue[] {
  if (!place) return [];
  const read = readCrs(place.crs);
  return read.ok ? [] : [issue('place.crs', place.crs, read.reason, read.remedy)];
}

function issue(path: string, value: unknown, allowed: string, remedy: string): Issue {
  const shown = JSON.stringify(value)?.slice(0, 80) ?? 'missing';
  const limited = allowed.length > 2000 ? `${allowed.slice(0, 2000)}...` : allowed;
  const message = `${path || 'The mapping'} is ${shown}; allowed: ${limited}.`;
  return { path, value, allowed: limited, message, remedy };
}

function refused(issues: readonly Issue[]): ProblemError {
  return new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: issues.map(({ message, remedy }) => `${message} ${remedy}`).join('\n'),
    extra: { issues },
  });
}

function valueAt(given: unknown, path: readonly PropertyKey[]): unknown {
  let value = given;
  for (const step of path) value = (value as Record<PropertyKey, unknown> | undefined)?.[step];
  return value;
}
