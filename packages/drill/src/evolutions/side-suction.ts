import { boostedAtHydrant, deferral } from '@plugside/fireground';
import type { DrillStep } from '../drill-step.ts';
import { sceneFromPlan } from '../scene-from-plan.ts';
import { type Evolution, largeHoseCautions } from './evolution.ts';
import { gatedLineSteps, withLineGated } from './gated-line.ts';
import { withSpareLine } from './spare-line.ts';
import {
  bleederStep,
  coupleStep,
  openStep,
  pressureStep,
  sayStep,
  takeWaterSteps,
} from './step-makers.ts';

const key = 'side suction lines';
const boostPsi = 165;
const attackPsi = 150;
/** A strong hydrant behind a valve that is the narrow place: a line from a side outlet goes round it. */
const boosted = boostedAtHydrant({
  title: 'A suction line from a side outlet',
  hydrant: { staticPsi: 70, residualPsi: 58, testGpm: 1500 },
  lay: { hose: '5', lengthFt: 800, riseFt: 20 },
  booster: { pdpPsi: boostPsi, sideLines: [{ hose: '3' }] },
  attack: { pdpPsi: attackPsi },
  attackLines: [
    {
      hose: '3',
      lengthFt: 100,
      nozzle: { kind: 'fog', ratedGpm: 500, ratedPsi: 100 },
      use: 'master stream',
    },
    {
      hose: '3',
      lengthFt: 100,
      nozzle: { kind: 'fog', ratedGpm: 500, ratedPsi: 100 },
      use: 'master stream',
    },
  ],
});
const { plan: ungated, spareNozzle } = withSpareLine(boosted, 'A1');
/** The stream that flows from the start is gated to its own pressure, as the second one will be. */
const plan = withLineGated(ungated, 'attack1', attackPsi);
const attack = 'attack operator';
const hydrant = 'hydrant operator';

const steps: DrillStep[] = [
  sayStep(
    'intake told',
    hydrant,
    'intake',
    {
      what: 'Tell how your intake stands.',
      why: 'The scene must know that more flow would empty you.',
      water: 'The valve’s suction path takes the most of the pressure on the way.',
      after: [],
    },
    45,
  ),
  coupleStep('side line on hydrant', hydrant, 'side1', 'from', 'H1.side1', {
    what: 'Couple the side line to the gate of side outlet 1.',
    why: 'The gate was put on before the hydrant was opened: that is why it can be done now.',
    water: 'None yet: the gate is shut.',
    hazard: 'Never take a cap off a side outlet without a gate while the stem is open.',
    after: [],
  }),
  coupleStep('side line on engine', hydrant, 'side1', 'to', 'B1.intake2', {
    what: 'Couple its other end to your intake 2, its valve shut.',
    why: 'The pump goes on drawing from the valve meanwhile.',
    water: 'None yet.',
  }),
  bleederStep('side bleeder open', hydrant, 'B1.intake2'),
  openStep('side gate open', hydrant, 'H1.side1', 10, {
    what: 'Open the gate of side outlet 1 slowly.',
    why: 'The line fills without a jolt on the main.',
    water: 'The side line fills.',
  }),
  ...takeWaterSteps('side line', hydrant, 'side1', 'B1.intake2', {
    bleeder: 'side bleeder open',
    source: 'side gate open',
  }),
  sayStep('boost told', hydrant, 'second line in', {
    what: 'Say that the second suction line is in.',
    why: 'Now more can be asked of you.',
    water: 'Two ways lead into the pump; the intake has risen.',
  }),
  pressureStep('pressure', hydrant, 'B1', boostPsi, {
    what: `Raise the pressure to ${boostPsi} psi.`,
    why: 'The intake bears it now.',
    water: 'More pressure at the attack engine’s intake.',
    hazard: 'When the lines shut, all of it stands on the supply hose: its limit is 185 psi.',
  }),
  sayStep('boost made', hydrant, 'boost made', {
    what: 'Say that the boost is made.',
    why: 'The scene may open the second master stream.',
    water: 'As before.',
  }),
  ...gatedLineSteps(plan, attack, {
    stem: 'second stream',
    opens: 'second stream open',
    hose: 'attack2',
    nozzle: 'N2',
    pumpPsi: attackPsi,
    charge: {
      why: 'A second master stream doubles the flow.',
      water: 'Its line fills.',
    },
    open: {
      what: 'Bleed the air and open the second stream.',
      why: 'Water on the fire.',
      water: 'Some 1,000 gpm through one supply hose.',
    },
  }),
];

/** One more suction line from a side outlet, while the boost goes on. */
export const sideSuction: Evolution = {
  key,
  title: 'A suction line from a side outlet',
  teaches:
    'A line round the valve raises the booster’s intake, and with it what the scene can have.',
  cautions: [...largeHoseCautions, deferral],
  scene: () =>
    sceneFromPlan(plan, {
      start: 'water flowing',
      evolution: key,
      looseHoses: ['side1'],
      dryHoses: ['attack2'],
      spareNozzle,
      openings: { 'H1.side1': 0, 'B1.intake2': 0, 'A1.discharge2': 0, 'N2.bale': 0 },
      pdpPsi: { B1: 120 },
      steps,
      expectedMessages: [
        { role: hydrant, preset: 'intake', why: 'The scene must know.' },
        { role: hydrant, preset: 'boost made', why: 'So that more may open.' },
      ],
    }),
};
