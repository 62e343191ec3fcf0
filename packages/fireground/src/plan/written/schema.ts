import * as z from 'zod';
import {
  applianceLosses,
  assistValveLosses,
  hydrantLosses,
  rigLosses,
  usualSideOutlets,
} from '../../catalogue/appliances.ts';
import { usualDischarges, usualIntakes } from '../../catalogue/pumps.ts';
import { countField, plainField, quantityField } from './number-fields.ts';
import { lossField, pumpPointField, settingField, valveField, writeLoss } from './phrase-fields.ts';
import { countRanges, plainRanges, ranges, sizeLimits } from './ranges.ts';
import {
  choiceField,
  dateField,
  flagField,
  hoseField,
  idField,
  portField,
  textField,
} from './text-fields.ts';

/**
 * The written form of a plan, version 1: the one description that reading, checking and the
 * published JSON Schema all come from. Keys are trade words; a unit may stand beside each
 * number. Parsing turns every value into its inside unit.
 */
export const formatVersion = 1;

// Without this, zod tries to compile each object from text, which the app's content security
// policy refuses and the browser reports as a violation. Before the first object, or too late.
z.config({ jitless: true });

const elevation = quantityField(ranges.elevation, 'Height, from any level that all heights share');
const loss = (entry: { label: string; loss: { lossPsi: number; atGpm: number } }) =>
  lossField(entry.label).prefault(writeLoss(entry.loss));
const named = {
  id: idField('Unique in the plan'),
  name: textField('For people').optional(),
};

export const originSchema = z.strictObject({
  kind: choiceField(
    ['measured', 'maker', 'standard', 'department', 'common practice', 'default', 'estimated'],
    'What kind of source',
  ),
  text: textField('Which test, standard or book', 500),
  date: dateField('When it was measured').optional(),
});

export const hydrantSchema = z.strictObject({
  ...named,
  elevation: elevation.optional(),
  static: quantityField(ranges.staticPressure, 'Flow test: static pressure of the main'),
  residual: quantityField(ranges.residualPressure, 'Flow test: pressure left at the test flow'),
  flow: quantityField(ranges.testFlow, 'Flow test: the test flow'),
  tested: dateField('Date of the flow test').optional(),
  main: textField(
    'The main that feeds it, in your own words: hydrants of one main draw on each other. Left out: not known',
  ).optional(),
  'main-fed-from': textField(
    'What that main hangs on, in the same words: the main or the source that feeds it. Left out: not known',
  ).optional(),
  'side-outlets': countField(countRanges.sideOutlets, 'Side outlets side1 …').prefault(
    usualSideOutlets,
  ),
  'steamer-loss': loss(hydrantLosses.steamer),
  'side-loss': loss(hydrantLosses.side),
});

export const groupTestSchema = z.strictObject({
  hydrants: z.array(idField('A hydrant that flowed')).min(2).max(sizeLimits.listLength),
  elevation: quantityField(ranges.elevation, 'Height of the hydrant gauged').optional(),
  static: quantityField(ranges.staticPressure, 'Static pressure at the hydrant gauged'),
  residual: quantityField(ranges.residualPressure, 'Pressure left there while all flowed'),
  flow: quantityField(ranges.testFlow, 'Flow of all of them together'),
  tested: dateField('Date of the test').optional(),
});

export const sceneEngineSchema = z.strictObject({
  name: textField('The engine, as crews call it'),
  takes: quantityField(ranges.demand, 'The most that its pump puts out, or its lines bring'),
  lines: z
    .array(textField('Id of a line that ends at this engine, though drawn to the scene'))
    .max(sizeLimits.listLength)
    .optional(),
});

export const draftSchema = z.strictObject({
  ...named,
  elevation: quantityField(ranges.elevation, "Height of the water's surface").optional(),
  altitude: quantityField(ranges.altitude, 'Height above sea level').prefault(0),
  temperature: quantityField(ranges.waterTemperature, 'Of the water').prefault(60),
  'strainer-loss': loss(rigLosses.strainer),
});

