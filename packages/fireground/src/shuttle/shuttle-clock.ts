/** A shuttle's events one after the other: who arrives, dumps, waits and fills, and the tank meanwhile. */
import { type Dumping, minutesToTankEvent, TANK_SLACK_GAL, tankRates } from './portable-tank.ts';
import type {
  ShuttleEventKind,
  ShuttleQueue,
  ShuttleRun,
  ShuttleRunOptions,
} from './shuttle-run.ts';
import type { TenderTrip } from './tender-trip.ts';

type Phase =
  | 'coming'
  | 'waits to dump'
  | 'handling'
  | 'dumping'
  | 'going'
  | 'waits to fill'
  | 'filling';

/** A tender at work. */
export interface Running extends Dumping {
  trip: TenderTrip & { tenderId: string };
  phase: Phase;
  /** When the phase ends [min]; Infinity where something else ends it. */
  untilMin: number;
  waitingSinceMin: number;
  /** Its waiting has been told of. */
  told: boolean;
  waitedMin: number;
  loads: number;
}

export class ShuttleClock {
  readonly #tenders: Running[];
  readonly #options: ShuttleRunOptions;
  #now = 0;
  #levelGal: number;
  #drawFromMin: number | null;
  /** First come, first served. */
  readonly #toDump: Running[] = [];
  readonly #toFill: Running[] = [];
  readonly #run: ShuttleRun;
  #dry = false;
  #full = false;

