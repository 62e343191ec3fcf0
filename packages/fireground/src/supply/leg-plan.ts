/** Legs as a plan that can be drawn and solved. */
import { adapterLoss } from '../catalogue/appliances.ts';
import { usualHookup } from '../patterns/boosted-at-hydrant.ts';
import { newAssistValve, newLine, newManifold, newPlan } from '../patterns/pieces.ts';
import type {
  Appliance,
  DraftSource,
  GroupTest,
  HoseSize,
  Hydrant,
  Line,
  Plan,
  Rig,
} from '../plan/plan.ts';
import type { HoseUse, LegWork } from './arrangement.ts';
import { elevationAtFt, type GroundLine, terrainBetween } from './ground.ts';
import { groundOf, type Leg, sourceName } from './leg.ts';
import type { RespondingRig, Situation } from './situation.ts';

/** A draft's hard suction, as in the rating test: 20 ft of 6 in. */
export const hardSuction = { hose: '6', lengthFt: 20 } as const;

/** Discharge pressure that pumps stand at before they are set [psi]. */
const START_PDP_PSI = 150;

export interface LegPlanned {
  leg: Leg;
  suction: readonly HoseUse[];
  /** Hose as it is laid; the lengths along the street where left out. */
  laid?: LegWork['laid'];
}

/** The plan of some legs into the attack engine; its demand is the situation's. */
export function planOfLegs(
  situation: Pick<
    Situation,
    'title' | 'invented' | 'scene' | 'demandGpm' | 'department' | 'groupTests'
  >,
  attack: RespondingRig,
  legs: readonly LegPlanned[],
  title: string,
): Plan {
  const drawing = new Drawing(situation, attack);
  for (const leg of legs) drawing.add(leg);
  const tests = testsOf(situation, drawing.hydrants);
  return newPlan({
    title,
    invented: situation.invented,
    scene: attack.rig.id,
    demandGpm: situation.demandGpm,
    department: situation.department,
    hydrants: drawing.hydrants,
    ...(tests.length > 0 && { groupTests: tests }),
    drafts: drawing.drafts,
    rigs: [...drawing.pumps, drawing.attack],
    appliances: drawing.appliances,
    lines: drawing.lines,
  });
}

/** Tests in which all of some hydrants flowed, of a plan that has no others. */
function testsOf(
  { groupTests = [] }: Pick<Situation, 'groupTests'>,
  hydrants: readonly Hydrant[],
): GroupTest[] {
  if (hydrants.length < 2) return [];
  const ids = hydrants.map(({ id }) => id);
  return groupTests.flatMap((test) => {
    const flowed = ids.filter((id) => test.hydrants.includes(id));
    return flowed.length < 2 ? [] : [{ ...test, hydrants: flowed }];
  });
}

class Drawing {
  readonly hydrants: Hydrant[] = [];
  readonly drafts: DraftSource[] = [];
  readonly pumps: Rig[] = [];
  readonly appliances: Appliance[] = [];
  readonly lines: Line[] = [];
  readonly attack: Rig;
  /** Its own valve goes on before a pump's. */
  readonly #lays: RespondingRig;
  readonly #scene: Situation['scene'];
  readonly #counts = new Map<string, number>();
  readonly #intakes = new Map<string, number>();

  constructor({ scene }: Pick<Situation, 'scene'>, attack: RespondingRig) {
    this.#scene = scene;
    this.#lays = attack;
    this.attack = {
      ...attack.rig,
      role: 'attack',
      elevationFt: scene.elevationFt,
      setting: { mode: 'governed', pdpPsi: START_PDP_PSI },
    };
  }