export const rigSchema = z.strictObject({
  ...named,
  role: choiceField(['booster', 'relay', 'attack'], 'What it does here'),
  elevation: elevation.optional(),
  rated: quantityField(ranges.rating, 'Rated capacity at 150 psi net'),
  'pump-test': z
    .array(pumpPointField('Net pressure at a flow, flows rising from 0'))
    .min(2)
    .max(sizeLimits.listLength)
    .optional(),
  setting: settingField('How its pump is set').prefault('idle'),
  'protect-intake': quantityField(
    ranges.protectIntake,
    'The governor gives up pressure rather than pull the intake below this',
  ).optional(),
  intakes: countField(countRanges.intakes, 'Intakes intake1 …').prefault(usualIntakes),
  discharges: countField(countRanges.discharges, 'Discharges discharge1 …').prefault(
    usualDischarges,
  ),
  'intake-loss': lossField("Each intake's valve and piping").optional(),
  'pass-loss': loss(rigLosses.pass),
  tank: quantityField(ranges.tank, 'Water in its tank').optional(),
  'tank-valve': choiceField(['open', 'shut'], 'Tank-to-pump valve').optional(),
  'intake-relief': quantityField(ranges.relief, 'Intake relief opens above this').optional(),
});

const placed = { ...named, elevation: elevation.optional() };
const inlets = countField(countRanges.inlets, 'Inlets inlet1 …');
const outlets = countField(countRanges.outlets, 'Outlets outlet1 …');

export const applianceSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    ...placed,
    kind: z.literal('assist-valve'),
    'sits-on': portField('The steamer outlet it sits on'),
    handle: choiceField(['hydrant', 'boost'], 'boost: the pump suction port is open').prefault(
      'hydrant',
    ),
    'clapper-loss': loss(assistValveLosses.clapper),
    'suction-loss': loss(assistValveLosses.suction),
    'discharge-loss': loss(assistValveLosses.discharge),
    'clapper-stuck': choiceField(['shut'], 'A fault to study').optional(),
  }),
  z.strictObject({ ...placed, kind: z.literal('wye'), loss: loss(applianceLosses.wye) }),
  z.strictObject({
    ...placed,
    kind: z.literal('siamese'),
    inlets: inlets.prefault(2),
    loss: loss(applianceLosses.siamese),
  }),
  z.strictObject({
    ...placed,
    kind: z.literal('manifold'),
    inlets: inlets.prefault(1),
    outlets: outlets.prefault(4),
    loss: loss(applianceLosses.manifold),
  }),
  z.strictObject({
    ...placed,
    kind: z.literal('monitor'),
    inlets: inlets.prefault(1),
    loss: loss(applianceLosses.monitor),
  }),
  z.strictObject({
    ...placed,
    kind: z.literal('standpipe'),
    inlets: inlets.prefault(2),
    outlets: outlets.prefault(2),
    'outlet-elevation': quantityField(ranges.elevation, 'Height of its outlets'),
    loss: loss(applianceLosses.standpipe),
  }),
  z.strictObject({
    ...placed,
    kind: z.literal('sprinkler'),
    inlets: inlets.prefault(2),
    demand: quantityField(ranges.demand, 'What the system takes at its base pressure'),
    base: quantityField(ranges.systemPressure, 'Base pressure at the connection'),
  }),
]);

export const lineSchema = z.strictObject({
  ...named,
  from: portField('Where water enters the hose'),
  to: portField('Where water leaves the hose'),
  hose: hoseField('Hose size'),
  length: quantityField(ranges.length, 'Length of each line'),
  count: countField(countRanges.lines, 'Like lines side by side').prefault(1),
  coefficient: plainField(plainRanges.coefficient, 'Friction coefficient of this hose').optional(),
  'coefficient-origin': originSchema.optional(),
  valve: valveField('Valve at its upstream end').prefault('open'),
  check: flagField('Lets water pass from from to to only').optional(),
  terrain: z
    .array(
      z.strictObject({
        along: quantityField(ranges.length, 'Distance along the line'),
        elevation: quantityField(ranges.elevation, 'Height there'),
      }),
    )
    .max(sizeLimits.listLength)
    .optional(),
  limit: quantityField(ranges.hoseLimit, "Greatest pressure by the hose's marking").optional(),
});

