/** Streets and mains as nodes joined by stretches. */
import type { Point } from './ground.ts';

export type Zone = 'centre' | 'suburb' | 'hill' | 'industrial' | 'rural' | 'open';

/** A water main: inside diameter [in] and Hazen–Williams C. */
export interface Main {
  diameterIn: number;
  roughness: number;
}

/** Street from one node to the next. */
export interface Stretch {
  from: number;
  to: number;
  street: number;
  /** From the one to the other, both ends included. */
  line: Point[];
  lengthFt: number;
  zone: Zone;
  main?: Main;
}

export interface TownStreet {
  name: string;
  class: string;
  footOnly: boolean;
  line: Point[];
}

/** By distance along a street, so that curves are smooth. */
const STEP_FT = 150;

/** Streets are planned on a square grid and bent: on the hill more than on the plain. */
export function bent([u, v]: Point): Point {
  const hill = Math.min(1, Math.max(0, (v - 1700) / 900));
  return [
    u +
      260 * Math.sin(v / 1900 + 0.6) +
      60 * Math.sin((u + v) / 1300) +
      130 * hill * Math.sin(v / 330 + u / 900),
    v + 210 * Math.sin(u / 2300) + 60 * Math.cos((u - v) / 1700) + 95 * hill * Math.cos(u / 260),
  ];
}

export function distanceFt([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}

export function lineFt(line: readonly Point[]): number {
  let total = 0;
  for (let i = 1; i < line.length; i += 1) total += distanceFt(line[i - 1]!, line[i]!);
  return total;
}

/** The place so far along a line, and the direction there as a unit vector. */
export function alongLine(line: readonly Point[], alongFt: number): { at: Point; heading: Point } {
  let left = alongFt;
  for (let i = 1; i < line.length; i += 1) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const pieceFt = distanceFt(a, b);
    if (left <= pieceFt || i === line.length - 1) {
      const share = Math.min(1, left / pieceFt);
      const heading: Point = [(b[0] - a[0]) / pieceFt, (b[1] - a[1]) / pieceFt];
      return { at: [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])], heading };
    }
    left -= pieceFt;
  }
  throw new RangeError('A line needs two places or more.');
}

export class TownMap {
  readonly nodes: Point[] = [];
  readonly streets: TownStreet[] = [];
  readonly stretches: Stretch[] = [];
  readonly #known = new Map<string, number>();

  /** The node at a place of the plan; made where it is new. */
  node(place: Point): number {
    const key = place.join();
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#known.set(key, this.nodes.length);
    this.nodes.push(bent(place));
    return this.nodes.length - 1;
  }

  /** A street through places of the plan, which become nodes. */
  street(
    given: { name: string; class: string; zone: Zone; main?: Main; footOnly?: boolean },
    places: readonly Point[],
  ): void {
    const street = this.streets.length;
    const whole: Point[] = [];
    for (let i = 1; i < places.length; i += 1) {
      const [a, b] = [places[i - 1]!, places[i]!];
      const steps = Math.max(1, Math.round(distanceFt(a, b) / STEP_FT));
      const line = Array.from({ length: steps + 1 }, (_, k): Point => {
        const share = k / steps;
        return bent([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]);
      });
      this.stretches.push({
        from: this.node(a),
        to: this.node(b),
        street,
        line,
        lengthFt: lineFt(line),
        zone: given.zone,
        main: given.main,
      });
      whole.push(...(i === 1 ? line : line.slice(1)));
    }
    const { name, class: kind, footOnly = false } = given;
    this.streets.push({ name, class: kind, footOnly, line: whole });
  }
}
