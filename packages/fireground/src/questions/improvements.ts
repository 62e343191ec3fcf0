/** What would raise the answer next, each change computed, not guessed. */
import { hoseCatalogue } from '../catalogue/hose.ts';
import { pumpRatingsGpm } from '../catalogue/pumps.ts';
import { nextId } from '../patterns/attack-lines.ts';
import { newLine, newRig } from '../patterns/pieces.ts';
import { sideSuctionLines } from '../patterns/side-suction-lines.ts';
import type { HoseSize, Plan } from '../plan/plan.ts';
import { nameOf, pieceOf } from '../plan/ports.ts';
import { formatHoseSize } from '../units/hose-size.ts';
import type { Improvement } from './answers.ts';
import { mainLay, withLine } from './main-lay.ts';
import { type MostWaterOptions, mostWater } from './most-water.ts';
import { SupplySearch } from './supply-search.ts';

/** A gain under this [gpm] is not worth a crew's time. Ours. */
const WORTH_GPM = 5;

const EFFORTS: readonly Improvement['effort'][] = [
  'hose at the hydrant',
  'hose on the lay',
  'another engine',
];

interface Change {
  change: string;
  effort: Improvement['effort'];
  plan: Plan;
}

/**
 * Changes to a plan that bring more water: the least effort first, then the greatest gain.
 * @returns those worth at least 5 gpm, at most six, with what binds after each
 * @throws NetworkError where the plan itself cannot be solved
 */
export function improvements(plan: Plan, options: MostWaterOptions = {}): Improvement[] {
  const now = new SupplySearch(plan).greatestGpm();
  const found: (Change & { flowGpm: number })[] = [];
  for (const change of [...suctionChanges(plan), ...layChanges(plan), ...pumpChanges(plan)]) {
    const flowGpm = new SupplySearch(change.plan).greatestGpm();
    if (flowGpm - now >= WORTH_GPM) found.push({ ...change, flowGpm });
  }
  found.sort(
    (one, two) =>
      EFFORTS.indexOf(one.effort) - EFFORTS.indexOf(two.effort) || two.flowGpm - one.flowGpm,
  );
  return found.slice(0, 6).map(({ change, effort, plan: changed, flowGpm }) => ({
    change,
    effort,
    plan: changed,
    flowGpm,
    gainGpm: flowGpm - now,
    thenBinding: mostWater(changed, options).binding,
  }));
}

