import { deferral, forwardLay } from '@plugside/fireground';
import type { Condition, DrillStep } from '../drill-step.ts';
import { sceneFromPlan } from '../scene-from-plan.ts';
import { type Evolution, largeHoseCautions } from './evolution.ts';
import { withSpareLine } from './spare-line.ts';
import {
  bleederStep,
  coupleStep,
  flushSteps,
  gearStep,
  nozzleStep,
  openStep,
  pressureStep,
  sayStep,
  shutStep,
  takeWaterSteps,
} from './step-makers.ts';

const pdpPsi = 170;
const key = 'forward lay';

const laid = forwardLay({
  title: 'Forward lay and attack on hydrant water',
  lay: { hose: '5', lengthFt: 500, riseFt: 10 },
  attack: { pdpPsi },
  attackLines: [{}, {}],
});
/** The attack engine carries 1,000 gal. */
const { plan, spareNozzle } = withSpareLine(
  { ...laid, rigs: laid.rigs.map((rig) => ({ ...rig, tankGal: 1000 })) },
  'A1',
);

const attack = 'attack operator';
const hydrant = 'hydrant operator';

const intakeOpen: Condition = { is: 'valve at least', valve: 'A1.intake1', opening: 0.99 };

const steps: DrillStep[] = [
  openStep('tank open', attack, 'A1.tankToPump', 1, {
    what: 'Open the tank to pump.',
    why: 'The first water is your own: the crew need not wait for the hydrant.',
    water: 'The tank’s water fills the pump.',
    after: [],
  }),
  gearStep('in gear', attack, 'A1', {
    what: 'Put the pump in gear.',
    why: 'Pressure comes from here.',
    water: 'The discharge rises to what idling gives.',
  }),
  openStep('first line charged', attack, 'A1.discharge1', 4, {
    what: 'Open discharge 1 slowly.',
    why: 'The crew must have the line in hand as it fills.',
    water: 'The first line fills; its air is squeezed at the shut nozzle.',
    hazard: 'A line that fills with a rush whips.',
  }),
  pressureStep('pressure', attack, 'A1', pdpPsi, {
    what: `Raise the pressure to ${pdpPsi} psi.`,
    why: '100 psi at the nozzle and 70 psi lost in 200 ft of 1¾ in at 150 gpm.',
    water: 'The line grows hard.',
  }),
  nozzleStep('first nozzle open', 'N1', {
    what: 'Bleed the air and open your nozzle.',
    why: 'Water on the fire.',
    water: 'The tank gives 150 gpm: six minutes of it.',
  }),
  ...flushSteps('hydrant', hydrant, 'H1'),
  coupleStep('lay on hydrant', hydrant, 'lay', 'from', 'H1.steamer', {
    what: 'Couple the supply hose to the steamer outlet.',
    why: 'The tank runs out in minutes; the hydrant does not.',
    water: 'None yet: the stem is shut.',
    hazard: 'Stand clear of the hose while the engine lays out.',
  }),
  coupleStep('lay on engine', attack, 'lay', 'to', 'A1.intake1', {
    what: 'Couple the supply hose to your intake 1, its valve shut.',
    why: 'A shut intake keeps the air of an empty hose out of the pump.',
    water: 'None yet.',
    after: [],
  }),
  bleederStep('bleeder open', attack, 'A1.intake1'),
  sayStep('send water', attack, 'send water', {
    what: 'Call for water.',
    why: 'Nobody opens a hydrant before the far end is coupled.',
    water: 'None yet.',
  }),
  sayStep('water coming', hydrant, 'water coming', {
    what: 'Say that water is coming.',
    why: 'People step clear of the hose.',
    water: 'None yet.',
    after: ['send water', 'lay on hydrant'],
  }),
  openStep('hydrant open', hydrant, 'H1.stem', 30, {
    what: 'Open the hydrant slowly, all the way.',
    why: 'Half open, a hydrant leaks at its drain and gives less.',
    water: 'The supply hose fills: 510 gal in 500 ft of 5 in.',
    hazard: 'Open slowly, ready to shut: a coupling that lets go throws hose.',
  }),
  ...takeWaterSteps('lay', attack, 'lay', 'A1.intake1', {
    bleeder: 'bleeder open',
    source: 'hydrant open',
  }),
  shutStep('tank shut', attack, 'A1.tankToPump', 2, intakeOpen, {
    what: 'Shut the tank to pump.',
    why: 'Hydrant water has taken over; what is left in the tank is your reserve.',
    water: 'All of it comes from the hydrant; the nozzle does not notice.',
  }),
  sayStep(
    'on hydrant',
    attack,
    'on hydrant',
    {
      what: 'Say that you are on hydrant water.',
      why: 'The crew inside may stay.',
      water: 'As before.',
    },
    undefined,
    'lay intake open',
  ),
  openStep('second line charged', attack, 'A1.discharge2', 4, {
    what: 'Open discharge 2 slowly.',
    why: 'A second line behind the first, now that the supply holds.',
    water: 'The second line fills.',
  }),
  nozzleStep('second nozzle open', 'N2', {
    what: 'Bleed the air and open the second nozzle.',
    why: 'Back the first line up.',
    water: 'The flow doubles; the intake falls and holds.',
  }),
];

/** Forward lay, and an attack that goes from tank water to the hydrant's. */
export const forwardLayAttack: Evolution = {
  key,
  title: 'Forward lay and attack on hydrant water',
  teaches:
    'First water from the tank, a supply line charged without air, then over to the hydrant.',
  cautions: [...largeHoseCautions, deferral],
  scene: () =>
    sceneFromPlan(plan, {
      start: 'hose connected',
      evolution: key,
      looseHoses: ['lay'],
      spareNozzle,
      steps,
      expectedMessages: [
        { role: attack, preset: 'send water', why: 'Before the hydrant is opened.' },
        { role: hydrant, preset: 'water coming', why: 'So that people step clear.' },
        { role: attack, preset: 'on hydrant', why: 'So that the crew knows what it stands on.' },
      ],
    }),
};