  add({ leg, suction, laid }: LegPlanned): void {
    const ground = groundOf(leg.source, this.#scene);
    const pumps = leg.pumps.map((pump, at) => this.#pump(leg, pump, at, ground));
    const starts = this.#source(leg, pumps[0], suction);
    leg.stretches.forEach((stretch, at) => {
      const next = leg.pumps.length > 0 ? pumps[at + 1] : undefined;
      const to = next ?? this.attack;
      stretch.lines.forEach((size, number) => {
        let from = at === 0 ? starts[number]! : `${pumps[at]!.id}.discharge${number + 1}`;
        const lengths = laid?.[at]?.[number]?.map(({ lengthFt }) => lengthFt);
        const { fromFt, toFt, change } = stretch;
        if (change) {
          const adapter = this.#adapter(leg, size, change, ground);
          const firstFt = lengths?.[0] ?? change.fromFt - fromFt;
          this.#layLine(ground, from, `${adapter.id}.inlet1`, size, firstFt, [
            fromFt,
            change.fromFt,
          ]);
          from = `${adapter.id}.outlet1`;
        }
        const startFt = change?.fromFt ?? fromFt;
        const lengthFt = lengths?.at(-1) ?? toFt - startFt;
        this.#layLine(ground, from, this.#intake(to), change?.hose ?? size, lengthFt, [
          startFt,
          toFt,
        ]);
      });
    });
  }

  /** A line along a part of the ground. What is laid past its length lies at its end: hills stay at their place. */
  #layLine(
    ground: GroundLine,
    from: string,
    to: string,
    hose: HoseSize,
    lengthFt: number,
    [fromFt, toFt]: readonly [number, number],
  ): void {
    const line = this.#line('lay', from, to, hose, lengthFt);
    const terrain = terrainBetween(ground, fromFt, toFt);
    if (terrain) line.terrain = terrain;
  }

  #adapter(
    leg: Leg,
    size: HoseSize,
    change: NonNullable<Leg['stretches'][number]['change']>,
    ground: GroundLine,
  ): Appliance {
    const adapter = newManifold(this.#id('adapter'), {
      name: `Adapter from ${size} to ${change.hose} in, ${sourceName(leg)}`,
      elevationFt: elevationAtFt(ground, change.fromFt),
      inlets: 1,
      outlets: 1,
      loss: adapterLoss,
    });
    this.appliances.push(adapter);
    return adapter;
  }

  #pump(leg: Leg, { rig }: RespondingRig, at: number, ground: GroundLine): Rig {
    const alongFt = leg.stretches[at]!.fromFt;
    const pump: Rig = {
      ...rig,
      role: at === 0 && leg.source.kind === 'hydrant' ? 'booster' : 'relay',
      elevationFt: elevationAtFt(ground, alongFt),
      setting: { mode: 'governed', pdpPsi: START_PDP_PSI },
    };
    this.pumps.push(pump);
    return pump;
  }

  /** Sets the water, its hookup and its pump; @returns the ports that the lay's lines leave from */
  #source(leg: Leg, pump: Rig | undefined, suction: readonly HoseUse[]): string[] {
    if (leg.source.kind === 'water') {
      const { draft } = leg.source.at;
      this.drafts.push(draft);
      const { hose, lengthFt } = hardSuction;
      this.#line('suction', `${draft.id}.water`, this.#intake(pump!), hose, lengthFt);
      return dischargesOf(pump!);
    }
    const { hydrant, steamer } = leg.source.at;
    this.hydrants.push(hydrant);
    const outlets = Array.from(
      { length: hydrant.sideOutlets },
      (_, side) => `${hydrant.id}.side${side + 1}`,
    );
    if (steamer) outlets.unshift(`${hydrant.id}.steamer`);
    if (!pump) return outlets;
    const { hose, suctionFt, dischargeFt } = usualHookup;
    const [main, ...sides] = outlets;
    const starts = dischargesOf(pump);
    if (leg.valve) {
      const name = `Assist valve at ${hydrant.name ?? hydrant.id}`;
      const brings = leg.valveBy ?? (this.#lays.assistValve ? this.#lays : leg.pumps[0]!);
      const given = { name, ...brings.valveLosses };
      const valve = newAssistValve(this.#id('valve'), hydrant, 'boost', given);
      this.appliances.push(valve);
      this.#line('suction', `${valve.id}.pump-suction`, this.#intake(pump), hose, suctionFt);
      this.#line('discharge', starts[0]!, `${valve.id}.pump-discharge`, hose, dischargeFt);
      starts[0] = `${valve.id}.supply`;
    } else {
      this.#line('suction', main!, this.#intake(pump), hose, suctionFt);
    }
    suction.forEach((use, number) => {
      this.#line('side', sides[number]!, this.#intake(pump), use.hose, use.lengthFt);
    });
    return starts;
  }

  #line(stem: string, from: string, to: string, hose: HoseSize, lengthFt: number): Line {
    const line = newLine(this.#id(stem), from, to, hose, lengthFt);
    this.lines.push(line);
    return line;
  }

  #id(stem: string): string {
    const number = (this.#counts.get(stem) ?? 0) + 1;
    this.#counts.set(stem, number);
    return `${stem}-${number}`;
  }

  #intake(rig: Pick<Rig, 'id'>): string {
    const number = (this.#intakes.get(rig.id) ?? 0) + 1;
    this.#intakes.set(rig.id, number);
    return `${rig.id}.intake${number}`;
  }
}

function dischargesOf(rig: Rig): string[] {
  return Array.from({ length: rig.discharges }, (_, at) => `${rig.id}.discharge${at + 1}`);
}
