import { type Document, LineCounter, parseDocument } from 'yaml';
import { hydrantsWithMainOpen } from '../network/shared-mains.ts';
import { crossIssues } from './check.ts';
import { sizeIssues } from './checks/ids.ts';
import {
  type Fault,
  issueAt,
  type PlanIssue,
  pathSteps,
  type ReadIssue,
  showValue,
} from './issue.ts';
import { didYouMean } from './nearest.ts';
import type { Plan } from './plan.ts';
import { lineAndColumn, positionOf } from './position.ts';
import { parseWritten } from './written/describe-schema-issue.ts';
import { heightsTakenAsZero } from './written/heights.ts';
import { sizeLimits } from './written/ranges.ts';
import { formatVersion } from './written/schema.ts';
import { toPlan } from './written/to-plan.ts';

/** Something in a sound plan that its writer may not have meant. */
export interface ReadNotice {
  path: string;
  line: number;
  column: number;
  message: string;
}

export type ReadPlan =
  | { ok: true; plan: Plan; notices: ReadNotice[] }
  | { ok: false; issues: ReadIssue[] };

export interface ReadOptions {
  /** Named in messages about the file as a whole. */
  fileName?: string;
}

/** More would only bury the first ones. */
const mostIssues = 50;

/** Aliases that one file may use; more is a bomb, not a plan. */
const mostAliases = 100;

/**
 * Reads a plan from YAML or JSON text. Numbers are bare in the inside units or carry their
 * own (`900 ft`, `4.8 bar`). Never throws: whatever is wrong comes back as issues with
 * place, line and remedy, at most 50 of them.
 */
export function readPlan(text: string, { fileName }: ReadOptions = {}): ReadPlan {
  const file = fileName ?? 'this file';
  const atStart = (fault: Fault, value: unknown = undefined): ReadPlan => ({
    ok: false,
    issues: [{ ...issueAt('', value, fault), line: 1, column: 1 }],
  });
  if (typeof text !== 'string') {
    return atStart({
      fault: `${showValue(text)} is not text`,
      allowed: 'the text of a plan',
      remedy: 'Give the text of a YAML or JSON file.',
    });
  }
  const bytes = utf8Bytes(text);
  if (bytes > sizeLimits.fileBytes) {
    return atStart({
      fault: `${file} is ${(bytes / 1_048_576).toFixed(1)} MB`,
      allowed: '1 MB at most',
      remedy: 'A plan is a few kilobytes: is this the right file?',
    });
  }
  const lines = new LineCounter();
  let document: Document.Parsed;
  let written: unknown;
  try {
    document = parseDocument(text, {
      lineCounter: lines,
      prettyErrors: false,
      stringKeys: true,
      logLevel: 'error',
    });
    written = document.errors.length > 0 ? null : document.toJS({ maxAliasCount: mostAliases });
  } catch (error) {
    // The parser's own limits (nesting too deep) and alias bombs surface as exceptions.
    return atStart({
      fault: `${file} cannot be read (${error instanceof Error ? error.message : 'unknown fault'})`,
      allowed: 'YAML or JSON without tricks of nesting or aliases',
      remedy: 'Write the plan out plainly.',
    });
  }
  const malformed = formIssues(document, lines, file);
  if (malformed.length > 0) return { ok: false, issues: malformed };
  return readWritten(written, document, lines, file);
}

/** What the parser found wrong with the text itself. */
function formIssues(document: Document.Parsed, lines: LineCounter, file: string): ReadIssue[] {
  const faults = [...document.errors, ...document.warnings];
  return faults.slice(0, mostIssues).map((fault) => ({
    ...issueAt('', undefined, {
      fault: `${file} is not well formed: ${fault.message}`,
      allowed: 'YAML or JSON',
      remedy: 'Mend the text here or just before it.',
    }),
    ...lineAndColumn(lines, fault.pos[0]),
  }));
}

