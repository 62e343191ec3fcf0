/** Steps that many evolutions share; the words that differ are given. */
import type { Condition, DrillStep } from '../drill-step.ts';
import type { RadioPresetKey } from '../radio.ts';
import type { PlayedRole } from '../role.ts';

type Words = Pick<DrillStep, 'what' | 'why' | 'water' | 'hazard' | 'after'>;

/** A hose end onto a port. */
export function coupleStep(
  id: string,
  role: PlayedRole,
  hose: string,
  end: 'from' | 'to',
  port: string,
  words: Words,
): DrillStep {
  return {
    id,
    role,
    ...words,
    done: { is: 'coupled', hose, end, port },
    how: [{ do: 'couple', hose, end, port }],
  };
}

/** A valve opened all the way, in so many seconds. */
export function openStep(
  id: string,
  role: PlayedRole,
  valve: string,
  overS: number,
  words: Words,
): DrillStep {
  return {
    id,
    role,
    ...words,
    done: { is: 'valve at least', valve, opening: 0.99 },
    how: [{ do: 'set valve', valve, opening: 1, overS }],
  };
}

/** A valve shut, in so many seconds, once something else holds too: it may have begun shut. */
export function shutStep(
  id: string,
  role: PlayedRole,
  valve: string,
  overS: number,
  once: Condition,
  words: Words,
): DrillStep {
  return {
    id,
    role,
    ...words,
    done: { is: 'all', of: [once, { is: 'valve at most', valve, opening: 0.01 }] },
    how: [{ do: 'set valve', valve, opening: 0, overS }],
  };
}

/** A message. */
export function sayStep(
  id: string,
  role: PlayedRole,
  preset: RadioPresetKey,
  words: Words,
  psi?: number,
  /** The step that it tells of: said before that is done it does not count. */
  since?: string,
): DrillStep {
  return {
    id,
    role,
    ...words,
    done: { is: 'said', role, preset, ...(since !== undefined && { since }) },
    how: [{ do: 'radio', message: psi === undefined ? { preset } : { preset, psi } }],
  };
}

/** A pump in gear. */
export function gearStep(id: string, role: PlayedRole, rig: string, words: Words): DrillStep {
  return {
    id,
    role,
    ...words,
    done: { is: 'in gear', rig, inGear: true },
    how: [{ do: 'pump in gear', rig, inGear: true }],
  };
}

/** A governor raised until the discharge stands there. */
export function pressureStep(
  id: string,
  role: PlayedRole,
  rig: string,
  psi: number,
  words: Words,
): DrillStep {
  return {
    id,
    role,
    ...words,
    done: {
      is: 'all',
      of: [
        { is: 'governor set', rig, psi },
        { is: 'discharge at least', rig, psi: psi - 1 },
      ],
    },
    how: [{ do: 'set governor', rig, pdpPsi: psi }],
  };
}

/** A nozzle opened slowly, until it flows. */
export function nozzleStep(id: string, nozzle: string, words: Words): DrillStep {
  return {
    id,
    role: 'nozzle crew',
    ...words,
    done: { is: 'nozzle flows', nozzle, share: 0.8 },
    how: [{ do: 'set valve', valve: `${nozzle}.bale`, opening: 1, overS: 3 }],
  };
}

/** A hydrant run clear with nothing on, and shut again, before hose goes on its outlet. */
export function flushSteps(stem: string, role: PlayedRole, hydrant: string): DrillStep[] {
  const valve = `${hydrant}.stem`;
  const flushed: Condition = { is: 'flushed', hydrant };
  return [
    {
      id: `${stem} flushed`,
      role,
      what: 'Take the cap off and open the hydrant a few turns, until it runs clear.',
      why: 'Stones and rust that lie in a hydrant end in the pump, or in a nozzle.',
      water: 'It runs out on the ground; that is not shown here.',
      hazard: 'Stand beside the outlet, not in front of it; the other caps tight.',
      done: flushed,
      after: [],
      how: [{ do: 'set valve', valve, opening: 0.25, overS: 3 }],
    },
    shutStep(`${stem} flushing shut`, role, valve, 5, flushed, {
      what: 'Shut the hydrant again.',
      why: 'No hose goes on while water comes out.',
      water: 'It stops.',
    }),
  ];
}

/** The bleeder in front of an intake, before water comes. */
export function bleederStep(
  id: string,
  role: PlayedRole,
  intake: string,
  more: Pick<DrillStep, 'after'> = {},
): DrillStep {
  return openStep(id, role, `${intake}.bleeder`, 1, {
    what: 'Open the bleeder at the intake that the hose is on.',
    why: 'The hose is full of air: let it out here, not through the pump.',
    water: 'Air leaves ahead of the water.',
    ...more,
  });
}

/** Water up to the intake: watched, the bleeder shut, the intake opened. */
export function takeWaterSteps(
  stem: string,
  role: PlayedRole,
  hose: string,
  intake: string,
  /** The steps that opened the bleeder and the source. */
  opened: { bleeder: string; source: string },
): DrillStep[] {
  const full: Condition = { is: 'hose full', hose };
  const bleeder = `${intake}.bleeder`;
  return [
    {
      id: `${stem} full`,
      role,
      what: 'Watch the hose fill until water stands at the bleeder.',
      why: 'Water without spitting means that the air is out.',
      water: 'It pushes the air out ahead of it and then stands at the source’s pressure.',
      done: full,
      after: [opened.bleeder],
      how: [],
    },
    {
      id: `${stem} bleeder shut`,
      role,
      what: 'Shut the bleeder.',
      why: 'From here on it only wastes water.',
      water: 'The hose stands full and hard.',
      done: { is: 'all', of: [full, { is: 'valve at most', valve: bleeder, opening: 0.01 }] },
      after: [`${stem} full`, opened.source],
      how: [{ do: 'set valve', valve: bleeder, opening: 0, overS: 1 }],
    },
    openStep(`${stem} intake open`, role, intake, 6, {
      what: 'Open the intake slowly.',
      why: 'Now the pump takes solid water.',
      water: 'The source’s pressure reaches the pump.',
      hazard: 'Slowly: the pressure behind it comes on top of what the pump holds.',
    }),
  ];
}
