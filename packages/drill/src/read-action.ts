import type { DrillAction, Problem } from './action.ts';
import { criteria } from './criteria.ts';
import type { Fault } from './fault.ts';
import { isPlainText } from './plain-text.ts';
import { mostRadioCharacters, type RadioMessage, radioPresets } from './radio.ts';
import { type PlayedRole, playedRoles } from './role.ts';

/** Most characters of a name: a hose, a valve, a port. */
const mostNameCharacters = 80;

type Fields = Record<string, unknown>;

/** Thrown and caught in this file alone. */
class Refusal extends Error {
  readonly problem: Problem;
  constructor(field: string, message: string) {
    super(message);
    this.problem = { field, message };
  }
}

/**
 * Reads an action that came from outside: a known kind, every field of its type and in its range,
 * nothing else. What it names may not be there, and the person may not be allowed to do it: `mayDo`
 * and the step say so.
 * @returns the action, or what is wrong with it, naming field, value, allowed range
 */
export function readAction(value: unknown): { action: DrillAction } | { problem: Problem } {
  try {
    return { action: read(value) };
  } catch (error) {
    if (error instanceof Refusal) return { problem: error.problem };
    throw error;
  }
}

function read(value: unknown): DrillAction {
  const fields = record(value, 'action');
  const kind = fields.do;
  switch (kind) {
    case 'couple':
      only(fields, ['hose', 'end', 'port']);
      return {
        do: kind,
        hose: name(fields, 'hose'),
        end: oneOf(fields, 'end', ['from', 'to']),
        port: name(fields, 'port'),
      };
    case 'uncouple':
      only(fields, ['hose', 'end']);
      return {
        do: kind,
        hose: name(fields, 'hose'),
        end: oneOf(fields, 'end', ['from', 'to']),
      };
    case 'set valve': {
      only(fields, ['valve', 'opening', 'overS']);
      const action: DrillAction = {
        do: kind,
        valve: name(fields, 'valve'),
        opening: number(fields, 'opening', 0, 1),
      };
      if (fields.overS !== undefined) action.overS = number(fields, 'overS', 0, 120);
      return action;
    }
    case 'pump in gear':
      only(fields, ['rig', 'inGear']);
      return { do: kind, rig: name(fields, 'rig'), inGear: flag(fields, 'inGear') };
    case 'set governor':
      only(fields, ['rig', 'pdpPsi']);
      return { do: kind, rig: name(fields, 'rig'), pdpPsi: number(fields, 'pdpPsi', 0, 400) };
    case 'set throttle':
      only(fields, ['rig', 'speedFraction']);
      return {
        do: kind,
        rig: name(fields, 'rig'),
        speedFraction: number(fields, 'speedFraction', 0.3, 1.1),
      };
    case 'radio':
      only(fields, ['message']);
      return { do: kind, message: message(fields.message) };
    case 'arm fault':
      only(fields, ['fault']);
      return { do: kind, fault: readFault(fields.fault) };
    case 'lift fault':
      only(fields, ['fault']);
      return { do: kind, fault: name(fields, 'fault') };
    case 'pause':
    case 'resume':
      only(fields, []);
      return { do: kind };
    case 'set speed':
      only(fields, ['speed']);
      return { do: kind, speed: number(fields, 'speed', 0.5, 8) };
    case 'say': {
      only(fields, ['text', 'to']);
      const action: DrillAction = { do: kind, text: text(fields, 'text') };
      if (fields.to !== undefined) action.to = oneOf<PlayedRole>(fields, 'to', playedRoles);
      return action;
    }
    case 'heard':
      only(fields, ['from', 'preset']);
      return {
        do: kind,
        from: oneOf<PlayedRole>(fields, 'from', playedRoles),
        preset: oneOf(
          fields,
          'preset',
          radioPresets.map(({ key }) => key),
        ),
      };
    case 'mark': {
      only(fields, ['verdict', 'text', 'about']);
      const action: DrillAction = {
        do: kind,
        verdict: oneOf(fields, 'verdict', ['good', 'fault']),
        text: text(fields, 'text'),
      };
      if (fields.about !== undefined)
        action.about = oneOf<PlayedRole>(fields, 'about', playedRoles);
      return action;
    }
    case 'overrule':
      only(fields, ['criterion', 'met', 'reason']);
      return {
        do: kind,
        criterion: oneOf(fields, 'criterion', criteria),
        met: flag(fields, 'met'),
        reason: text(fields, 'reason'),
      };
    default:
      throw new Refusal(
        'do',
        `"do" is ${shown(kind)}. Give one of: couple, uncouple, set valve, pump in gear, set governor, set throttle, radio, arm fault, lift fault, pause, resume, set speed, say, heard, mark, overrule.`,
      );
  }
}

function message(value: unknown): RadioMessage {
  const fields = record(value, 'message');
  if ('text' in fields) {
    only(fields, ['text']);
    return { text: text(fields, 'text') };
  }
  only(fields, ['preset', 'psi', 'gpm']);
  const keys = radioPresets.map((preset) => preset.key);
  const key = oneOf(fields, 'preset', keys);
  const preset = radioPresets.find((one) => one.key === key)!;
  const needs = 'needs' in preset ? preset.needs : undefined;
  if (fields.psi !== undefined && needs !== 'psi')
    throw new Refusal('psi', `"${key}" takes no psi. Leave it out.`);
  if (fields.gpm !== undefined && needs !== 'gpm')
    throw new Refusal('gpm', `"${key}" takes no gpm. Leave it out.`);
  if (needs === 'psi') return { preset: key, psi: number(fields, 'psi', 0, 500) };
  if (needs === 'gpm') return { preset: key, gpm: number(fields, 'gpm', 0, 10_000) };
  return { preset: key };
}

