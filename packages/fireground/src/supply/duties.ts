/** What each rig does in a way, as crews say it. */
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { Arrangement, LegWork } from './arrangement.ts';
import type { Duty } from './choice.ts';
import { rigName } from './crew.ts';
import type { Take } from './hose-pool.ts';
import { listed, sourceName } from './leg.ts';
import type { RespondingRig } from './situation.ts';
import { numberWord } from './title.ts';

/** One duty for each rig of an arrangement, in order of arrival. */
export function dutiesOf(
  arrangement: Arrangement,
  attack: RespondingRig,
  units: UnitSystem,
): Duty[] {
  return arrangement.rigs.map((rig) => {
    const tasks = arrangement.work.flatMap((work) => tasksOf(work, rig, attack, units));
    if (rig === attack) tasks.push('goes to the fire and attacks');
    return { rigId: rig.rig.id, rigName: rigName(rig), duty: tasks.join(', ') };
  });
}

function tasksOf(
  { leg, lay, suction }: LegWork,
  rig: RespondingRig,
  attack: RespondingRig,
  units: UnitSystem,
): string[] {
  const say = sayIn(units);
  const from = sourceName(leg);
  const tasks: string[] = [];
  const at = leg.pumps.indexOf(rig);
  const own = lay.filter((take) => take.rig === rig);
  if (own.length > 0) {
    const hose = alikeTogether(own).map(
      ({ hose: size, lengthFt, count }) =>
        `${count > 1 ? `${numberWord(count)} lines of ` : ''}${say.full(lengthFt, 'length')} of ${formatHoseSize(size, units)}`,
    );
    const where = at === 0 ? `to ${from}` : `from ${from}`;
    tasks.push(`lays ${listed(hose)} ${where}`);
  }
  if (at < 0 && own.length > 0 && lay[0]?.rig === rig) tasks.push('connects');
  if (at < 0 && own.length > 0 && rig !== attack && lay[0]?.rig !== rig)
    tasks.push('couples to the lay');
  if (at > 0)
    tasks.push(`pumps in the line ${say.full(leg.stretches[at]!.fromFt, 'length')} from ${from}`);
  if (at === 0) {
    const lines = suction.map(({ hose: size }) => formatHoseSize(size, units));
    const extra = lines.length > 0 ? `, ${listed(lines)} more from the side outlets` : '';
    if (leg.source.kind === 'water') tasks.push(`drafts at ${from} and pumps the line`);
    else if (leg.valve) tasks.push(`hooks up to the assist valve at ${from}${extra} and boosts`);
    else tasks.push(`hooks up at ${from}${extra} and pumps the line`);
  }
  return tasks;
}

function alikeTogether(takes: readonly Take[]): (Take & { count: number })[] {
  const groups = new Map<string, Take & { count: number }>();
  for (const take of takes) {
    const key = `${take.hose}/${take.lengthFt}`;
    groups.set(key, { ...take, count: (groups.get(key)?.count ?? 0) + 1 });
  }
  return [...groups.values()];
}
