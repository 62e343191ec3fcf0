import {
  checkPlan,
  coefficientFor,
  describeLine,
  hosePressureLimit,
  hoseVolumeGal,
  type Line,
  nameOf,
  type Plan,
  splitPortRef,
} from '@plugside/fireground';
import { SERVICE_TEST_FACTOR } from '@plugside/hydraulics';
import { defaultBenchmarks, defaultSettings } from './defaults.ts';
import type { DrillStep } from './drill-step.ts';
import type { Fault } from './fault.ts';
import { onFineGrid, onGrid } from './grid.ts';
import { lineGates } from './line-gates.ts';
import type { ValveId } from './names.ts';
import type {
  Benchmarks,
  DrillScene,
  DrillSettings,
  DrillStart,
  ExpectedMessage,
  SceneHose,
  SceneHoseEnd,
  ScenePump,
  SceneValve,
} from './scene.ts';
import { postsOf } from './scene-posts.ts';
import { valvesOf } from './scene-valves.ts';
import { openingForLossFactor } from './valve-loss.ts';

export interface SceneOptions {
  start: DrillStart;
  title?: string;
  evolution?: string;
  /** Hoses that lie loose and dry whatever the start. */
  looseHoses?: readonly string[];
  /** Hoses that are coupled but dry whatever the start. */
  dryHoses?: readonly string[];
  /** What a governor holds at the start where that is not the plan's, by rig [psi]. */
  pdpPsi?: Readonly<Record<string, number>>;
  /** Rigs whose pump is out of gear whatever the start. */
  outOfGear?: readonly string[];
  /** Openings that differ from those the start gives. */
  openings?: Readonly<Record<ValveId, number>>;
  /** Water in tanks that are not full, by rig [gal]. */
  tanksGal?: Readonly<Record<string, number>>;
  steps?: readonly DrillStep[];
  benchmarks?: Partial<Benchmarks>;
  settings?: Partial<DrillSettings>;
  expectedMessages?: readonly ExpectedMessage[];
  /** The nozzle of a line that lies ready until an extra line is called: shut and dry at the start. */
  spareNozzle?: string;
  faults?: readonly Fault[];
}

/** Where a governor stands before anyone has set it [psi]; an engine at idle gives about this. Ours. */
export const idlePdpPsi = 50;

/**
 * A drill's scene from any plan.
 *
 * `hose laid`: every hose lies dry along its way, both ends loose by the pieces they belong to.
 * `hose connected`: coupled as in the plan, dry, every valve shut, pumps out of gear.
 * `water flowing`: hoses full, valves, handles, pumps and nozzles as the plan has them.
 *
 * Lines that start where there is no valve to shut or gate them (a hydrant's steamer, an assist valve)
 * must be open in the plan. Throws RangeError for that, for a plan that has something wrong with it,
 * and for an option that names what is not in the plan.
 */
export function sceneFromPlan(plan: Plan, given: SceneOptions): DrillScene {
  const options = withSpare(plan, given);
  const issue = checkPlan(plan)[0];
  if (issue) throw new RangeError(`This plan cannot be drilled: ${issue.message}`);
  const settings = { ...defaultSettings, ...options.settings };
  const flowing = options.start === 'water flowing';
  const gates = lineGates(plan);
  const hoses = plan.lines.map((line): SceneHose => {
    const gate = gates.get(line.id);
    const hose = hoseOf(plan, line, options, settings);
    return gate ? { ...hose, gatedPsi: onGrid(gate.psi) } : hose;
  });
  const valves = valvesOf(plan);
  if (flowing) for (const valve of valves) valve.opening = plannedOpening(plan, valve, hoses);
  for (const [id, opening] of Object.entries(options.openings ?? {})) {
    const valve = valves.find((one) => one.id === id);
    if (!valve)
      throw new RangeError(
        unknown(
          'openings',
          id,
          valves.map((one) => one.id),
        ),
      );
    if (!(opening >= 0 && opening <= 1))
      throw new RangeError(`openings: ${id} is ${opening}. Give a number from 0 to 1.`);
    valve.opening = opening;
  }
  for (const line of plan.lines) checkValve(line, valves);
  const rigIds = plan.rigs.map((rig) => rig.id);
  for (const rig of options.outOfGear ?? [])
    if (!rigIds.includes(rig)) throw new RangeError(unknown('outOfGear', rig, rigIds));
  return {
    format: 1,
    title: options.title ?? plan.title,
    ...(options.evolution === undefined ? {} : { evolution: options.evolution }),
    start: options.start,
    plan,
    hoses,
    valves,
    pumps: plan.rigs.map((rig): ScenePump => {
      const pumps = flowing && rig.setting.mode !== 'idle' && !options.outOfGear?.includes(rig.id);
      return {
        rigId: rig.id,
        label: nameOf(rig),
        inGear: pumps,
        setting:
          pumps && rig.setting.mode !== 'idle'
            ? startSetting(rig.setting, options.pdpPsi?.[rig.id])
            : { mode: 'governed', pdpPsi: idlePdpPsi },
        primed: true,
      };
    }),
    tanks: plan.rigs
      .filter((rig) => rig.tankGal)
      .map((rig) => ({
        rigId: rig.id,
        capacityGal: rig.tankGal!,
        gal: Math.min(rig.tankGal!, options.tanksGal?.[rig.id] ?? rig.tankGal!),
      })),
    posts: postsOf(plan),
    steps: ordered(options.steps ?? []),
    benchmarks: { ...defaultBenchmarks, ...options.benchmarks },
    expectedMessages: [...(options.expectedMessages ?? [])],
    ...boostOf(plan, options),
    ...(options.spareNozzle === undefined ? {} : { spareNozzle: options.spareNozzle }),
    faults: [...(options.faults ?? [])],
    settings,
  };
}

