/** When water comes: arrivals, laying, connecting, filling the hose, pumping. */
import { hoseVolumeGal } from '../catalogue/hose.ts';
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { LegTasks } from './arrangement.ts';
import type { TimeToWater, WaterTimes } from './choice.ts';
import { rigName } from './crew.ts';
import { type Run, runsOf, runWords } from './laying.ts';
import { type Leg, listed, sourceName } from './leg.ts';
import type { RespondingRig } from './situation.ts';
import type { TaskTimes } from './task-times.ts';

type Step = TimeToWater['steps'][number];

/** One task of a rig, in words that also tell its duty: "lays 900 ft of 5 in from H-114 to the fire". */
export interface RigTask {
  rig: RespondingRig;
  words: string;
  startMin: number;
  endMin: number;
  /** The attack engine couples the supply from here. */
  supplyFrom?: string;
}

/** Steps of a way, and of each source when its water is there. */
export interface TimedWork extends TimeToWater {
  atFireMin: number;
  tasks: RigTask[];
  /** By leg, in the order given. */
  legs: WaterTimes[];
}

/**
 * Steps of a way and when its water is there. Rigs work side by side, each at its own tasks one
 * after another: it lays, connects, hooks up. A crew that a forward-laying rig leaves at the hydrant
 * works there while the rig lays.
 * @param standBy rigs in the line that need not pump, by id: told so, with the time left as it is
 */
export function timeToWater(
  attack: RespondingRig,
  work: readonly LegTasks[],
  times: TaskTimes,
  units: UnitSystem = 'us',
  standBy: ReadonlySet<string> = new Set(),
): TimedWork {
  const clock = new WorkClock(attack, times, units, standBy);
  const legs = clock.play(work);
  const inTime = (one: { startMin: number; endMin: number }, two: typeof one) =>
    one.startMin - two.startMin || one.endMin - two.endMin;
  const steps: Step[] = [
    ...clock.tasks.map(({ rig, words, startMin, endMin }) => ({
      text: `${rigName(rig)} ${words}`,
      startMin,
      endMin,
      rigId: rig.rig.id,
    })),
    ...clock.fills,
  ];
  return {
    steps: steps.sort(inTime),
    tasks: [...clock.tasks].sort(inTime),
    legs,
    atFireMin: clock.atFireMin,
    ...together(legs),
  };
}

/** When a way's water is there, without the words. */
export function waterTimes(
  attack: RespondingRig,
  work: readonly LegTasks[],
  times: TaskTimes,
): WaterTimes {
  return together(new WorkClock(attack, times).play(work));
}

/** The first water of all, and the last of it. */
function together(legs: readonly WaterTimes[]): WaterTimes {
  return {
    waterAtMin: Math.min(...legs.map(({ waterAtMin }) => waterAtMin)),
    fullAtMin: Math.max(...legs.map(({ fullAtMin }) => fullAtMin)),
  };
}

/** Hose of a leg as it comes to lie [min]. */
interface Laid {
  /** By stretch: all of it lies. */
  stretchAt: number[];
  allAt: number;
  /** The end at the water is there to be coupled. */
  waterEndAt: number;
  /** Lays from the water toward the fire, and can leave a crew there. */
  leaves?: RespondingRig;
}

/** Plays the tasks of some legs; each rig has a clock of its own. */
class WorkClock {
  readonly tasks: RigTask[] = [];
  readonly fills: Step[] = [];
  atFireMin = 0;
  readonly #attack: RespondingRig;
  readonly #times: TaskTimes;
  /** No words where nobody reads them. */
  readonly #units: UnitSystem | undefined;
  readonly #free = new Map<RespondingRig, number>();

  readonly #standBy: ReadonlySet<string>;

  constructor(
    attack: RespondingRig,
    times: TaskTimes,
    units?: UnitSystem,
    standBy: ReadonlySet<string> = new Set(),
  ) {
    this.#attack = attack;
    this.#times = times;
    this.#units = units;
    this.#standBy = standBy;
  }

  play(work: readonly LegTasks[]): WaterTimes[] {
    const laid = work.map((one) => this.#lay(one));
    this.atFireMin = this.#freeAt(this.#attack);
    // What lies first is coupled first.
    const connectedAt: number[] = [];
    const inOrder = work.map((_, at) => at).sort((a, b) => laid[a]!.allAt - laid[b]!.allAt);
    for (const at of inOrder) connectedAt[at] = this.#connectIntake(work[at]!, laid[at]!);
    return work.map((one, at) => this.#bringWater(one, laid[at]!, connectedAt[at]!));
  }

  #freeAt(rig: RespondingRig): number {
    return this.#free.get(rig) ?? rig.arrivesMin;
  }

  /** A rig's next task, begun when it is free and not before a time; @returns its end */
  #do(rig: RespondingRig, words: () => string, notBeforeMin: number, lastsMin: number): number {
    const startMin = Math.max(this.#freeAt(rig), notBeforeMin);
    const endMin = startMin + lastsMin;
    this.#free.set(rig, endMin);
    this.#tell(rig, words, startMin, endMin);
    return endMin;
  }

  #tell(rig: RespondingRig, words: () => string, startMin: number, endMin: number): void {
    if (this.#units) this.tasks.push({ rig, words: words(), startMin, endMin });
  }

  #lay({ leg, lay }: LegTasks): Laid {
    const { stopToLayMin, layFtPerMin } = this.#times;
    const laid: Laid = { stretchAt: leg.stretches.map(() => 0), allAt: 0, waterEndAt: 0 };
    for (const run of runsOf({ leg, lay }, this.#attack)) {
      const lastsMin = stopToLayMin + (run.toFt - run.fromFt) / layFtPerMin;
      const endAt = this.#do(run.rig, () => runWords(leg, run, this.#units!), 0, lastsMin);
      laid.stretchAt[run.stretch] = Math.max(laid.stretchAt[run.stretch]!, endAt);
      laid.allAt = Math.max(laid.allAt, endAt);
      if (run.fromFt <= 0) this.#atWater(laid, run, endAt, endAt - lastsMin + stopToLayMin);
    }
    return laid;
  }

  #atWater(laid: Laid, run: Run, endAt: number, stoppedAt: number): void {
    laid.waterEndAt = Math.max(laid.waterEndAt, run.towardWater ? endAt : stoppedAt);
    if (!run.towardWater) laid.leaves ??= run.rig;
  }