function readWritten(
  written: unknown,
  document: Document.Parsed,
  lines: LineCounter,
  file: string,
): ReadPlan {
  const located = (issues: readonly PlanIssue[]): ReadPlan => ({
    ok: false,
    issues: issues.slice(0, mostIssues).map((issue) => ({
      ...issue,
      ...positionOf(document, lines, pathSteps(issue.path)),
    })),
  });

  const version = versionIssues(written, file);
  if (version.length > 0) return located(version);
  const sizes = roughSizeIssues(written as Record<string, unknown>);
  if (sizes.length > 0) return located(sizes);
  const parsed = parseWritten(written);
  if (!parsed.ok) return located(parsed.issues);
  const plan = toPlan(parsed.written);
  const cross = [...departmentHoseIssues(parsed.written.department.hose), ...crossIssues(plan)];
  if (cross.length > 0) return located(cross);
  const notices = [
    ...heightsTakenAsZero(parsed.written).map(({ path, id }) => ({
      path,
      message: `${path}: ${id} has no elevation; it was taken as 0 ft.`,
    })),
    ...mainsLeftOpen(plan),
  ].map((notice) => ({ ...notice, ...positionOf(document, lines, pathSteps(notice.path)) }));
  return { ok: true, plan, notices };
}

/** Hydrants of which no main is named, where another might share it. */
function mainsLeftOpen(plan: Plan): { path: string; message: string }[] {
  return hydrantsWithMainOpen(plan).map(({ id }) => {
    const path = `hydrants[${plan.hydrants.findIndex((one) => one.id === id)}]`;
    return {
      path,
      message: `${path}: ${id} names no main; it was taken to share none. On one main two hydrants give less.`,
    };
  });
}

function versionIssues(written: unknown, file: string): PlanIssue[] {
  if (written === null || typeof written !== 'object' || Array.isArray(written)) {
    return [
      issueAt('', written, {
        fault: written === null ? `${file} is empty` : `${file} holds ${showValue(written)}`,
        allowed: `a plan, beginning with plugside: ${formatVersion}`,
        remedy: 'Choose a plan file.',
      }),
    ];
  }
  const { plugside: version } = written as { plugside?: unknown };
  if (version === formatVersion) return [];
  const allowed = `plugside: ${formatVersion}`;
  if (version === undefined) {
    const guess = didYouMean('plugside', Object.keys(written).slice(0, 20));
    const near = guess && ` (${guess.slice(2, -1).replace('did you mean', 'is it')}?)`;
    return [
      issueAt('plugside', undefined, {
        fault: `it is missing, so the version of ${file} is not known${near}`,
        allowed,
        remedy: `Begin the file with plugside: ${formatVersion}.`,
      }),
    ];
  }
  if (typeof version === 'number' && Number.isInteger(version) && version > formatVersion) {
    return [
      issueAt('plugside', version, {
        fault: `this file is version ${version}; this Plugside reads ${formatVersion}`,
        allowed,
        remedy: 'Update Plugside.',
      }),
    ];
  }
  return [
    issueAt('plugside', version, {
      fault: `${showValue(version)} is not a version`,
      allowed,
      remedy: `Write plugside: ${formatVersion}.`,
    }),
  ];
}

/** Counts before reading further, so that a huge file costs nothing. */
function roughSizeIssues(written: Record<string, unknown>): PlanIssue[] {
  const count = (key: string) => {
    const list = written[key];
    return Array.isArray(list) ? list.length : 0;
  };
  const pieces = ['hydrants', 'drafts', 'rigs', 'appliances', 'nozzles'];
  return sizeIssues({
    pieces: pieces.reduce((sum, key) => sum + count(key), 0),
    lines: count('lines'),
  });
}

function departmentHoseIssues(hose: readonly { size: string }[] | undefined): PlanIssue[] {
  const seen = new Set<string>();
  return (hose ?? []).flatMap(({ size }, index) => {
    if (!seen.has(size)) {
      seen.add(size);
      return [];
    }
    return [
      issueAt(`department.hose[${index}].size`, size, {
        fault: `${size} in stands here twice`,
        allowed: 'each size once',
        remedy: 'Keep one of them.',
      }),
    ];
  });
}

function utf8Bytes(text: string): number {
  let bytes = 0;
  for (const letter of text) {
    const code = letter.codePointAt(0) ?? 0;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
}