/** With the line to a spare nozzle dry, and shut at both its ends. */
function withSpare(plan: Plan, options: SceneOptions): SceneOptions {
  const { spareNozzle } = options;
  if (spareNozzle === undefined) return options;
  const line = plan.lines.find(({ to }) => to === `${spareNozzle}.inlet`);
  if (!line) {
    const known = plan.nozzles.map(({ id }) => id);
    throw new RangeError(unknown('spareNozzle', spareNozzle, known));
  }
  return {
    ...options,
    dryHoses: [...(options.dryHoses ?? []), line.id],
    openings: { ...options.openings, [line.from]: 0, [`${spareNozzle}.bale`]: 0 },
  };
}

/**
 * The boost that a drill comes to: a booster that the plan has pump, and that does not hold it yet. In a
 * relay of more engines none is drilled: each raises what the one before it brings.
 */
function boostOf(plan: Plan, options: SceneOptions): Pick<DrillScene, 'boost'> {
  if (plan.rigs.some(({ role }) => role === 'relay')) return {};
  for (const { id, role, setting } of plan.rigs) {
    if (role !== 'booster' || setting.mode !== 'governed') continue;
    const holds =
      options.start === 'water flowing' &&
      !options.outOfGear?.includes(id) &&
      (options.pdpPsi?.[id] ?? setting.pdpPsi) >= setting.pdpPsi;
    if (!holds) return { boost: { rig: id, pdpPsi: setting.pdpPsi } };
  }
  return {};
}

/** Each step with what must come before it said, so that a part of the list means what the whole does. */
function ordered(steps: readonly DrillStep[]): DrillStep[] {
  return steps.map((step, at) => ({
    ...step,
    after: step.after ?? steps.slice(Math.max(0, at - 1), at).map(({ id }) => id),
  }));
}

function startSetting(planned: ScenePump['setting'], pdpPsi?: number): ScenePump['setting'] {
  return pdpPsi === undefined ? planned : { mode: 'governed', pdpPsi };
}

function unknown(field: string, name: string, known: readonly string[]): string {
  return `${field}: there is no "${name}" in the plan. Known: ${known.join(', ') || 'none'}.`;
}

function hoseOf(
  plan: Plan,
  line: Line,
  { start, looseHoses, dryHoses }: SceneOptions,
  settings: DrillSettings,
): SceneHose {
  const loose = start === 'hose laid' || looseHoses?.includes(line.id) === true;
  const end = (port: string): SceneHoseEnd => ({
    ...(loose ? {} : { port }),
    at: splitPortRef(port).pieceId,
    plannedPort: port,
  });
  const { limitPsi } = hosePressureLimit(plan, line);
  return {
    id: line.id,
    label: describeLine(plan, line),
    hose: line.hose,
    lengthFt: line.lengthFt,
    count: line.count,
    coefficient: coefficientFor(plan, line).coefficient,
    capacityGal: onFineGrid(hoseVolumeGal(line.hose, line.lengthFt) * line.count),
    limitPsi,
    burstPsi: limitPsi * SERVICE_TEST_FACTOR * settings.burstMultiple,
    from: end(line.from),
    to: end(line.to),
    full: start === 'water flowing' && !loose && !dryHoses?.includes(line.id),
  };
}

/** Where a valve stands when the plan's water flows. */
function plannedOpening(plan: Plan, valve: SceneValve, hoses: readonly SceneHose[]): number {
  const coupled = (port: string) =>
    hoses.some((hose) => hose.from.port === port || hose.to.port === port);
  switch (valve.kind) {
    case 'hydrant stem': {
      const ports = hoses.flatMap((hose) => [hose.from.port, hose.to.port]);
      const onIt = (port: string | undefined) =>
        port !== undefined && splitPortRef(port).pieceId === valve.pieceId;
      const valves = plan.appliances.filter((one) => one.kind === 'assist-valve');
      return ports.some(onIt) || valves.some((one) => onIt(one.on)) ? 1 : 0;
    }
    case 'assist handle':
      return plan.appliances.some(
        (one) => one.id === valve.pieceId && 'handle' in one && one.handle === 'boost',
      )
        ? 1
        : 0;
    case 'nozzle bale':
      return plan.nozzles.some((one) => one.id === valve.pieceId && one.open) ? 1 : 0;
    case 'tank to pump':
      return plan.rigs.some((one) => one.id === valve.pieceId && one.tankValve === 'open') ? 1 : 0;
    case 'bleeder':
    case 'tank fill':
      return 0;
    default: {
      if (!coupled(valve.id)) return 0;
      const line = plan.lines.find((one) => one.from === valve.id);
      if (line?.valve === 'shut') return 0;
      if (line && typeof line.valve === 'object') {
        const { lossPsi, atGpm } = line.valve.gated;
        return openingForLossFactor(lossPsi / (atGpm * atGpm), valve.boreIn);
      }
      return 1;
    }
  }
}

function checkValve(line: Line, valves: readonly SceneValve[]): void {
  if (line.valve === 'open' || valves.some((valve) => valve.id === line.from)) return;
  throw new RangeError(
    `Line ${line.id} is ${line.valve === 'shut' ? 'shut' : 'gated'} in the plan, but there is no valve at ${line.from} to do it in a drill. Open the line, or start it at a gated outlet.`,
  );
}