function readFault(value: unknown): Fault {
  const fields = record(value, 'fault');
  const id = name(fields, 'id');
  if (!/^[A-Za-z0-9-]{1,40}$/.test(id))
    throw new Refusal('id', `A fault's id is ${shown(id)}. Give up to 40 letters, digits, dashes.`);
  const atTick = fields.atTick;
  const base: { id: string; atTick?: number } = { id };
  if (atTick !== undefined) {
    base.atTick = number(fields, 'atTick', 0, 10_000_000);
    if (!Number.isInteger(base.atTick))
      throw new Refusal('atTick', `"atTick" is ${atTick}. Give a whole number.`);
  }
  const kind = fields.kind;
  switch (kind) {
    case 'hydrant weak':
      only(fields, ['id', 'kind', 'atTick', 'hydrant', 'share'], 'kind');
      return {
        ...base,
        kind,
        hydrant: name(fields, 'hydrant'),
        share: number(fields, 'share', 0.1, 1),
      };
    case 'clapper stuck':
    case 'clapper stuck open':
      only(fields, ['id', 'kind', 'atTick', 'valve'], 'kind');
      return { ...base, kind, valve: name(fields, 'valve') };
    case 'hose burst':
      only(fields, ['id', 'kind', 'atTick', 'hose'], 'kind');
      return { ...base, kind, hose: name(fields, 'hose') };
    case 'hose kinked':
      only(fields, ['id', 'kind', 'atTick', 'hose', 'factor'], 'kind');
      return {
        ...base,
        kind,
        hose: name(fields, 'hose'),
        factor: number(fields, 'factor', 1, 100),
      };
    case 'pump dies':
      only(fields, ['id', 'kind', 'atTick', 'rig'], 'kind');
      return { ...base, kind, rig: name(fields, 'rig') };
    case 'wrong port':
      only(fields, ['id', 'kind', 'atTick', 'hose', 'end', 'port'], 'kind');
      return {
        ...base,
        kind,
        hose: name(fields, 'hose'),
        end: oneOf(fields, 'end', ['from', 'to']),
        port: name(fields, 'port'),
      };
    case 'line called':
      only(fields, ['id', 'kind', 'atTick', 'nozzle'], 'kind');
      return { ...base, kind, nozzle: name(fields, 'nozzle') };
    default:
      throw new Refusal(
        'kind',
        `A fault's kind is ${shown(kind)}. Give one of: hydrant weak, clapper stuck, clapper stuck open, hose burst, hose kinked, pump dies, wrong port, line called.`,
      );
  }
}

function shown(value: unknown): string {
  if (typeof value === 'string') return `"${echoed(value)}"`;
  if (value === null || typeof value !== 'object') return String(value);
  return Array.isArray(value) ? 'a list' : 'an object';
}

/** The beginning of what was sent, as it may stand in an answer that is kept. */
function echoed(text: string): string {
  return [...text.slice(0, 40)].map((one) => (isPlainText(one) ? one : '?')).join('');
}

/** @throws Refusal where a text is not plain */
function plain(field: string, value: string): string {
  if (isPlainText(value)) return value;
  throw new Refusal(
    field,
    `"${field}" holds a line break, a control character or a mark of direction. Give plain text on one line.`,
  );
}

function record(value: unknown, field: string): Fields {
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    throw new Refusal(field, `"${field}" is ${shown(value)}. Give an object.`);
  return value as Fields;
}

function only(fields: Fields, known: readonly string[], tag?: string): void {
  const extra = Object.keys(fields).find(
    (key) => key !== 'do' && key !== tag && !known.includes(key),
  );
  if (extra !== undefined) {
    const allowed = known.length > 0 ? `its fields are: ${known.join(', ')}` : 'it has no fields';
    throw new Refusal(echoed(extra), `"${echoed(extra)}" is not known here; ${allowed}.`);
  }
}

function name(fields: Fields, field: string): string {
  const value = fields[field];
  if (typeof value !== 'string' || value.length === 0 || value.length > mostNameCharacters)
    throw new Refusal(
      field,
      `"${field}" is ${shown(value)}. Give a name of 1 to ${mostNameCharacters} characters.`,
    );
  return plain(field, value);
}

function text(fields: Fields, field: string): string {
  const value = fields[field];
  const trimmed = typeof value === 'string' ? value.trim() : '';
  if (trimmed.length === 0 || trimmed.length > mostRadioCharacters)
    throw new Refusal(
      field,
      `"${field}" has ${trimmed.length} characters. Give text of 1 to ${mostRadioCharacters}.`,
    );
  return plain(field, trimmed);
}

function number(fields: Fields, field: string, least: number, most: number): number {
  const value = fields[field];
  if (typeof value !== 'number' || !(value >= least && value <= most))
    throw new Refusal(
      field,
      `"${field}" is ${shown(value)}. Give a number from ${least} to ${most}.`,
    );
  // −0 would be written as 0 and read back as another number.
  return value + 0;
}

function flag(fields: Fields, field: string): boolean {
  const value = fields[field];
  if (typeof value !== 'boolean')
    throw new Refusal(field, `"${field}" is ${shown(value)}. Give true or false.`);
  return value;
}

function oneOf<T extends string>(fields: Fields, field: string, words: readonly T[]): T {
  const value = fields[field];
  const word = words.find((one) => one === value);
  if (word === undefined)
    throw new Refusal(field, `"${field}" is ${shown(value)}. Give one of: ${words.join(', ')}.`);
  return word;
}
