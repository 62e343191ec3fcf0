import { shuttleDefaults } from '../shuttle/shuttle-defaults.ts';
import type { SupplyWay } from '../supply/choice.ts';
import { rigName } from '../supply/crew.ts';
import type { Situation } from '../supply/situation.ts';
import { type TaskTimes, usualTaskTimes } from '../supply/task-times.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { usualTimesOrigin } from './lay-tasks.ts';
import { supplyOfWay } from './supply-of-way.ts';
import { timeline } from './timeline.ts';
import type { TimelineAnswer } from './timeline-answer.ts';
import type { NurseTank, TimelineInput } from './timeline-input.ts';

/**
 * A tender's pump draws this from its own tank at least [gpm]: Driver/operator ch. 14 "by the
 * numbers", until four fifths are out.
 */
const NURSE_GPM = 500;

/** What is played past the last of the supply and of the flow [min]. */
const AFTER_MIN = 5;
/** A tank that runs dry within this past the last of the supply is shown so far [min]. */
const DRY_SHOWN_MIN = 30;
/** Looked ahead at most [min]. */
const MOST_MIN = 240;

export interface TanksOfWay {
  /** What the first lines take [gpm]. */
  flowGpm: number;
  /** From the attack engine at the fire to water out of its first line [min]. */
  firstWaterMin: number;
}

/**
 * The attack engine's tank, and those of tenders that stand by, against a way's supply. The lines
 * flow once the engine is at the fire, its own lay done, and the first line is ready; each source
 * counts as it comes; a tender that no part of the way needs gives its tank once it is coupled.
 * @param way one of `chooseSupply`'s
 * @param situation the one that it was chosen for
 * @param given flow [gpm, above 0 to 10,000], time to first water [min, 0 to 60]
 * @param options `times` of tasks; common practice where left out. `units` for the sentences
 * @returns the timeline; null where no rig of the way attacks
 * Valid: a nursing tender gives nine tenths of its tank, no more than 500 gpm at once.
 * Outside: throws QuantityError.
 * Source: the way's own parts and steps; 500 gpm, Driver/operator ch. 14 "by the numbers"; nine
 * tenths, water shuttle exam answers.
 */
export function tanksOfWay(
  way: Pick<SupplyWay, 'duties' | 'time' | 'mostGpm' | 'parts' | 'standBy'>,
  { rigs }: Pick<Situation, 'rigs'>,
  { flowGpm, firstWaterMin }: TanksOfWay,
  options: { units?: UnitSystem; times?: Readonly<TaskTimes> } = {},
): TimelineAnswer | null {
  const engines = rigs.filter(({ kind }) => kind === 'engine');
  const [attack] = [...engines].sort((one, two) => one.arrivesMin - two.arrivesMin);
  if (!attack || !way.duties.some(({ rigId }) => rigId === attack.rig.id)) return null;
  const times = options.times ?? usualTaskTimes;
  const atFireMin = way.time.atFireMin ?? attack.arrivesMin;
  const startMin = atFireMin + firstWaterMin;
  const supply = supplyOfWay(way);
  const nurseTanks = (way.standBy ?? []).flatMap(({ rigId }): NurseTank[] => {
    const tender = rigs.find(({ rig }) => rig.id === rigId);
    if (!tender) return [];
    const { arrivesMin } = tender;
    return [
      {
        rigId,
        name: rigName(tender),
        gallons: shuttleDefaults.usableShare * (tender.rig.tankGal ?? 0),
        arrivesMin,
        connectMin: Math.max(arrivesMin, atFireMin) + times.hookUpPumpMin - arrivesMin,
        connectOrigin: usualTimesOrigin,
        flowGpm: NURSE_GPM,
      },
    ];
  });
  const lastMin = Math.max(
    startMin,
    supply.atMin ?? 0,
    ...nurseTanks.map(({ arrivesMin, connectMin }) => arrivesMin + connectMin),
  );
  const input: TimelineInput = {
    attackFlow: [{ atMin: startMin, flowGpm }],
    attackTank: {
      rigId: attack.rig.id,
      name: rigName(attack),
      gallons: attack.rig.tankGal ?? 0,
    },
    nurseTanks,
    supply,
  };
  const { runsDryAtMin } = timeline({ ...input, untilMin: MOST_MIN });
  const shownMin = Math.max(1, Math.ceil(lastMin + AFTER_MIN));
  // Where the tank runs dry not long after, that is shown too.
  const dryMin = runsDryAtMin === null ? 0 : Math.ceil(runsDryAtMin + 1);
  const untilMin = Math.min(
    MOST_MIN,
    dryMin <= lastMin + DRY_SHOWN_MIN ? Math.max(shownMin, dryMin) : shownMin,
  );
  return timeline({ ...input, untilMin }, options.units ? { units: options.units } : {});
}