function suctionChanges(plan: Plan): Change[] {
  const sets: { hoses: HoseSize[]; change: string }[] = [
    { hoses: ['3'], change: 'a 3 in line from a side outlet' },
    { hoses: ['5'], change: 'a 5 in line with an adapter from a side outlet' },
    { hoses: ['3', '5'], change: 'a 3 in and a 5 in line from the side outlets' },
  ];
  const changes: Change[] = [];
  for (const { hoses, change } of sets) {
    try {
      changes.push({
        change,
        effort: 'hose at the hydrant',
        plan: sideSuctionLines(
          plan,
          hoses.map((hose) => ({ hose })),
        ),
      });
    } catch (error) {
      // No booster, or no outlet or intake left: not a change this plan can make.
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return changes;
}

function layChanges(plan: Plan): Change[] {
  const lay = mainLay(plan);
  if (!lay) return [];
  const changes: Change[] = [
    {
      change: `a second ${formatHoseSize(lay.hose)} line beside the lay`,
      effort: 'hose on the lay',
      plan: withLine(plan, lay.id, { count: lay.count + 1 }),
    },
  ];
  const diameter = hoseCatalogue[lay.hose].diameterIn;
  if (diameter < 5) {
    changes.push({
      change: `5 in hose for the lay instead of ${formatHoseSize(lay.hose)}`,
      effort: 'hose on the lay',
      plan: withLine(plan, lay.id, {
        hose: '5',
        coefficient: undefined,
        coefficientOrigin: undefined,
      }),
    });
  }
  if (lay.lengthFt >= 600) changes.push(relayPump(plan));
  return changes;
}

function relayPump(plan: Plan): Change {
  const lay = mainLay(plan)!;
  const scene = plan.rigs.find((rig) => rig.id === plan.scene)!;
  const id = nextId(plan, 'R');
  const from = pieceOf(plan, lay.from.slice(0, lay.from.lastIndexOf('.')));
  const fromFt = from && 'elevationFt' in from ? from.elevationFt : 0;
  const pump = newRig(id, 'relay', { elevationFt: (fromFt + scene.elevationFt) / 2 });
  const half = { ...lay, lengthFt: lay.lengthFt / 2, terrain: undefined };
  return {
    change: 'a relay engine halfway along the lay',
    effort: 'another engine',
    plan: {
      ...plan,
      rigs: [...plan.rigs, pump],
      lines: [
        ...plan.lines.map((line) => (line.id === lay.id ? { ...half, to: `${id}.intake1` } : line)),
        { ...half, id: nextId(plan, 'lay'), from: `${id}.discharge1`, to: lay.to },
      ],
    },
  };
}

function pumpChanges(plan: Plan): Change[] {
  const changes: Change[] = [];
  const boosters = plan.rigs.filter((rig) => rig.role === 'booster');
  for (const rig of boosters) {
    if (rig.setting.mode === 'idle') continue;
    const next = pumpRatingsGpm.find((rating) => rating > rig.ratedGpm);
    if (next === undefined || rig.capability) continue;
    changes.push({
      change: `a ${next.toLocaleString('en-US')} gpm pump in place of ${nameOf(rig)}`,
      effort: 'another engine',
      plan: {
        ...plan,
        rigs: plan.rigs.map((other) =>
          other.id === rig.id ? { ...other, ratedGpm: next } : other,
        ),
      },
    });
  }
  if (boosters.length === 0) {
    const boost = boosterOnLay(plan);
    if (boost) changes.push(boost);
  }
  const standing = boosters.find((rig) => rig.setting.mode === 'idle');
  if (standing) {
    changes.push({
      change: `${nameOf(standing)} boosting at the hydrant`,
      effort: 'hose at the hydrant',
      plan: {
        ...plan,
        rigs: plan.rigs.map((rig) =>
          rig.id === standing.id ? { ...rig, setting: { mode: 'governed', pdpPsi: 120 } } : rig,
        ),
        appliances: plan.appliances.map((a) =>
          a.kind === 'assist-valve' ? { ...a, handle: 'boost' } : a,
        ),
        lines: plan.lines.map((line) =>
          line.valve === 'shut' &&
          (line.to.startsWith(`${standing.id}.`) || line.from.startsWith(`${standing.id}.`))
            ? { ...line, valve: 'open' }
            : line,
        ),
      },
    });
  }
  return changes;
}

/** A booster at the hydrant where the lay leaves from it or from its assist valve. */
function boosterOnLay(plan: Plan): Change | undefined {
  const lay = mainLay(plan);
  if (!lay) return undefined;
  const from = pieceOf(plan, lay.from.slice(0, lay.from.lastIndexOf('.')));
  if (!from || !('elevationFt' in from)) return undefined;
  const id = nextId(plan, 'B');
  const rig = newRig(id, 'booster', { elevationFt: from.elevationFt, pdpPsi: 120 });
  const change = 'a booster at the hydrant';
  if ('kind' in from && from.kind === 'assist-valve') {
    return {
      change,
      effort: 'another engine',
      plan: {
        ...plan,
        rigs: [rig, ...plan.rigs],
        appliances: plan.appliances.map((a) =>
          a.id === from.id ? { ...from, handle: 'boost' } : a,
        ),
        lines: [
          newLine(nextId(plan, 'suction'), `${from.id}.pump-suction`, `${id}.intake1`, '5', 25),
          newLine(
            nextId(plan, 'discharge'),
            `${id}.discharge1`,
            `${from.id}.pump-discharge`,
            '5',
            25,
          ),
          ...plan.lines,
        ],
      },
    };
  }
  if (!('testGpm' in from)) return undefined;
  return {
    change,
    effort: 'another engine',
    plan: {
      ...plan,
      rigs: [rig, ...plan.rigs],
      lines: [
        newLine(nextId(plan, 'suction'), lay.from, `${id}.intake1`, '5', 25),
        ...plan.lines.map((line) =>
          line.id === lay.id ? { ...line, from: `${id}.discharge1` } : line,
        ),
      ],
    },
  };
}