  /** By the engines at the fire that take its lines. */
  #connectIntake({ leg, takenBy }: LegTasks, { allAt }: Laid): number {
    const takers = takenBy ?? leg.stretches.at(-1)!.lines.map(() => this.#attack);
    const words = () => `connects the supply from ${sourceName(leg)} to its intake`;
    const ends = [...new Set(takers)].map((rig) => {
      const lines = takers.filter((one) => one === rig).length;
      const endAt = this.#do(rig, words, allAt, lines * this.#times.connectIntakeMin);
      if (this.#units) this.tasks.at(-1)!.supplyFrom = sourceName(leg);
      return endAt;
    });
    return Math.max(...ends);
  }

  #bringWater(work: LegTasks, laid: Laid, connectedAt: number): WaterTimes {
    const { leg } = work;
    const times = this.#times;
    const openAt = leg.source.kind === 'hydrant' ? this.#connectHydrant(leg, laid) : 0;
    // An engine hooks up to what is dressed, and to its valve once that is on.
    const endAt = Math.max(laid.waterEndAt, openAt);
    const readyAt = Math.max(
      0,
      ...leg.pumps.map((rig, at) => this.#hookUp(work, { ...laid, waterEndAt: endAt }, rig, at)),
    );
    const waits = leg.valve ? [connectedAt, openAt] : [connectedAt, openAt, readyAt];
    const fillsAt = Math.max(...waits);
    const waterAtMin = fillsAt + volumeGal(work) / times.chargeGpm;
    const text = `The hose from ${sourceName(leg)} fills`;
    this.fills.push({ text, startMin: fillsAt, endMin: waterAtMin });
    if (leg.pumps.length === 0) return { waterAtMin, fullAtMin: waterAtMin };
    const words = (rig: RespondingRig) =>
      this.#standBy.has(rig.rig.id)
        ? `stands by to ${leg.valve ? 'boost' : 'pump'}`
        : `sets its pressure ${leg.valve ? 'to boost' : 'for the line'}`;
    const setAt = Math.max(waterAtMin, readyAt);
    const ends = leg.pumps.map((rig) =>
      this.#do(rig, () => words(rig), setAt, times.setPressureMin),
    );
    return { waterAtMin, fullAtMin: Math.max(...ends) };
  }

  /** By the crew left there, else by the engine that pumps there. A valve goes on with whoever brings it. */
  #connectHydrant(leg: Leg, { leaves, waterEndAt }: Laid): number {
    const [pump] = leg.pumps;
    const lastsMin = this.#times.connectHydrantMin + (leg.valve ? this.#times.fitValveMin : 0);
    const withValve = leg.valve ? ' with its assist valve' : '';
    const bringsIt = !leg.valve || leaves?.assistValve || !pump?.assistValve;
    if (leaves && (bringsIt || !pump)) {
      const words = () => `leaves a crew at ${sourceName(leg)} to connect${withValve}`;
      this.#tell(leaves, words, waterEndAt, waterEndAt + lastsMin);
      return waterEndAt + lastsMin;
    }
    const words = () => `connects to ${sourceName(leg)}${withValve}`;
    return this.#do(pump ?? this.#attack, words, waterEndAt, lastsMin);
  }

  #hookUp({ leg, suction }: LegTasks, laid: Laid, rig: RespondingRig, at: number): number {
    const { hookUpPumpMin, setUpDraftMin, suctionLineMin } = this.#times;
    const from = sourceName(leg);
    if (at > 0) {
      const where = () => sayIn(this.#units!).full(leg.stretches[at]!.fromFt, 'length');
      const lies = Math.max(laid.stretchAt[at - 1]!, laid.stretchAt[at]!);
      return this.#do(
        rig,
        () => `hooks up in the line ${where()} from ${from}`,
        lies,
        hookUpPumpMin,
      );
    }
    if (leg.source.kind === 'water') {
      return this.#do(rig, () => `sets up at draft at ${from}`, laid.waterEndAt, setUpDraftMin);
    }
    const words = () => {
      const lines = suction.map(({ hose }) => formatHoseSize(hose, this.#units));
      const more = lines.length > 0 ? ` with ${listed(lines)} more from the side outlets` : '';
      return `hooks up ${leg.valve ? 'to the assist valve ' : ''}at ${from}${more}`;
    };
    const lastsMin = hookUpPumpMin + suction.length * suctionLineMin;
    return this.#do(rig, words, laid.waterEndAt, lastsMin);
  }
}

/** Water in all the hose as it is laid [gal]. */
function volumeGal({ lay }: LegTasks): number {
  return lay.reduce((gallons, { hose, lengthFt }) => gallons + hoseVolumeGal(hose, lengthFt), 0);
}
