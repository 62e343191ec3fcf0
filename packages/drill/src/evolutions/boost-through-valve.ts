import { addAttackLines, boostedAtHydrant, deferral } from '@plugside/fireground';
import type { DrillStep } from '../drill-step.ts';
import { sceneFromPlan } from '../scene-from-plan.ts';
import { type Evolution, largeHoseCautions } from './evolution.ts';
import { gatedLineSteps } from './gated-line.ts';
import { withSpareLine } from './spare-line.ts';

const boostPsi = 120;
const attackPsi = 150;

/** 900 ft of 5 in, 35 ft uphill, from a middling hydrant; two lines flow, a third waits for the boost. */
const lines = addAttackLines(
  boostedAtHydrant({
    title: 'Boost through the assist valve',
    lay: { hose: '5', lengthFt: 900, riseFt: 35 },
    booster: { pdpPsi: boostPsi },
    attack: { pdpPsi: attackPsi },
    attackLines: [{}, {}],
  }),
  'A1',
  [{ hose: '2-1/2', lengthFt: 200, nozzle: { kind: 'fog', ratedGpm: 250, ratedPsi: 100 } }],
);

const { plan, spareNozzle } = withSpareLine(lines, 'A1');

const steps: DrillStep[] = [
  {
    id: 'suction on valve',
    role: 'hydrant operator',
    what: 'Couple the suction hose to the assist valve’s pump suction.',
    why: 'All hose goes on before any valve moves: the fire keeps its water meanwhile.',
    water: 'None yet: the handle keeps this port shut.',
    hazard: 'Twists out of the hose, couplings locked.',
    done: { is: 'coupled', hose: 'suction', end: 'from', port: 'V1.pump-suction' },
    after: [],
    how: [{ do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' }],
  },
  {
    id: 'suction on engine',
    role: 'hydrant operator',
    what: 'Couple its other end to your intake 1.',
    why: 'The engine must have the hydrant’s water before it can raise it.',
    water: 'None yet.',
    done: { is: 'coupled', hose: 'suction', end: 'to', port: 'B1.intake1' },
    how: [{ do: 'couple', hose: 'suction', end: 'to', port: 'B1.intake1' }],
  },
  {
    id: 'discharge on engine',
    role: 'hydrant operator',
    what: 'Couple the discharge hose to your discharge 1, its valve shut.',
    why: 'A shut valve keeps you in command of when the boost begins.',
    water: 'None yet.',
    done: { is: 'coupled', hose: 'discharge', end: 'from', port: 'B1.discharge1' },
    how: [{ do: 'couple', hose: 'discharge', end: 'from', port: 'B1.discharge1' }],
  },
  {
    id: 'discharge on valve',
    role: 'hydrant operator',
    what: 'Couple its other end to the assist valve’s pump discharge.',
    why: 'From here the boosted water joins the supply line.',
    water: 'None yet: a clapper holds the supply’s water back.',
    done: { is: 'coupled', hose: 'discharge', end: 'to', port: 'V1.pump-discharge' },
    how: [{ do: 'couple', hose: 'discharge', end: 'to', port: 'V1.pump-discharge' }],
  },
  {
    id: 'bleeder open',
    role: 'hydrant operator',
    what: 'Open the bleeder at your intake 1.',
    why: 'The hose is full of air; let it out here, not through the pump.',
    water: 'Air leaves ahead of the water.',
    done: { is: 'valve at least', valve: 'B1.intake1.bleeder', opening: 0.9 },
    how: [{ do: 'set valve', valve: 'B1.intake1.bleeder', opening: 1 }],
  },
  {
    id: 'hooked up',
    role: 'hydrant operator',
    what: 'Tell the attack operator that you are hooked up, before you touch the handle.',
    why: 'Filling the suction hose takes water from the supply: the attack operator’s intake dips while it fills, and a boost that nobody expects knocks a crew down.',
    water: 'Nothing changes yet.',
    after: ['bleeder open'],
    done: { is: 'said', role: 'hydrant operator', preset: 'hooked up' },
    how: [{ do: 'radio', message: { preset: 'hooked up' } }],
  },
  {
    id: 'pressure wanted',
    role: 'attack operator',
    what: 'Say what pressure you want, and watch your intake.',
    why: 'The receiving engine asks; the hydrant does not guess.',
    water: 'Nothing changes yet.',
    done: { is: 'said', role: 'attack operator', preset: 'pressure wanted' },
    how: [{ do: 'radio', message: { preset: 'pressure wanted', psi: boostPsi } }],
  },
  {
    id: 'handle to boost',
    role: 'hydrant operator',
    what: 'Move the assist valve’s handle to boost, slowly.',
    why: 'It opens the pump suction; the supply line stays fed through the clapper.',
    water: 'The hydrant fills the suction hose and goes on feeding the fire.',
    hazard: 'Slowly: a hose filled with a rush jumps, and takes water from the fire.',
    done: { is: 'valve at least', valve: 'V1.handle', opening: 0.99 },
    after: ['hooked up'],
    how: [{ do: 'set valve', valve: 'V1.handle', opening: 1, overS: 20 }],
  },
  {
    id: 'suction full',
    role: 'hydrant operator',
    what: 'Wait for water at the bleeder, then shut it.',
    why: 'Water without spitting means that the air is out.',
    water: 'The suction hose is full and stands at hydrant pressure.',
    done: {
      is: 'all',
      of: [
        { is: 'hose full', hose: 'suction' },
        { is: 'valve at most', valve: 'B1.intake1.bleeder', opening: 0.05 },
      ],
    },
    after: ['handle to boost', 'suction bled'],
    how: [{ do: 'set valve', valve: 'B1.intake1.bleeder', opening: 0 }],
  },
  {
    id: 'intake open',
    role: 'hydrant operator',
    what: 'Open your intake 1 slowly.',
    why: 'Now the pump has solid water.',
    water: 'Hydrant pressure reaches the pump’s eye.',
    done: { is: 'valve at least', valve: 'B1.intake1', opening: 0.99 },
    how: [{ do: 'set valve', valve: 'B1.intake1', opening: 1, overS: 5 }],
  },
  {
    id: 'discharge open',
    role: 'hydrant operator',
    what: 'Open your discharge 1 slowly.',
    why: 'While the pump only passes water, both sides stand alike and nothing jumps.',
    water: 'The discharge hose fills; its air is squeezed against the supply line’s pressure.',
    done: { is: 'valve at least', valve: 'B1.discharge1', opening: 0.99 },
    after: ['intake open', 'pressure wanted'],
    how: [{ do: 'set valve', valve: 'B1.discharge1', opening: 1, overS: 15 }],
  },
  {
    id: 'in gear',
    role: 'hydrant operator',
    what: 'Put the pump in gear.',
    why: 'At idle it adds a little; the rest comes in steps.',
    water: 'The discharge begins to rise.',
    done: { is: 'in gear', rig: 'B1', inGear: true },
    how: [{ do: 'pump in gear', rig: 'B1', inGear: true }],
  },
  {
    id: 'boosting said',
    role: 'hydrant operator',
    what: 'Say that you boost now.',
    why: 'The attack operator watches the intake and the governor.',
    water: 'As before.',
    done: { is: 'said', role: 'hydrant operator', preset: 'boosting' },
    how: [{ do: 'radio', message: { preset: 'boosting' } }],
  },
  {
    id: 'first step up',
    role: 'hydrant operator',
    what: 'Raise the pressure to 90 psi and look at both gauges.',
    why: 'In steps: each one shows on the intake before the next is asked for.',
    water:
      'Past the hydrant’s pressure the clapper shuts by itself: all of the fire’s water now comes through you.',
    done: { is: 'governor set', rig: 'B1', psi: 90, asked: 'up to' },
    how: [{ do: 'set governor', rig: 'B1', pdpPsi: 90 }],
  },
  {
    id: 'boosted',
    role: 'hydrant operator',
    what: `Raise it to the ${boostPsi} psi asked for.`,
    why: 'That is what the attack operator reckons with.',
    water: 'The attack engine’s intake rises by what you add.',
    hazard:
      'When the lines shut, all of this stands on the supply hose and on the attack engine’s intake.',
    done: {
      is: 'all',
      of: [
        { is: 'governor set', rig: 'B1', psi: boostPsi, asked: 'in full' },
        { is: 'discharge at least', rig: 'B1', psi: boostPsi - 1, asked: 'in full' },
      ],
    },
    how: [{ do: 'set governor', rig: 'B1', pdpPsi: boostPsi }],
  },
  {
    id: 'boost made',
    role: 'hydrant operator',
    what: 'Say that the boost is made.',
    why: 'Now the scene may take more water.',
    water: 'As before.',
    done: {
      is: 'said',
      role: 'hydrant operator',
      preset: 'boost made',
      since: 'first step up',
    },
    how: [{ do: 'radio', message: { preset: 'boost made' } }],
  },
  ...gatedLineSteps(plan, 'attack operator', {
    stem: 'third line',
    opens: 'third nozzle open',
    hose: 'attack3',
    nozzle: 'N3',
    pumpPsi: attackPsi,
    charge: {
      why: 'The boost carries it; the hydrant alone would not.',
      water: 'The third line fills.',
    },
    open: {
      what: 'Bleed the air and open the third nozzle.',
      why: 'Water on the fire is what all of it is for.',
      water: 'The flow rises; the intake falls a little and holds.',
    },
  }),
];

const waiting: DrillStep = {
  id: 'suction bled',
  role: 'hydrant operator',
  what: 'Watch the suction hose fill.',
  why: 'Air in the hose is air in the pump.',
  water: 'It comes up the hose and pushes the air out of the bleeder.',
  done: { is: 'hose full', hose: 'suction' },
  after: ['bleeder open'],
  how: [],
};

/** Boost through the assist valve without losing water. */
export const boostThroughValve: Evolution = {
  key: 'boost through valve',
  title: 'Boost through the assist valve',
  teaches: 'An engine at the hydrant takes over the supply line while the fire keeps its water.',
  cautions: [...largeHoseCautions, deferral],
  scene: () =>
    sceneFromPlan(plan, {
      start: 'water flowing',
      evolution: 'boost through valve',
      looseHoses: ['suction', 'discharge'],
      dryHoses: ['attack3'],
      spareNozzle,
      outOfGear: ['B1'],
      openings: {
        'V1.handle': 0,
        'B1.intake1': 0,
        'B1.discharge1': 0,
        'A1.discharge3': 0,
        'N3.bale': 0,
      },
      steps: [...steps.slice(0, 8), waiting, ...steps.slice(8)],
      expectedMessages: [
        { role: 'hydrant operator', preset: 'hooked up', why: 'Before the handle is moved.' },
        { role: 'attack operator', preset: 'pressure wanted', why: 'The scene asks.' },
        { role: 'hydrant operator', preset: 'boosting', why: 'So that nobody is surprised.' },
        { role: 'hydrant operator', preset: 'boost made', why: 'So that more lines may open.' },
      ],
    }),
};
