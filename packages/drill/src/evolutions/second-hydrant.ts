import { addAttackLines, deferral, twoHydrants } from '@plugside/fireground';
import type { DrillStep } from '../drill-step.ts';
import { sceneFromPlan } from '../scene-from-plan.ts';
import { type Evolution, largeHoseCautions } from './evolution.ts';
import { gatedLineSteps } from './gated-line.ts';
import { withSpareLine } from './spare-line.ts';
import {
  bleederStep,
  coupleStep,
  flushSteps,
  openStep,
  sayStep,
  takeWaterSteps,
} from './step-makers.ts';

const key = 'two hydrants';
const pdpPsi = 170;
const lines = addAttackLines(
  twoHydrants({
    title: 'A second hydrant into the attack engine',
    first: { hose: '4', lengthFt: 600 },
    second: { hose: '4', lengthFt: 500 },
    attack: { pdpPsi },
    attackLines: [{}, {}],
  }),
  'A1',
  [{ hose: '2-1/2', lengthFt: 200, nozzle: { kind: 'fog', ratedGpm: 250, ratedPsi: 100 } }],
);
const { plan, spareNozzle } = withSpareLine(lines, 'A1');
const attack = 'attack operator';
const hydrant = 'hydrant operator';

const steps: DrillStep[] = [
  ...flushSteps('second hydrant', hydrant, 'H2'),
  coupleStep('second lay on hydrant', hydrant, 'lay2', 'from', 'H2.steamer', {
    what: 'Couple the second supply hose to the second hydrant.',
    why: 'One hydrant through one hose does not carry the third line; and one punctured hose is not the end.',
    water: 'None yet.',
  }),
  coupleStep('second lay on engine', attack, 'lay2', 'to', 'A1.intake2', {
    what: 'Couple it to your intake 2, its valve shut.',
    why: 'The first supply goes on while this one fills.',
    water: 'None yet.',
    after: [],
  }),
  bleederStep('second bleeder open', attack, 'A1.intake2'),
  sayStep('send water', attack, 'send water', {
    what: 'Call for water.',
    why: 'Nobody opens a hydrant before the far end is coupled.',
    water: 'None yet.',
    after: ['second bleeder open', 'second lay on hydrant'],
  }),
  sayStep('water coming', hydrant, 'water coming', {
    what: 'Say that water is coming.',
    why: 'People step clear of the hose.',
    water: 'None yet.',
  }),
  openStep('second hydrant open', hydrant, 'H2.stem', 25, {
    what: 'Open the second hydrant slowly, all the way.',
    why: 'A hose charged with a rush breaks couplings.',
    water: 'The second hose fills.',
    hazard: 'Open slowly, ready to shut.',
  }),
  ...takeWaterSteps('second lay', attack, 'lay2', 'A1.intake2', {
    bleeder: 'second bleeder open',
    source: 'second hydrant open',
  }),
  sayStep('water received', attack, 'water received', {
    what: 'Say that you have good water.',
    why: 'The hydrant operator may leave the stem.',
    water: 'Both hydrants feed; the intake rises.',
  }),
  ...gatedLineSteps(plan, attack, {
    stem: 'third line',
    opens: 'third nozzle open',
    hose: 'attack3',
    nozzle: 'N3',
    pumpPsi: pdpPsi,
    charge: {
      why: 'The two hydrants carry it together.',
      water: 'The third line fills.',
    },
    open: {
      what: 'Bleed the air and open the third nozzle.',
      why: 'Water on the fire.',
      water: 'The flow rises; the intake falls and holds.',
    },
  }),
];

/** A second hydrant, brought in while the first one feeds. */
export const secondHydrant: Evolution = {
  key,
  title: 'Two hydrants',
  teaches: 'A second supply joins the first while water flows.',
  cautions: [...largeHoseCautions, deferral],
  scene: () =>
    sceneFromPlan(plan, {
      start: 'water flowing',
      evolution: key,
      looseHoses: ['lay2'],
      dryHoses: ['attack3'],
      spareNozzle,
      openings: { 'H2.stem': 0, 'A1.intake2': 0, 'A1.discharge3': 0, 'N3.bale': 0 },
      steps,
      expectedMessages: [
        { role: attack, preset: 'send water', why: 'Before the hydrant is opened.' },
        { role: hydrant, preset: 'water coming', why: 'So that people step clear.' },
        { role: attack, preset: 'water received', why: 'So that the hydrant may be left.' },
      ],
    }),
};
