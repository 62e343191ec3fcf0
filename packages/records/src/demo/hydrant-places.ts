import type { Chance } from './chance.ts';
import { groundFt, inWater, type Point } from './ground.ts';
import { alongLine, type Main, type Stretch, type TownMap, type Zone } from './town-map.ts';

export interface DemoHydrant {
  name: string;
  at: Point;
  elevationFt: number;
  /** On this stretch of main, so far from its beginning [ft]. */
  stretch: Stretch;
  alongFt: number;
  main: Main;
  zone: Zone;
}

/** From the middle of the street to the kerb, with the hydrant behind it [ft]. */
const KERB_FT = 15;
/** From a corner or a dead end [ft]. */
const CORNER_FT = 32;
/** Farthest between hydrants on one stretch [ft]. */
const SPACING_FT = 445;
/** From a river's or a pond's edge [ft]. */
const BANK_FT = 60;
/** Barrel's outlet above the ground [ft]. */
const OUTLET_FT = 2;

/** A hydrant at every corner with a main, and between corners where they are far apart. */
export function placeHydrants(town: TownMap, luck: Chance): DemoHydrant[] {
  const found: Omit<DemoHydrant, 'name'>[] = [];
  const served = new Set<number>();
  for (const stretch of town.stretches) {
    const { main, lengthFt, zone } = stretch;
    if (!main) continue;
    const places: number[] = [];
    const ends: [node: number, alongFt: number][] = [
      [stretch.from, CORNER_FT],
      [stretch.to, lengthFt - CORNER_FT],
    ];
    for (const [node, alongFt] of ends) {
      if (served.has(node)) continue;
      served.add(node);
      places.push(alongFt);
    }
    const gaps = Math.ceil(lengthFt / SPACING_FT);
    for (let i = 1; i < gaps; i += 1) {
      places.push((i / gaps) * lengthFt + luck.between(-35, 35));
    }
    for (const alongFt of places) {
      const { at, heading } = alongLine(stretch.line, alongFt);
      const side = luck.happens(0.5) ? KERB_FT : -KERB_FT;
      const kerb: Point = [at[0] - side * heading[1], at[1] + side * heading[0]];
      // None on a bridge.
      if (inWater(kerb, BANK_FT)) continue;
      const elevationFt = Math.round((groundFt(kerb) + OUTLET_FT) * 10) / 10;
      found.push({ at: kerb, elevationFt, stretch, alongFt, main, zone });
    }
  }
  return found.map((hydrant, i) => ({ ...hydrant, name: `H-${101 + i}` }));
}
