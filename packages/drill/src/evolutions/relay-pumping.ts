import { deferral, relay } from '@plugside/fireground';
import type { DrillStep } from '../drill-step.ts';
import type { PlayedRole } from '../role.ts';
import { sceneFromPlan } from '../scene-from-plan.ts';
import { type Evolution, largeHoseCautions } from './evolution.ts';
import { withSpareLine } from './spare-line.ts';
import {
  bleederStep,
  gearStep,
  nozzleStep,
  openStep,
  pressureStep,
  sayStep,
  takeWaterSteps,
} from './step-makers.ts';

const key = 'relay';
const relayPsi = 150;
const attackPsi = 170;
const laid = relay({
  title: 'Relay of three engines',
  pumps: 3,
  lay: { hose: '5', lengthFt: 1600, riseFt: 60 },
  pdpPsi: relayPsi,
  attackPdpPsi: attackPsi,
  attackLines: [{}, {}],
});
const { plan, spareNozzle } = withSpareLine(laid, 'P3');
const attack = 'attack operator';
const between = 'relay operator';
const hydrant = 'hydrant operator';

/** One engine of the relay once water flows through it: gear, pressure, and told. */
function raiseSteps(rig: string, role: PlayedRole, next: string): DrillStep[] {
  return [
    gearStep(`${rig} in gear`, role, rig, {
      what: 'Put your pump in gear.',
      why: 'From the source on: each pump needs water before it may raise it.',
      water: 'The discharge begins to rise.',
    }),
    pressureStep(`${rig} pressure`, role, rig, relayPsi, {
      what: `Raise the pressure to ${relayPsi} psi. Watch your intake while you do.`,
      why: 'All of the relay holds one pressure; the flow finds itself.',
      water: `The intake of the ${next} rises.`,
      hazard:
        'Raise on moving water alone: look at your flow gauge. Held against shut lines the pump heats its water, so crack the tank fill or take it out of gear; and all of this stands on the next intake.',
    }),
    sayStep(
      `${rig} pressure told`,
      role,
      'pressure set',
      {
        what: 'Say what you hold.',
        why: `The operator of the ${next} raises on what you bring, not before.`,
        water: 'As before.',
      },
      relayPsi,
    ),
  ];
}

const steps: DrillStep[] = [
  bleederStep('source bleeder', hydrant, 'P1.intake1', { after: [] }),
  bleederStep('relay bleeder', between, 'P2.intake1', { after: [] }),
  sayStep('relay ready', between, 'ready', {
    what: 'Say that you are ready for water.',
    why: 'Nobody sends water into a hose whose other end is not looked after.',
    water: 'None yet.',
  }),
  bleederStep('attack bleeder', attack, 'P3.intake1', { after: [] }),
  openStep('hydrant open', hydrant, 'H1.stem', 20, {
    what: 'Open the hydrant slowly, all the way.',
    why: 'A hose charged with a rush breaks couplings.',
    water: 'The suction hose fills.',
    hazard: 'Open slowly, ready to shut.',
    after: ['source bleeder'],
  }),
  ...takeWaterSteps('suction', hydrant, 'suction', 'P1.intake1', {
    bleeder: 'source bleeder',
    source: 'hydrant open',
  }),
  sayStep('water coming', hydrant, 'water coming', {
    what: 'Say that water is coming.',
    why: 'Everyone along the lay steps clear.',
    water: 'It stands at your pump.',
    after: ['suction intake open', 'relay ready'],
  }),
  openStep('P1 discharge open', hydrant, 'P1.discharge1', 12, {
    what: 'Open your discharge 1 slowly.',
    why: 'The hose to the relay engine fills with what your pump only passes.',
    water: 'It runs through your pump into the next hose.',
    hazard: 'Slowly: the next hose is empty.',
  }),
  ...takeWaterSteps('leg1', between, 'leg1', 'P2.intake1', {
    bleeder: 'relay bleeder',
    source: 'P1 discharge open',
  }),
  sayStep('relay water coming', between, 'water coming', {
    what: 'Say that water is coming.',
    why: 'The hose up to the scene is next: people step clear of it.',
    water: 'It stands at your pump.',
    after: ['leg1 intake open', 'attack bleeder'],
  }),
  openStep('P2 discharge open', between, 'P2.discharge1', 12, {
    what: 'Open your discharge 1 slowly.',
    why: 'The hose to the attack engine fills with what your pump only passes.',
    water: 'It runs through your pump into the last hose.',
    hazard: 'Slowly: the next hose is empty.',
  }),
  ...takeWaterSteps('leg2', attack, 'leg2', 'P3.intake1', {
    bleeder: 'attack bleeder',
    source: 'P2 discharge open',
  }),
  gearStep('attack in gear', attack, 'P3', {
    what: 'Put your pump in gear.',
    why: 'The hydrant alone brings enough for one line, all pumps passing it on.',
    water: 'Nothing flows yet.',
  }),
  openStep('first line charged', attack, 'P3.discharge1', 4, {
    what: 'Open discharge 1 slowly.',
    why: 'The crew has the line in hand. The relay is raised once water moves, not against shut lines.',
    water: 'The first line fills.',
  }),
  pressureStep('attack pressure', attack, 'P3', attackPsi, {
    what: `Raise the pressure to ${attackPsi} psi. Watch your intake while you do.`,
    why: '100 psi at the nozzle and 70 psi lost in the line.',
    water: 'The line grows hard.',
  }),
  nozzleStep('first nozzle open', 'N1', {
    what: 'Bleed the air and open the first nozzle.',
    why: 'Water on the fire, and moving water for the relay to raise.',
    water: 'All pumps pass it on.',
  }),
  sayStep('water received', attack, 'water received', {
    what: 'Say that you have water.',
    why: 'Only now, with water moving, may the relay raise its pressure.',
    water: 'It flows through all of the relay.',
  }),
  ...raiseSteps('P1', hydrant, 'relay engine'),
  ...raiseSteps('P2', between, 'attack engine'),
  openStep('second line charged', attack, 'P3.discharge2', 4, {
    what: 'Open discharge 2 slowly.',
    why: 'The second line behind the first, now that the relay carries it.',
    water: 'The second line fills.',
  }),
  nozzleStep('second nozzle open', 'N2', {
    what: 'Bleed the air and open the second nozzle.',
    why: 'Water on the fire.',
    water: 'The intakes fall a little and hold.',
  }),
];

/** A relay of three engines, charged from the source on and raised once water flows through it. */
export const relayPumping: Evolution = {
  key,
  title: 'Relay of three engines',
  teaches:
    'Charge from the source on, raise on moving water; each engine has its operator, and they have the radio alone.',
  cautions: [
    ...largeHoseCautions,
    'Shut down from the fire end first: a relay pressed against shut lines stands at its full pressure.',
    deferral,
  ],
  scene: () =>
    sceneFromPlan(plan, {
      start: 'hose connected',
      evolution: key,
      spareNozzle,
      steps,
      expectedMessages: [
        { role: between, preset: 'ready', why: 'Before water is sent into the first hose.' },
        { role: hydrant, preset: 'water coming', why: 'So that people step clear.' },
        { role: between, preset: 'water coming', why: 'So that people step clear.' },
        { role: attack, preset: 'water received', why: 'Before the relay is raised.' },
        { role: hydrant, preset: 'pressure set', why: 'Before the relay engine raises.' },
        { role: between, preset: 'pressure set', why: 'Before the scene flows.' },
      ],
    }),
};
