import type { FieldsIn } from '../model/index.ts';
import type { Chance } from './chance.ts';
import { type Box, cornersOf, Nearby, tooClose, withoutCorner } from './footprint.ts';
import { groundFt, inWater, lonLatOf, type Point } from './ground.ts';
import { type DemoConstruction, neededFlowGpm, neededFlowOrigin } from './needed-flow.ts';
import { alongLine, type Stretch, type TownMap, type Zone } from './town-map.ts';

export type DemoBuilding = FieldsIn<'buildings'>;

/** What is built where. [ft] each. */
interface Character {
  count: number;
  lotFt: readonly [number, number];
  frontFt: readonly [number, number];
  depthFt: readonly [number, number];
  /** From the middle of the street to the front. */
  setbackFt: readonly [number, number];
  storeys: readonly number[];
  construction: readonly DemoConstruction[];
  uses: readonly string[];
  sprinkleredShare: number;
  shapedShare: number;
}

const dwelling = 'dwelling';

const characters: Partial<Record<Zone, Character>> = {
  centre: {
    count: 700,
    lotFt: [58, 84],
    frontFt: [38, 66],
    depthFt: [45, 92],
    setbackFt: [30, 40],
    storeys: [1, 2, 2, 2, 3, 3, 4, 5],
    construction: [
      'joisted masonry',
      'joisted masonry',
      'wood frame',
      'non-combustible',
      'fire-resistive',
    ],
    uses: [
      'shop',
      'shop with flats',
      'shop with flats',
      'flats',
      'flats',
      'office',
      'restaurant',
      'workshop',
      'hotel',
      'hall',
    ],
    sprinkleredShare: 0.16,
    shapedShare: 0.35,
  },
  suburb: {
    count: 430,
    lotFt: [82, 116],
    frontFt: [36, 58],
    depthFt: [28, 42],
    setbackFt: [46, 60],
    storeys: [1, 1, 2, 2],
    construction: ['wood frame', 'wood frame', 'wood frame', 'joisted masonry'],
    uses: [dwelling],
    sprinkleredShare: 0,
    shapedShare: 0.3,
  },
  hill: {
    count: 240,
    lotFt: [88, 128],
    frontFt: [40, 66],
    depthFt: [30, 48],
    setbackFt: [46, 64],
    storeys: [1, 2, 2],
    construction: ['wood frame'],
    uses: [dwelling],
    sprinkleredShare: 0.04,
    shapedShare: 0.4,
  },
  industrial: {
    count: 66,
    lotFt: [190, 380],
    frontFt: [110, 290],
    depthFt: [110, 250],
    setbackFt: [58, 90],
    storeys: [1, 1, 1, 2],
    construction: ['non-combustible', 'non-combustible', 'joisted masonry'],
    uses: ['warehouse', 'warehouse', 'works', 'works', 'cold store', 'timber yard', 'depot'],
    sprinkleredShare: 0.5,
    shapedShare: 0.3,
  },
  rural: {
    count: 64,
    lotFt: [190, 420],
    frontFt: [38, 90],
    depthFt: [30, 60],
    setbackFt: [70, 150],
    storeys: [1, 1, 2],
    construction: ['wood frame', 'wood frame', 'joisted masonry'],
    uses: ['farmhouse', 'farmhouse', 'barn', 'barn', 'stable'],
    sprinkleredShare: 0,
    shapedShare: 0.2,
  },
};

/** Room kept from the middle of a street, from another building, and from water [ft]. */
const STREET_FT = 24;
const NEIGHBOUR_FT = 8;
const WATER_FT = 25;

interface Lot {
  zone: Zone;
  stretch: Stretch;
  /** House number: even on the left. */
  number: number;
  box: Box;
}

/** 1,500 buildings along the streets, each with its outline, and its needed fire flow by rule. */
export function placeBuildings(town: TownMap, luck: Chance): DemoBuilding[] {
  const streets = new Nearby<readonly Point[]>();
  for (const { line } of town.streets) {
    for (let i = 1; i < line.length; i += 1) {
      const piece = [line[i - 1]!, line[i]!];
      streets.add(piece, piece);
    }
  }
  const built = new Nearby<Lot>();
  const kept: Lot[] = [];
  const left = new Map(Object.entries(characters).map(([zone, { count }]) => [zone, count]));
  for (const lot of luck.shuffled(lotsOf(town, luck))) {
    if ((left.get(lot.zone) ?? 0) === 0) continue;
    const outline = cornersOf(lot.box);
    if (outline.some((corner) => inWater(corner, WATER_FT))) continue;
    if (anyTooClose(streets.near(outline, STREET_FT), outline, STREET_FT)) continue;
    const others = [...built.near(outline, NEIGHBOUR_FT)].map(({ box }) => cornersOf(box));
    if (anyTooClose(others, outline, NEIGHBOUR_FT)) continue;
    built.add(outline, lot);
    kept.push(lot);
    left.set(lot.zone, left.get(lot.zone)! - 1);
  }
  const byAddress = (lot: Lot) =>
    `${town.streets[lot.stretch.street]!.name} ${`${lot.number}`.padStart(5, '0')}`;
  const sorted = kept
    .map((lot) => ({ lot, key: byAddress(lot) }))
    .sort((a, b) => (a.key < b.key ? -1 : 1))
    .map(({ lot }) => lot);
  return sorted.map((lot, i) => describe(town, lot, i, built, luck));
}

