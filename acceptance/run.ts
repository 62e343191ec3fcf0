/** `npm run acceptance -- <file.json …>`: solves cases worked elsewhere and says how near each answer comes. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import {
  type ComparedValue,
  compareSupplyCase,
} from '../packages/fireground/proof/supply-cases.ts';
import { compareNetworkCase } from '../packages/hydraulics/proof/network-cases.ts';

/** What tells one kind of case from another, and how it is compared. */
interface CaseFormat {
  name: string;
  matches: (one: object) => boolean;
  compare: (one: never) => readonly ComparedValue[];
}

const formats: readonly CaseFormat[] = [
  { name: 'network', matches: (one) => 'network' in one, compare: compareNetworkCase },
  { name: 'supply', matches: (one) => 'lay' in one, compare: compareSupplyCase },
];

const files = process.argv.slice(2);
if (files.length === 0) {
  console.error('Give one or more files of cases: npm run acceptance -- cases.json');
  process.exit(2);
}
let failed = 0;
for (const file of files) {
  const read: unknown = JSON.parse(readFileSync(resolve(file), 'utf8'));
  const cases = (Array.isArray(read) ? read : [read]) as { id?: string; title?: string }[];
  console.log(file);
  for (const one of cases) {
    const wrong = judge(one);
    if (wrong.length > 0) failed += 1;
    console.log(
      `  ${wrong.length === 0 ? 'agrees' : 'DIFFERS'}  ${one.id ?? '?'}  ${one.title ?? ''}`,
    );
    for (const line of wrong) console.log(`           ${line}`);
  }
}
console.log(failed === 0 ? 'All cases agree.' : `${failed} cases differ.`);
process.exitCode = failed === 0 ? 0 : 1;

/** @returns what is wrong with a case, in words; nothing when it agrees */
function judge(one: object): string[] {
  const format = formats.find((known) => known.matches(one));
  if (!format) return [`no format fits a case with the fields ${Object.keys(one).join(', ')}`];
  try {
    return format
      .compare(one as never)
      .filter((value) => !value.agrees)
      .map(({ what, expected, found, within }) => {
        return `${what}: ${found} found, ${expected} expected within ${within}`;
      });
  } catch (error) {
    return [error instanceof Error ? error.message : String(error)];
  }
}
