import { deferral, forwardLay } from '@plugside/fireground';
import type { Condition, DrillStep } from '../drill-step.ts';
import { sceneFromPlan } from '../scene-from-plan.ts';
import { type Evolution, largeHoseCautions } from './evolution.ts';
import { withSpareLine } from './spare-line.ts';
import { bleederStep, openStep, sayStep, shutStep, takeWaterSteps } from './step-makers.ts';

const key = 'tank and hydrant';
const laid = forwardLay({
  title: 'From tank to hydrant and back',
  lay: { hose: '4', lengthFt: 200 },
  attack: { pdpPsi: 170 },
  attackLines: [{}],
});
const { plan, spareNozzle } = withSpareLine(
  { ...laid, rigs: laid.rigs.map((rig) => ({ ...rig, tankGal: 1000 })) },
  'A1',
);

const attack = 'attack operator';
const hydrant = 'hydrant operator';

const intakeOpen: Condition = { is: 'valve at least', valve: 'A1.intake1', opening: 0.99 };
const tankFull: Condition = {
  is: 'all',
  of: [
    { is: 'tank at least', rig: 'A1', gal: 990 },
    { is: 'valve at most', valve: 'A1.tankToPump', opening: 0.01 },
  ],
};
const backOnTank: Condition = {
  is: 'all',
  of: [
    { is: 'said', role: attack, preset: 'on tank', since: 'fill shut' },
    { is: 'valve at least', valve: 'A1.tankToPump', opening: 0.99 },
  ],
};

const steps: DrillStep[] = [
  bleederStep('bleeder open', attack, 'A1.intake1', { after: [] }),
  sayStep('send water', attack, 'send water', {
    what: 'Call for water.',
    why: 'Your tank lasts a few minutes at this flow.',
    water: 'The tank falls.',
  }),
  openStep('hydrant open', hydrant, 'H1.stem', 25, {
    what: 'Open the hydrant slowly, all the way.',
    why: 'Full open: half open it leaks at its drain.',
    water: 'The supply hose fills; its air leaves at the engine’s bleeder.',
    hazard: 'Open slowly, people clear of the hose.',
  }),
  ...takeWaterSteps('lay', attack, 'lay', 'A1.intake1', {
    bleeder: 'bleeder open',
    source: 'hydrant open',
  }),
  shutStep('tank shut', attack, 'A1.tankToPump', 2, intakeOpen, {
    what: 'Shut the tank to pump.',
    why: 'The hydrant’s pressure has taken over.',
    water: 'The intake gauge shows the hydrant’s pressure; the nozzle does not notice.',
  }),
  sayStep(
    'on hydrant',
    attack,
    'on hydrant',
    {
      what: 'Say that you are on hydrant water.',
      why: 'The crew counts on it.',
      water: 'As before.',
    },
    undefined,
    'lay intake open',
  ),
  {
    id: 'tank filled',
    role: attack,
    what: 'Open the tank fill and let the tank fill up.',
    why: 'A full tank is what is left if the supply line bursts.',
    water: 'A part of the pump’s water runs into the tank; the pump holds its pressure.',
    hazard: 'Watch the intake: filling takes water from the line.',
    done: tankFull,
    how: [{ do: 'set valve', valve: 'A1.tankFill', opening: 1, overS: 4 }],
  },
  shutStep('fill shut', attack, 'A1.tankFill', 2, tankFull, {
    what: 'Shut the tank fill.',
    why: 'A tank that runs over wastes water under the wheels.',
    water: 'All of it goes to the line again.',
  }),
  sayStep(
    'on tank',
    attack,
    'on tank',
    {
      what: 'Say that you go back to tank water.',
      why: 'The crew must know that its water has an end again.',
      water: 'As before.',
    },
    undefined,
    'fill shut',
  ),
  {
    id: 'tank open again',
    role: attack,
    what: 'Open the tank to pump.',
    why: 'Before the intake shuts: the pump must never be without water.',
    water: 'A check holds the hydrant’s water out of the tank.',
    done: backOnTank,
    how: [{ do: 'set valve', valve: 'A1.tankToPump', opening: 1, overS: 2 }],
  },
  shutStep('intake shut', attack, 'A1.intake1', 8, backOnTank, {
    what: 'Shut the intake slowly.',
    why: 'The pressure at the pump’s eye falls to the tank’s: the governor has to follow.',
    water: 'The tank takes over.',
    hazard: 'Shut slowly: moving water that is stopped hits back.',
  }),
];

/** From tank to hydrant and back, the nozzle flowing all the time. */
export const tankToHydrant: Evolution = {
  key,
  title: 'From tank to hydrant and back',
  teaches: 'The nozzle keeps its water through both changes, and the tank is filled between them.',
  cautions: [...largeHoseCautions, deferral],
  scene: () =>
    sceneFromPlan(plan, {
      start: 'water flowing',
      evolution: key,
      dryHoses: ['lay'],
      spareNozzle,
      openings: { 'A1.tankToPump': 1, 'A1.intake1': 0, 'H1.stem': 0 },
      steps,
      expectedMessages: [
        { role: attack, preset: 'send water', why: 'Before the hydrant is opened.' },
        { role: attack, preset: 'on hydrant', why: 'So that the crew knows.' },
        { role: attack, preset: 'on tank', why: 'So that the crew knows.' },
      ],
    }),
};
