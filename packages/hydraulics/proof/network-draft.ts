/** A network in the making: nodes and links with names given as they come, drawn from a seed. */
import type { LinkSpec, NetworkSpec, NodeSpec, PumpLink } from '@plugside/hydraulics';
import type { RandomSource } from './random-source.ts';

type Without<T, K extends string> = T extends unknown ? Omit<T, K> : never;

/** Coefficients of hose in use, from booster hose to the largest. */
const HOSE = [1100, 150, 24, 15.5, 8, 2, 0.8, 0.677, 0.34, 0.2, 0.1, 0.08, 0.05, 0.03];

export class NetworkDraft {
  readonly nodes: NodeSpec[] = [];
  readonly links: LinkSpec[] = [];
  readonly random: RandomSource;
  /** Lengths, coefficients and heights come from the whole range allowed, not from usual scenes. */
  readonly extreme: boolean;

  constructor(random: RandomSource, extreme: boolean) {
    this.random = random;
    this.extreme = extreme;
  }

  get spec(): NetworkSpec {
    return { nodes: this.nodes, links: this.links };
  }

  node(elevationFt: number, more: Partial<NodeSpec> = {}): string {
    const id = `n${this.nodes.length}`;
    this.nodes.push({ id, elevationFt, ...more });
    return id;
  }

  heightOf(node: string): number {
    return this.nodes.find((one) => one.id === node)?.elevationFt ?? 0;
  }

  link(link: Without<LinkSpec, 'id'>): string {
    const id = `l${this.links.length}`;
    this.links.push({ ...link, id } as LinkSpec);
    return id;
  }

  /** Height of a point near another [ft]. */
  near(elevationFt: number): number {
    const { random } = this;
    if (this.extreme && random.chance(0.3)) return random.between(-200, 500);
    return random.chance(0.5) ? elevationFt : elevationFt + random.between(-30, 40);
  }

  lengthFt(usualLow: number, usualHigh: number): number {
    const { random } = this;
    if (!this.extreme) return Math.round(random.between(usualLow, usualHigh));
    return random.chance(0.05) ? 0 : random.scaled(1, 10000);
  }

  coefficient(usual: readonly number[]): number {
    const { random } = this;
    if (!this.extreme) return random.pick(usual);
    return random.chance(0.5) ? random.pick(HOSE) : random.scaled(0.03, 1100);
  }

  supplyHose(from: string, to: string, check = false): string {
    return this.link({
      kind: 'hose',
      from,
      to,
      coefficient: this.coefficient([0.8, 0.677, 0.34, 0.2, 0.1, 0.08, 0.05]),
      lengthFt: this.lengthFt(20, 1500),
      lines: this.random.chance(0.1) ? 2 : undefined,
      check,
    });
  }

  attackHose(from: string, to: string): string {
    return this.link({
      kind: 'hose',
      from,
      to,
      coefficient: this.coefficient([24, 15.5, 8, 2, 0.8]),
      lengthFt: this.lengthFt(50, 400),
    });
  }

  loss(from: string, to: string, lossPsi: number, atGpm = 1000, check = false): string {
    const wide = this.extreme && this.random.chance(0.3);
    const drawn = wide ? this.random.pick([0, 1e-3, 1, 100, 1000]) : lossPsi;
    return this.link({ kind: 'loss', from, to, lossPsi: drawn, atGpm, check });
  }

  pump(from: string, to: string): string {
    const { random } = this;
    const rated = random.pick([250, 500, 750, 1000, 1250, 1500, 1750, 2000]);
    const pump: Without<PumpLink, 'id'> = {
      kind: 'pump',
      from,
      to,
      capability: this.capability(rated),
    };
    const manner = random.whole(0, 9);
    if (manner <= 6)
      pump.pdpPsi = random.between(
        ...((random.chance(0.8) ? [80, 250] : [0, 400]) as [number, number]),
      );
    else if (manner <= 8) pump.speedFraction = random.between(0.3, 1.2);
    else pump.idle = true;
    if (manner <= 6 && random.chance(0.1)) pump.speedFraction = random.between(0.4, 1.1);
    if (random.chance(0.25)) pump.protectIntakePsi = random.pick([0, 5, 10, 20, 20, 30]);
    if (random.chance(0.6)) pump.passLoss = { lossPsi: random.between(0, 10), atGpm: 1000 };
    return this.link(pump);
  }

  private capability(rated: number): [number, number][] {
    const { random } = this;
    if (random.chance(0.6)) {
      return [
        [0, 375],
        [0.5 * rated, 250],
        [0.7 * rated, 200],
        [rated, 150],
        [1.25 * rated, 120],
        [1.5 * rated, 100],
      ];
    }
    const points: [number, number][] = [[0, random.between(50, 500)]];
    for (let left = random.whole(1, 6); left > 0; left--) {
      const [flow, net] = points.at(-1)!;
      // Flat stretches and falls to nothing are allowed.
      const next = random.chance(0.15) ? net : net * random.between(0, 1);
      points.push([flow + random.between(1, rated), next]);
    }
    return points;
  }

  opening(at: string): string {
    const { random } = this;
    const elevationFt = random.chance(0.3) ? this.near(this.heightOf(at)) : undefined;
    if (random.chance(0.25)) {
      const leastGpm = random.between(50, 300);
      return this.link({
        kind: 'automaticNozzle',
        from: at,
        ratedPsi: random.pick([50, 75, 80, 100]),
        leastGpm,
        greatestGpm: leastGpm * random.between(1.05, 4),
        elevationFt,
      });
    }
    const k = this.extreme ? random.scaled(0.1, 1000) : random.between(5, 120);
    return this.link({ kind: 'nozzle', from: at, k, elevationFt });
  }

  relief(at: string): string {
    const { random } = this;
    return this.link({
      kind: 'relief',
      from: at,
      settingPsi: random.between(20, 250),
      risePsi: random.chance(0.1) ? 0 : random.between(1, 30),
      atGpm: random.between(200, 1500),
    });
  }
}
