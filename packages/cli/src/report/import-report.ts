import type { ImportReport, Mapping } from '@plugside/records';
import { paragraph, sections } from '../output/paragraph.ts';
import { table } from '../output/table.ts';
import type { Terminal } from '../terminal.ts';

/** Refused rows that are told one by one. */
const MOST_TOLD = 10;

/** What an import did, or would do. */
export function importReport(
  terminal: Terminal,
  report: ImportReport,
  mapping: Mapping,
  where: string,
  refusedFile: string | undefined,
): string {
  const { ink, width } = terminal;
  return sections(
    ink.answer(paragraph(countsSentence(report, where), width)),
    mappingTable(terminal, mapping),
    reasonsTable(terminal, report),
    refusedTable(terminal, report, refusedFile),
    ...[...mapping.notices, ...report.notices].map((notice) => paragraph(notice, width)),
    notedTable(terminal, report),
    keptTable(terminal, report),
  );
}

const counted = (count: number) => count.toLocaleString('en-US');

function countsSentence(report: ImportReport, where: string): string {
  const { dryRun, rows, fileName, kind, added, changed, same, skipped, refusedCount } = report;
  const what = `${counted(added)} added, ${counted(changed)} changed, ${counted(same)} the same, ${counted(refusedCount)} refused`;
  const which = report.otherKinds.map((one) => `${counted(one.count)} ${one.kind}`).join(', ');
  const others =
    skipped > 0
      ? `; ${counted(skipped)} are of another kind${which === '' ? '' : ` (${which})`}`
      : '';
  const read = `${counted(rows)} rows of ${fileName}`;
  return dryRun
    ? `Nothing was written. Of ${read}, as ${kind} into ${where}: ${what}${others}.`
    : `Imported ${read} as ${kind} into ${where}: ${what}${others}.`;
}

function mappingTable({ ink }: Terminal, { fields, place, unused }: Mapping): string {
  const rows = fields.map(({ field, columns, unit, confidence }) => [
    field,
    columns.join(', '),
    unit ?? '',
    `${Math.round(confidence * 100)} %`,
  ]);
  if (place) {
    const columns = [place.longitude, place.latitude, place.point].filter((one) => one);
    const from = [...(place.geometry ? ['geometry'] : []), ...columns].join(', ');
    rows.push(['place', from, place.crs.length > 20 ? 'as the file says' : place.crs, '']);
  }
  const columns = [
    { head: 'Field' },
    { head: 'Column' },
    { head: 'Unit' },
    { head: 'Sure', number: true },
  ];
  const left = unused.length > 0 ? `\nNot used: ${unused.slice(0, 20).join(', ')}.` : '';
  return `${ink.head('How its columns were read')}\n${table(columns, rows)}${left}`;
}

function reasonsTable({ ink }: Terminal, { byReason }: ImportReport): string {
  if (byReason.length === 0) return '';
  const rows = byReason.map(({ code, count }) => [code, counted(count)]);
  return `${ink.head('Refused')}\n${table([{ head: 'Reason' }, { head: 'Rows', number: true }], rows)}`;
}

function refusedTable(
  { width }: Terminal,
  { refused, refusedCount }: ImportReport,
  refusedFile: string | undefined,
): string {
  if (refusedCount === 0) return '';
  const lines = refused.slice(0, MOST_TOLD).map(({ row, column, value, reason, remedy }) => {
    const what = [column, value === undefined ? undefined : `"${value.slice(0, 60)}"`]
      .filter((one) => one !== undefined)
      .join(' ');
    return paragraph(`Row ${row}${what ? `, ${what}` : ''}: ${reason} ${remedy}`, width);
  });
  const rest = refusedCount - lines.length;
  if (rest > 0) lines.push(`And ${counted(rest)} more.`);
  lines.push(
    refusedFile === undefined
      ? 'Give --refused FILE for a table of them that can be mended and imported.'
      : `They are in ${refusedFile}: mend them there and import that file.`,
  );
  return lines.join('\n');
}

function notedTable({ width }: Terminal, { noted, notedCount }: ImportReport): string {
  if (notedCount === 0) return '';
  const lines = noted.slice(0, MOST_TOLD).map(({ row, record, what, text }) => {
    const which = record === '' ? `Row ${row}` : `Row ${row}, ${record}`;
    return paragraph(
      `${which}: ${what === 'cannot be used' ? 'kept, but plans cannot use it. ' : ''}${text}`,
      width,
    );
  });
  const rest = notedCount - lines.length;
  if (rest > 0) lines.push(`And ${counted(rest)} more.`);
  return lines.join('\n');
}

function keptTable({ ink }: Terminal, { kept, keptCount }: ImportReport): string {
  if (keptCount === 0) return '';
  const rows = kept
    .slice(0, MOST_TOLD)
    .map(({ record, field, ours, theirs }) => [
      record,
      field,
      ours.slice(0, 30),
      theirs.slice(0, 30),
    ]);
  const columns = [
    { head: 'Record' },
    { head: 'Field' },
    { head: 'Kept' },
    { head: 'In the file' },
  ];
  const head = `${counted(keptCount)} of the department's own values kept`;
  return `${ink.head(head)}\n${table(columns, rows)}`;
}
