/** The scene that a request asks for. */
import { randomInt } from 'node:crypto';
import type { z } from '@hono/zod-openapi';
import {
  type DrillScene,
  evolutionOf,
  evolutions,
  mayDo,
  readAction,
  sceneFromPlan,
} from '@plugside/drill';
import { type Plan, readPlan } from '@plugside/fireground';
import type { RecordStore } from '@plugside/records';
import { ProblemError } from '../problem.ts';
import type { NewDrill } from './drill-rooms.ts';
import type { newDrillSchema } from './drill-schema.ts';
import { notAccepted, refused } from './refused.ts';
import { sceneOnHydrant, withLinesOnRecord } from './scene-on-record.ts';

/** One drill must not take the time of all. */
const MOST_HOSES = 100;

/** @throws ProblemError 422 naming the field, the value and the remedy */
export async function newDrillFrom(
  store: RecordStore,
  asked: z.infer<typeof newDrillSchema>,
): Promise<NewDrill> {
  const scene = await sceneOf(store, asked);
  if (asked.title !== undefined) scene.title = asked.title;
  const given = Object.entries(asked.benchmarks ?? {}).filter(([, value]) => value !== undefined);
  scene.benchmarks = { ...scene.benchmarks, ...Object.fromEntries(given) };
  if (scene.hoses.length > MOST_HOSES) {
    const remedy = 'Drill a part of it.';
    throw refused('plan', scene.hoses.length, `${MOST_HOSES} lines of hose at most`, remedy);
  }
  addFaults(scene, asked.faults ?? []);
  return {
    scene,
    seed: asked.seed ?? randomInt(2 ** 32),
    ...(asked.crew !== undefined && { crew: asked.crew }),
    ...(asked.guided !== undefined && { guided: asked.guided }),
  };
}

async function sceneOf(
  store: RecordStore,
  { evolution, hydrantId, plan, planId, start: given, ...asked }: z.infer<typeof newDrillSchema>,
): Promise<DrillScene> {
  const sources = Object.entries({ evolution, plan, planId }).flatMap(([key, value]) =>
    value === undefined ? [] : [key],
  );
  if (sources.length !== 1) {
    const given =
      sources.length === 0 ? 'none of them is given' : `${sources.join(' and ')} are given`;
    const allowed = 'exactly one of evolution, plan and planId';
    throw notAccepted({
      path: sources[0] ?? 'evolution',
      allowed,
      message: `evolution, plan and planId: ${given}; allowed: ${allowed}.`,
      remedy: sources.length === 0 ? 'Give one of them.' : 'Leave out all but one.',
    });
  }
  if (evolution !== undefined) {
    const known = evolutionOf(evolution);
    if (!known) {
      const keys = evolutions.map(({ key }) => key).join(', ');
      throw refused('evolution', evolution, keys, 'Give the key of one of them.');
    }
    if (given !== undefined) {
      const remedy = 'Leave it out, or drill a plan.';
      throw refused('start', given, 'nothing beside an evolution, which has its own', remedy);
    }
    const scene = known.scene();
    return hydrantId === undefined ? scene : sceneOnHydrant(store, scene, hydrantId);
  }
  if (hydrantId !== undefined) {
    const remedy = 'Leave it out, or give an evolution.';
    throw refused('hydrantId', hydrantId, 'nothing beside a plan, which has its own', remedy);
  }
  const start = given ?? 'hose connected';
  if (plan !== undefined) return fromPlan(store, planIn(plan, 'plan'), start, asked.title);
  const record = await store.get('plans', planId ?? '');
  if (!record) {
    throw refused(
      'planId',
      planId,
      'the id of a plan among the records',
      'Choose one that is there.',
    );
  }
  return fromPlan(store, planIn(record.text, 'planId'), start, asked.title ?? record.name);
}

function planIn(text: string, field: string): Plan {
  const read = readPlan(text);
  if (read.ok) return read.plan;
  const issues = read.issues.slice(0, 20).map((issue) => ({
    path: `${field}:${issue.line}`,
    value: undefined,
    allowed: 'a sound plan',
    message: issue.message,
    remedy: 'Mend the plan and send it again.',
  }));
  throw new ProblemError({
    status: 422,
    title: 'Not accepted',
    detail: `The plan cannot be drilled: ${issues.map(({ message }) => message).join(' ')}`,
    extra: { issues },
  });
}

async function fromPlan(
  store: RecordStore,
  laid: Plan,
  start: DrillScene['start'],
  title: string | undefined,
): Promise<DrillScene> {
  const { plan, spareNozzle } = await withLinesOnRecord(store, laid);
  try {
    return sceneFromPlan(plan, {
      start,
      ...(title !== undefined && { title }),
      ...(spareNozzle !== undefined && { spareNozzle }),
    });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw refused('plan', undefined, 'a plan that can be drilled', error.message);
  }
}

/** As an instructor would arm them: the same that is understood and allowed there. */
function addFaults(scene: DrillScene, given: readonly unknown[]): void {
  given.forEach((fault, at) => {
    const path = `faults[${at}]`;
    const read = readAction({ do: 'arm fault', fault });
    if ('problem' in read) {
      throw badFault(`${path}.${read.problem.field}`, read.problem.message);
    }
    const problem = mayDo('instructor', scene, read.action);
    if (problem) throw badFault(`${path}.${problem.field}`, problem.message);
    if (read.action.do !== 'arm fault') return;
    const { id } = read.action.fault;
    if (scene.faults.some((one) => one.id === id)) {
      throw refused(`${path}.id`, id, 'each id once', 'Give another id.');
    }
    scene.faults.push(read.action.fault);
  });
}

function badFault(path: string, why: string): ProblemError {
  const remedy = 'Mend the fault, or leave it out.';
  return notAccepted({ path, allowed: 'as an instructor may arm it', message: why, remedy });
}