const nozzle = {
  ...placed,
  'sits-on': portField("An appliance's outlet that it sits on, instead of a hose").optional(),
  open: flagField('Its bale, or the valve behind the tip').prefault(true),
  use: choiceField(['hand line', 'master stream'], 'Hand line or master stream').prefault(
    'hand line',
  ),
  pressure: quantityField(ranges.nozzlePressure, 'Rated nozzle pressure'),
};
const nozzleFlow = (description: string) => quantityField(ranges.nozzleFlow, description);

export const nozzleSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    ...nozzle,
    kind: z.literal('smooth-bore'),
    tip: quantityField(ranges.tip, 'Tip diameter'),
  }),
  z.strictObject({ ...nozzle, kind: z.literal('fog'), flow: nozzleFlow('Rated flow') }),
  z.strictObject({
    ...nozzle,
    kind: z.literal('selectable'),
    settings: z.array(nozzleFlow('A setting')).min(1).max(sizeLimits.listLength),
    selected: nozzleFlow('The setting in use'),
  }),
  z.strictObject({
    ...nozzle,
    kind: z.literal('automatic'),
    least: nozzleFlow('Least flow at its rated pressure'),
    greatest: nozzleFlow('Greatest flow at its rated pressure'),
  }),
]);

const limit = (description: string) => quantityField(ranges.limitPressure, description).optional();

export const limitsSchema = z.strictObject({
  'main-residual': limit('Least pressure in the main'),
  'booster-intake': limit('Least intake of a booster at the hydrant'),
  'hose-fed-intake': limit('Least intake of any other pump fed by hose'),
  'supply-hose': limit('Greatest pressure in hose of 3½ in and larger'),
  'attack-hose': limit('Greatest pressure in smaller hose'),
  hilltop: limit('Least pressure in hose on a hill between its ends'),
  'greatest-intake': limit('Greatest intake pressure before a caution'),
  'nozzle-least': plainField(plainRanges.nozzleLeast, 'Share of rated pressure').optional(),
  'nozzle-greatest': plainField(plainRanges.nozzleGreatest, 'Share of rated pressure').optional(),
  'hose-velocity': quantityField(ranges.hoseVelocity, 'Velocity worth a caution').optional(),
  'draft-vacuum': quantityField(ranges.vacuum, 'Greatest vacuum when drafting').optional(),
  'least-discharge': limit('Least discharge pressure that a pump is set to'),
});

export const departmentSchema = z.strictObject({
  hose: z
    .array(
      z.strictObject({
        size: hoseField('Hose size'),
        coefficient: plainField(plainRanges.coefficient, 'The department’s own coefficient'),
        origin: originSchema,
      }),
    )
    .max(sizeLimits.listLength)
    .optional(),
  limits: limitsSchema.optional(),
  'limits-origin': originSchema.optional(),
});

// No key is a word that YAML 1.1 reads as true or false (on, off, yes, no): other programs
// may read these files too.
export const writtenPlanSchema = z.strictObject({
  plugside: z.literal(formatVersion),
  title: textField('Title of the plan'),
  note: textField('Anything worth knowing', sizeLimits.noteLength).optional(),
  invented: flagField('Made up for practice').prefault(false),
  scene: idField('The rig at the scene'),
  demand: quantityField(ranges.demand, 'What the scene needs').optional(),
  'scene-engines': z.array(sceneEngineSchema).min(1).max(sizeLimits.listLength).optional(),
  hydrants: z.array(hydrantSchema).default([]),
  'group-tests': z.array(groupTestSchema).max(sizeLimits.listLength).optional(),
  drafts: z.array(draftSchema).default([]),
  rigs: z.array(rigSchema).default([]),
  appliances: z.array(applianceSchema).default([]),
  lines: z.array(lineSchema).default([]),
  nozzles: z.array(nozzleSchema).default([]),
  department: departmentSchema.default({}),
});

/** The written form after parsing: written keys, inside units. */
export type WrittenPlan = z.output<typeof writtenPlanSchema>;
