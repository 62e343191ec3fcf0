import { QuantityError, requireWithin } from '@plugside/hydraulics';
import type { Origin } from '../plan/plan.ts';

/** One thing to be done before water comes. */
export interface SupplyTask {
  id: string;
  /** For people: "lays 900 ft of 5 in". */
  what: string;
  durationMin: number;
  /** Not before this [min]: a rig's arrival. */
  notBeforeMin?: number;
  /** Tasks to be done first, by id; left out: the one before it in the list. */
  after?: readonly string[];
  rigId?: string;
  /** Where its duration comes from. */
  origin?: Origin;
}

export interface ScheduledTask extends SupplyTask {
  startMin: number;
  endMin: number;
}

/**
 * When each task begins and ends: as soon as what it waits for is done and its rig is there.
 * @param tasks durations [min], in a list whose tasks wait only for earlier ones
 * @returns tasks with start and end [min], in the order given
 * Outside: throws QuantityError for a duration not from 0 to 240, an id used twice, or a task that
 * waits for one that does not come before it.
 * Source: the longest path through what waits for what.
 */
export function scheduleTasks(tasks: readonly SupplyTask[]): ScheduledTask[] {
  const endOf = new Map<string, number>();
  let previous: string | undefined;
  return tasks.map((task, at) => {
    const place = `tasks[${at}]`;
    const { id, durationMin, notBeforeMin = 0 } = task;
    requireWithin(`${place}.durationMin`, durationMin, [0, 240], 'min');
    requireWithin(`${place}.notBeforeMin`, notBeforeMin, [0, 240], 'min');
    if (endOf.has(id)) {
      throw new QuantityError({
        field: `${place}.id`,
        value: id,
        allowed: 'each id once',
        remedy: 'Give each task an id of its own.',
      });
    }
    const after = task.after ?? (previous === undefined ? [] : [previous]);
    let startMin = notBeforeMin;
    for (const first of after) {
      const end = endOf.get(first);
      if (end === undefined) {
        throw new QuantityError({
          field: `${place}.after`,
          value: first,
          allowed: 'ids of tasks that come before it in the list',
          remedy: 'Put the task after the ones that it waits for.',
        });
      }
      startMin = Math.max(startMin, end);
    }
    const endMin = startMin + durationMin;
    endOf.set(id, endMin);
    previous = id;
    return { ...task, startMin, endMin };
  });
}
