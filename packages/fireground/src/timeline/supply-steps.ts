/** What a supply's sources give together, as they come. */
import type { ScheduledTask } from './schedule.ts';
import type { FlowStep, TimelineSupply } from './timeline-input.ts';

/** A trifle by which a supply may miss the lines' flow and still be there [gpm]. */
const TRIFLE_GPM = 0.01;

/**
 * All sources added up, in order of time.
 * @param supply sources with what each gives [gpm] from when [min]
 * @param tasks for a supply of one source, which gives all when the last of them ends
 * @returns steps [gpm, min]; empty without a supply
 * Source: flows add up.
 */
export function suppliedSteps(
  supply: TimelineSupply | undefined,
  tasks: readonly ScheduledTask[],
): FlowStep[] {
  if (!supply) return [];
  const { sources } = supply;
  if (!sources) {
    const atMin = supply.atMin ?? Math.max(0, ...tasks.map(({ endMin }) => endMin));
    return [{ atMin, flowGpm: supply.flowGpm }];
  }
  const gives = sources.map(() => 0);
  const changes = sources
    .flatMap(({ name, flow }, at) => flow.map((step) => ({ ...step, name, at })))
    .sort((one, two) => one.atMin - two.atMin);
  const steps: FlowStep[] = [];
  for (const { atMin, flowGpm, what, name, at } of changes) {
    gives[at] = flowGpm;
    const allGpm = gives.reduce((sum, gpm) => sum + gpm, 0);
    const words = what ?? name;
    const last = steps.at(-1);
    if (last && last.atMin === atMin) {
      steps[steps.length - 1] = { atMin, flowGpm: allGpm, what: `${last.what} and ${words}` };
    } else steps.push({ atMin, flowGpm: allGpm, what: words });
  }
  return steps;
}

/**
 * When the supply is there: from then on it gives all that the lines take, or, where it never does,
 * all that it ever gives.
 * @returns time [min]; null without a supply
 */
export function supplyThereMin(
  steps: readonly FlowStep[],
  attackFlow: readonly FlowStep[],
): number | null {
  const takenGpm = Math.max(0, ...attackFlow.map(({ flowGpm }) => flowGpm));
  const enoughGpm = Math.min(takenGpm, steps.at(-1)?.flowGpm ?? 0) - TRIFLE_GPM;
  const at = steps.findIndex((_, index) =>
    steps.slice(index).every(({ flowGpm }) => flowGpm >= enoughGpm),
  );
  return steps[at]?.atMin ?? null;
}
