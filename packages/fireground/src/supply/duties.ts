/** What each rig does in a way, as crews say it: its steps in the same words. */
import type { Arrangement } from './arrangement.ts';
import type { Duty } from './choice.ts';
import { rigName } from './crew.ts';
import { listed } from './leg.ts';
import type { RespondingRig } from './situation.ts';
import type { RigTask } from './time-to-water.ts';

/**
 * One duty for each rig of an arrangement, in order of arrival.
 * @param tasks the way's own, in order of time
 */
export function dutiesOf(
  { rigs, atFire = [] }: Pick<Arrangement, 'rigs'> & Partial<Pick<Arrangement, 'atFire'>>,
  attack: RespondingRig,
  tasks: readonly RigTask[],
): Duty[] {
  return rigs.map((rig) => {
    const words = wordsOf(tasks.filter((task) => task.rig === rig));
    if (rig === attack || atFire.some((engine) => engine.rig === rig)) {
      if (!words.some((one) => one.startsWith('lays'))) words.unshift('goes to the fire');
      words.push(rig === attack ? 'attacks' : 'pumps at the fire');
    }
    return { rigId: rig.rig.id, rigName: rigName(rig), duty: listed(words) };
  });
}

/** Supplies coupled one after another are told together. */
function wordsOf(tasks: readonly RigTask[]): string[] {
  const sources = tasks.flatMap(({ supplyFrom }) => supplyFrom ?? []);
  const [first] = tasks.filter(({ supplyFrom }) => supplyFrom !== undefined);
  return tasks.flatMap((task) => {
    if (task.supplyFrom === undefined || sources.length < 2) return [task.words];
    return task === first ? [`connects the supplies from ${listed(sources)} to its intakes`] : [];
  });
}