  constructor(tenders: Running[], options: ShuttleRunOptions, startGal: number) {
    this.#tenders = tenders;
    this.#options = options;
    this.#levelGal = startGal;
    this.#drawFromMin = options.drawFromMin ?? null;
    this.#run = {
      level: [{ atMin: 0, gal: startGal }],
      runsDryAtMin: null,
      dryMin: 0,
      drawFromMin: null,
      dumpedGal: 0,
      drawnGal: 0,
      shortGal: 0,
      endGal: startGal,
      averageGpm: 0,
      dumpQueue: { most: 0, waitedMin: 0 },
      fillQueue: { most: 0, waitedMin: 0 },
      loads: [],
      events: [],
    };
  }

  run(): ShuttleRun {
    const { untilMin } = this.#options;
    for (;;) {
      this.#settle();
      if (this.#now >= untilMin) return this.#finish();
      this.#advance(Math.min(untilMin, this.#nextMin()));
    }
  }

  get #drawing(): boolean {
    return this.#drawFromMin !== null && this.#now >= this.#drawFromMin;
  }

  get #dumping(): Running[] {
    return this.#tenders.filter(({ phase }) => phase === 'dumping');
  }

  #rates() {
    const drawGpm = this.#drawing ? this.#options.drawGpm : 0;
    const rates = tankRates(this.#levelGal, this.#options.tankGal, this.#dumping, drawGpm);
    return { drawGpm, rates };
  }

  #nextMin(): number {
    const { rates } = this.#rates();
    let next =
      this.#now + minutesToTankEvent(this.#levelGal, this.#options.tankGal, this.#dumping, rates);
    for (const { untilMin } of this.#tenders) next = Math.min(next, untilMin);
    if (this.#drawFromMin !== null && this.#drawFromMin > this.#now) {
      next = Math.min(next, this.#drawFromMin);
    }
    return next;
  }

  #advance(toMin: number): void {
    const minutes = toMin - this.#now;
    const { drawGpm, rates } = this.#rates();
    const run = this.#run;
    run.dumpedGal += rates.inGpm * minutes;
    run.drawnGal += rates.outGpm * minutes;
    run.shortGal += (drawGpm - rates.outGpm) * minutes;
    if (drawGpm > rates.outGpm) run.dryMin += minutes;
    for (const tender of this.#dumping) {
      tender.leftGal -= tender.dumpGpm * rates.dumpShare * minutes;
    }
    const { tankGal } = this.#options;
    const level = this.#levelGal + (rates.inGpm - rates.outGpm) * minutes;
    this.#levelGal =
      level <= TANK_SLACK_GAL ? 0 : level >= tankGal - TANK_SLACK_GAL ? tankGal : level;
    this.#now = toMin;
    const last = run.level[run.level.length - 1]!;
    if (last.atMin === toMin) last.gal = this.#levelGal;
    else run.level.push({ atMin: toMin, gal: this.#levelGal });
  }

  /** Everything that is due now, until nothing more is. */
  #settle(): void {
    let moved = true;
    while (moved) {
      moved = false;
      for (const tender of this.#tenders) if (this.#move(tender)) moved = true;
      if (this.#serve()) moved = true;
    }
    this.#watchTank();
  }

  #move(tender: Running): boolean {
    const { trip } = tender;
    if (tender.phase === 'dumping' && tender.leftGal <= TANK_SLACK_GAL) {
      tender.loads++;
      this.#to(tender, 'going', trip.outMin, 'leaves empty');
      this.#drawFromMin ??= this.#now;
      return true;
    }
    if (tender.untilMin > this.#now) return false;
    switch (tender.phase) {
      case 'coming':
        this.#queue(tender, this.#toDump, 'waits to dump');
        return true;
      case 'handling':
        tender.leftGal = trip.loadGal;
        this.#to(tender, 'dumping', Number.POSITIVE_INFINITY, 'dumps');
        return true;
      case 'going':
        this.#queue(tender, this.#toFill, 'waits to fill');
        return true;
      case 'filling':
        this.#to(tender, 'coming', trip.backMin, 'leaves full');
        return true;
      default:
        return false;
    }
  }

  #queue(tender: Running, line: Running[], phase: 'waits to dump' | 'waits to fill'): void {
    tender.phase = phase;
    tender.untilMin = Number.POSITIVE_INFINITY;
    tender.waitingSinceMin = this.#now;
    tender.told = false;
    line.push(tender);
  }

  /** Whoever waits takes a free point. */
  #serve(): boolean {
    const { dumpSite, fillSite } = this.#options;
    const atDump = this.#tenders.filter(
      (t) => t.phase === 'handling' || t.phase === 'dumping',
    ).length;
    const atFill = this.#tenders.filter((t) => t.phase === 'filling').length;
    let served = false;
    for (let free = dumpSite.points - atDump; free > 0; free--) {
      const tender = this.#toDump.shift();
      if (!tender) break;
      this.#waited(tender, this.#run.dumpQueue);
      this.#to(tender, 'handling', tender.trip.dumpHandlingMin);
      served = true;
    }
    for (let free = fillSite.points - atFill; free > 0; free--) {
      const tender = this.#toFill.shift();
      if (!tender) break;
      this.#waited(tender, this.#run.fillQueue);
      this.#to(tender, 'filling', tender.trip.fillSiteMin, 'fills');
      served = true;
    }
    this.#tell(this.#toDump, this.#run.dumpQueue, 'waits to dump');
    this.#tell(this.#toFill, this.#run.fillQueue, 'waits to fill');
    return served;
  }

  #waited(tender: Running, queue: ShuttleQueue): void {
    const minutes = this.#now - tender.waitingSinceMin;
    tender.waitedMin += minutes;
    queue.waitedMin += minutes;
  }

  /** Counts who is left waiting once the points are taken, and says so once. */
  #tell(line: readonly Running[], queue: ShuttleQueue, kind: ShuttleEventKind): void {
    queue.most = Math.max(queue.most, line.length);
    for (const tender of line) {
      if (!tender.told) this.#say(kind, tender.trip.tenderId);
      tender.told = true;
    }
  }

  #to(tender: Running, phase: Phase, minutes: number, kind?: ShuttleEventKind): void {
    tender.phase = phase;
    tender.untilMin = this.#now + minutes;
    if (kind) this.#say(kind, tender.trip.tenderId);
  }

  #say(kind: ShuttleEventKind, tenderId?: string): void {
    this.#run.events.push({ atMin: this.#now, kind, ...(tenderId !== undefined && { tenderId }) });
  }

  #watchTank(): void {
    const run = this.#run;
    if (this.#drawing && run.drawFromMin === null) {
      run.drawFromMin = this.#now;
      this.#say('drawing begins');
    }
    const { drawGpm, rates } = this.#rates();
    const dry = drawGpm > rates.outGpm + 1e-9;
    if (dry !== this.#dry) {
      this.#say(dry ? 'tank dry' : 'tank has water again');
      if (dry) run.runsDryAtMin ??= this.#now;
      this.#dry = dry;
    }
    const full = rates.dumpShare < 1 - 1e-9 && this.#dumping.length > 0;
    if (full && !this.#full) this.#say('tank full');
    this.#full = full;
  }

  #finish(): ShuttleRun {
    const run = this.#run;
    for (const tender of this.#tenders) {
      if (tender.phase === 'waits to dump') this.#waited(tender, run.dumpQueue);
      if (tender.phase === 'waits to fill') this.#waited(tender, run.fillQueue);
    }
    run.endGal = this.#levelGal;
    const drawnMin = run.drawFromMin === null ? 0 : this.#now - run.drawFromMin;
    run.averageGpm = drawnMin > 0 ? run.drawnGal / drawnMin : 0;
    run.loads = this.#tenders.map(({ trip, loads, waitedMin }) => ({
      tenderId: trip.tenderId,
      loads,
      waitedMin,
    }));
    return run;
  }
}
