/** The steps of an evolution by role, from how its pieces are joined. */
import { type Duty, nameOf, type Plan } from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import { capital } from '../words.ts';
import { attackSteps } from './attack-steps.ts';
import type { DrillRole, DrillStep } from './data.ts';
import { deviceRoles } from './device-steps.ts';
import { listed, type Telling } from './joints.ts';
import { supplyRole, supplySteps } from './supply-steps.ts';

/** Every role that the plan has work for, in the order in which water reaches them. */
export function rolesOf(telling: Telling, duties: readonly Duty[] = []): DrillRole[] {
  const { plan } = telling;
  const before = plan.rigs.filter(({ id }) => id !== plan.scene);
  const scene = plan.rigs.find(({ id }) => id === plan.scene)!;
  const pumps = [
    ...before.map(
      (rig): DrillRole => ({
        role: supplyRole(plan, rig),
        who: nameOf(rig),
        steps: supplySteps(telling, rig),
      }),
    ),
    { role: 'Attack engine' as const, who: nameOf(scene), steps: attackSteps(telling, scene) },
  ];
  const others = duties.filter(({ rigName }) => pumps.every(({ who }) => who !== rigName));
  return [
    { role: 'Officer', who: 'water supply', steps: officer(telling) },
    ...pumps.map((role) => ({
      ...role,
      steps: [...partOf(role, duties), ...aerial(role), ...role.steps],
    })),
    ...others.map((duty): DrillRole => {
      const role: DrillRole = {
        role: isAerial(duty.rigName) ? 'Aerial' : 'Other rig',
        who: duty.rigName,
        steps: [],
      };
      return { ...role, steps: [...partOf(role, duties), ...aerial(role), sayDone] };
    }),
    ...deviceRoles(telling),
  ];
}

const sayDone: DrillStep = {
  text: 'Say each part done on the radio; then stand by for the officer.',
};

/** The rig's part as the supply was chosen: who lays is told there. */
function partOf({ who }: Pick<DrillRole, 'who'>, duties: readonly Duty[]): DrillStep[] {
  const own = duties.find(({ rigName }) => rigName === who);
  if (!own) return [];
  const lays = /\blays\b/.test(own.duty);
  return [
    {
      text: `${capital(inTens(own.duty))}.`,
      ...(lays && {
        hazard: 'Stand clear of hose that pays out: a length that snags breaks legs.',
      }),
    },
  ];
}

/** Told by its name: a plan knows rigs by their pumps alone. */
function isAerial(name: string): boolean {
  return /\b(aerial|ladder|tower|platform|truck|quint|snorkel)\b/i.test(name);
}

function aerial({ who }: Pick<DrillRole, 'who'>): DrillStep[] {
  if (!isAerial(who)) return [];
  return [
    {
      text: 'Aerial: take the place that the building asks for before hose bars it; jacks out on firm ground, wires looked for.',
      hazard:
        'Power lines: keep the distance that your orders give. Nobody touches the rig while it is near one.',
    },
  ];
}

function officer({ plan, figures }: Telling): DrillStep[] {
  const sources = [...plan.hydrants, ...plan.drafts].map(nameOf);
  const ends = endOf(plan);
  return [
    { text: `Walk the ground; name the water: ${listed(sources)}.` },
    {
      text: 'Give each crew its part and a radio word for water, for more, and for stop.',
      hazard: 'Anyone may call stop. Everyone stops.',
    },
    {
      text: 'Keep traffic and people off the lay before it is charged.',
      hazard: 'Hose that fills moves; a coupling that parts can kill.',
    },
    {
      text: `Order water when both ends say ready. Wanted at the scene: ${figures.full(plan.demandGpm ?? 0, 'flow')}.`,
    },
    { text: 'Ask each operator for intake and discharge pressure; write them down.' },
    { text: `End it from the fire: nozzles, then pumps down slowly${ends}.` },
  ];
}

function endOf({ hydrants }: Plan): string {
  return hydrants.length > 0 ? ', then hydrants, slowly' : ', the one at the water last';
}