function anyTooClose(others: Iterable<readonly Point[]>, outline: Point[], gapFt: number): boolean {
  for (const other of others) if (tooClose(outline, other, gapFt)) return true;
  return false;
}

/** Lots side by side on both sides of every street, more than are built on. */
function lotsOf(town: TownMap, luck: Chance): Lot[] {
  const lots: Lot[] = [];
  const streetFt = new Map<number, number>();
  for (const stretch of town.stretches) {
    const character = characters[stretch.zone];
    const before = streetFt.get(stretch.street) ?? 0;
    streetFt.set(stretch.street, before + stretch.lengthFt);
    if (!character) continue;
    for (const side of [1, -1]) {
      let alongFt = 30;
      for (;;) {
        const lotFt = luck.between(...character.lotFt);
        if (alongFt + lotFt > stretch.lengthFt - 10) break;
        const { at, heading } = alongLine(stretch.line, alongFt + lotFt / 2);
        const halfFrontFt = Math.min(luck.between(...character.frontFt), lotFt - 12) / 2;
        const halfDepthFt = luck.between(...character.depthFt) / 2;
        const outFt = side * (luck.between(...character.setbackFt) + halfDepthFt);
        const middle: Point = [at[0] - outFt * heading[1], at[1] + outFt * heading[0]];
        const along: Point = [side * heading[0], side * heading[1]];
        const number = 2 * Math.floor((before + alongFt) / 40) + (side > 0 ? 2 : 1);
        lots.push({
          zone: stretch.zone,
          stretch,
          number,
          box: { middle, along, halfFrontFt, halfDepthFt },
        });
        alongFt += lotFt;
      }
    }
  }
  return lots;
}

function describe(
  town: TownMap,
  lot: Lot,
  index: number,
  built: Nearby<Lot>,
  luck: Chance,
): DemoBuilding {
  const { box, zone } = lot;
  const character = characters[zone]!;
  const address = `${lot.number} ${town.streets[lot.stretch.street]!.name}`;
  const use = luck.pick(character.uses);
  const isDwelling = use === dwelling || use === 'farmhouse';
  const storeys = use === 'barn' || use === 'stable' ? 1 : luck.pick(character.storeys);
  const construction = luck.pick(character.construction);
  const shaped = luck.happens(character.shapedShare);
  const cut = { front: luck.between(0.3, 0.5), depth: luck.between(0.25, 0.5) };
  const sprinklered = luck.happens(character.sprinkleredShare);
  const outline = shaped ? withoutCorner(box, cut.front, cut.depth) : cornersOf(box);
  const wholeFt2 = 4 * box.halfFrontFt * box.halfDepthFt;
  const areaFt2 = Math.round(shaped ? wholeFt2 * (1 - cut.front * cut.depth) : wholeFt2);
  const ring = outline.map(lonLatOf);
  const [longitude, latitude] = lonLatOf(insideOf(box));
  const { nearestFt, exposures } = surroundings(lot, built);
  const neededGpm = neededFlowGpm({
    construction,
    storeys,
    areaFt2,
    dwelling: isDwelling,
    nearestFt,
    sprinklered,
  });
  return {
    name: isDwelling ? address : `${use[0]!.toUpperCase()}${use.slice(1)}, ${address}`,
    address,
    longitude,
    latitude,
    elevationFt: groundFt(box.middle),
    footprint: [[...ring, ring[0]!]],
    storeys,
    areaFt2,
    construction,
    occupancy: use,
    exposures,
    sprinklered,
    standpipe: storeys >= 4,
    neededGpm,
    origins: { neededGpm: { kind: 'estimated', text: neededFlowOrigin } },
    externalId: `B-${1001 + index}`,
  };
}

/** In the front half, which no cut reaches. */
function insideOf({ middle, along, halfDepthFt }: Box): Point {
  const back = -0.4 * halfDepthFt;
  return [middle[0] - back * along[1], middle[1] + back * along[0]];
}

/** An exposure is a building within 30 ft; four sides at most. */
function surroundings(lot: Lot, built: Nearby<Lot>): { nearestFt: number; exposures: number } {
  const outline = cornersOf(lot.box);
  const others = [...new Set(built.near(outline, 110))].filter((other) => other !== lot);
  const corners = others.map(({ box }) => cornersOf(box));
  const within = (feet: number) => corners.filter((other) => tooClose(outline, other, feet)).length;
  const nearestFt = within(10) ? 10 : within(30) ? 30 : within(100) ? 100 : 101;
  return { nearestFt, exposures: Math.min(4, within(30)) };
}
