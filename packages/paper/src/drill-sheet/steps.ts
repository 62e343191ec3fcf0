/** The steps of an evolution by role, from how its pieces are joined. */
import { type Duty, nameOf, type Plan, type Rig } from '@plugside/fireground';
import { attackSteps, besideSteps } from './attack-steps.ts';
import type { DrillRole, DrillStep } from './data.ts';
import { deviceRoles } from './device-steps.ts';
import { layOfDuty, wholeDuty } from './duty-steps.ts';
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
  const fire = fireEngines(telling, scene);
  const told = [...pumps, ...fire];
  const others = duties.filter(({ rigName }) => told.every(({ who }) => who !== rigName));
  const dutyOf = (name: string) => duties.find(({ rigName }) => rigName === name);
  return [
    { role: 'Officer', who: 'water supply', steps: officer(telling) },
    ...told.map((role) => ({
      ...role,
      steps: [...layOfDuty(dutyOf(role.who)), ...aerial(role), ...role.steps],
    })),
    ...others.map((duty): DrillRole => {
      const who = duty.rigName;
      const role = isAerial(who) ? 'Aerial' : 'Other rig';
      return { role, who, steps: [...wholeDuty(duty), ...aerial({ who }), sayDone] };
    }),
    ...deviceRoles(telling),
  ];
}

/** Engines at the fire beside the scene's rig, each with the lines that end at it. */
function fireEngines(telling: Telling, scene: Rig): DrillRole[] {
  const { plan } = telling;
  return (plan.sceneEngines ?? [])
    .filter(({ name, lines }) => name !== nameOf(scene) && lines !== undefined)
    .map(({ name }) => ({
      role: 'Engine at the fire',
      who: name,
      steps: besideSteps(telling, scene, name),
    }));
}

const sayDone: DrillStep = {
  text: 'Say each part done on the radio; then stand by for the officer.',
};

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

function officer(telling: Telling): DrillStep[] {
  const { plan } = telling;
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
      text: `Order water when both ends say ready. ${wantedWords(telling)}`,
    },
    { text: 'Ask each operator for intake and discharge pressure; write them down.' },
    { text: `End it from the fire: nozzles, then pumps down slowly${ends}.` },
  ];
}

/** "Wanted at the scene: 1,000 gpm."; what comes beside it where that is less. */
function wantedWords({ plan, figures, comesGpm }: Telling): string {
  const wantedGpm = plan.demandGpm ?? 0;
  const wanted = figures.full(wantedGpm, 'flow');
  return comesGpm !== undefined && comesGpm < wantedGpm - 0.5
    ? `At the scene there will be ${figures.full(comesGpm, 'flow')}; ${wanted} is wanted.`
    : `Wanted at the scene: ${wanted}.`;
}

function endOf({ hydrants }: Plan): string {
  return hydrants.length > 0 ? ', then hydrants, slowly' : ', the one at the water last';
}
