/** The invented town's streets and mains, zone by zone, on the plan that `bent` bends. */
import type { Point } from './ground.ts';
import type { WaterSource } from './solved-mains.ts';
import { namesInTurn, numberedWords } from './street-names.ts';
import { type Main, TownMap } from './town-map.ts';

const range = (least: number, greatest: number, step: number) =>
  Array.from({ length: Math.round((greatest - least) / step) + 1 }, (_, i) => least + i * step);

const main = (diameterIn: number, roughness: number): Main => ({ diameterIn, roughness });
/** Laid at different times: the older, the rougher. */
const trunk = main(8, 95);
const newTrunk = main(12, 130);
const works = main(10, 120);
const usual = main(6, 70);
const small = main(4, 60);
const old = main(4, 42);
const suburban = main(6, 90);
const branch = main(4, 105);
const hillMain = main(6, 80);
const hillEnd = main(4, 85);

const eastWest = (north: number, easts: readonly number[]): Point[] =>
  easts.map((east) => [east, north]);
const northSouth = (east: number, norths: readonly number[]): Point[] =>
  norths.map((north) => [east, north]);

/** Streets and mains: the same for every seed, so that the district stays the one that its guide shows. */
export function planTown(): TownMap {
  const town = new TownMap();
  planCentre(town);
  planSuburb(town);
  planIndustrial(town);
  planHill(town);
  planCountry(town);
  return town;
}

function planCentre(town: TownMap): void {
  const easts = range(-2100, 2100, 420);
  const norths = range(-1600, 1600, 320);
  const isOld = (east: number, north: number) => east < 0 && north < 0;
  norths.forEach((north, i) => {
    const name = `${numberedWords.streets[i]} Street`;
    const kind = north === 0 ? 'secondary' : 'residential';
    // Two blocks of the park interrupt one street, the school another.
    const runs =
      north === 640 ? [easts.filter((e) => e <= -840), easts.filter((e) => e >= 0)] : [easts];
    for (const run of runs) {
      for (const [part, pipe] of mainsAlong(run, (east) =>
        north === 0 ? trunk : isOld(east + 1, north) ? old : i % 2 === 0 ? usual : small,
      )) {
        town.street({ name, class: kind, zone: 'centre', main: pipe }, eastWest(north, part));
      }
    }
  });
  easts.forEach((east, i) => {
    const name = `${numberedWords.avenues[i]} Avenue`;
    const kind = east === 0 ? 'secondary' : 'residential';
    let runs = [norths];
    if (east === -420) runs = [norths.filter((n) => n <= 320), norths.filter((n) => n >= 960)];
    if (east === 1260) runs = [norths.filter((n) => n <= -1280), norths.filter((n) => n >= -640)];
    for (const run of runs) {
      for (const [part, pipe] of mainsAlong(run, (north) =>
        east === 0 ? trunk : isOld(east, north + 1) ? old : small,
      )) {
        if (part.length > 1) {
          town.street({ name, class: kind, zone: 'centre', main: pipe }, northSouth(east, part));
        }
      }
    }
  });
  const path = { class: 'footway', zone: 'open', footOnly: true } as const;
  town.street({ ...path, name: 'Park Walk' }, [
    [-840, 640],
    [-420, 640],
    [0, 640],
  ]);
  town.street({ ...path, name: 'Bandstand Walk' }, [
    [-420, 320],
    [-420, 640],
    [-420, 960],
  ]);
}

/** Runs of stops with the same main after each of them. */
function mainsAlong(
  stops: readonly number[],
  pipeAfter: (stop: number) => Main,
): [number[], Main][] {
  const runs: [number[], Main][] = [];
  for (let i = 1; i < stops.length; i += 1) {
    const pipe = pipeAfter(stops[i - 1]!);
    const last = runs[runs.length - 1];
    if (last && last[1] === pipe) last[0].push(stops[i]!);
    else runs.push([[stops[i - 1]!, stops[i]!], pipe]);
  }
  return runs;
}

function planSuburb(town: TownMap): void {
  const name = namesInTurn(numberedWords.west, 'Road');
  const close = namesInTurn(numberedWords.west, 'Close');
  const easts = [-5400, -4950, -4500, -4050, -3600, -3200, -2800, -2100];
  const zone = 'suburb';
  town.street({ name: 'Long Street', class: 'secondary', zone, main: trunk }, eastWest(0, easts));
  for (const north of [-1600, -960, 960, 1600]) {
    town.street({ name: name(), class: 'tertiary', zone, main: suburban }, eastWest(north, easts));
  }
  const across: [east: number, norths: number[]][] = [
    [-5400, [-1600, -960, 0, 960, 1600]],
    [-4500, [-960, 0, 960, 1600]],
    [-3600, [-1600, -960, 0, 960]],
    [-2800, [-1600, -960, 0, 960, 1600]],
  ];
  for (const [east, norths] of across) {
    town.street(
      { name: name(), class: 'residential', zone, main: branch },
      northSouth(east, norths),
    );
  }
  const ends: [east: number, from: number, to: number][] = [
    [-4950, 0, 560],
    [-4050, 0, 580],
    [-3200, 0, 520],
    [-4950, 0, -560],
    [-4050, -960, -380],
    [-3200, 0, -600],
    [-4950, 960, 1300],
    [-4050, 1600, 1260],
    [-3200, -1600, -1260],
    [-4050, -960, -1300],
    [-4950, -1600, -1270],
    [-3200, 960, 1290],
  ];
  for (const [east, from, to] of ends) {
    town.street(
      { name: close(), class: 'residential', zone, main: branch },
      northSouth(east, [from, to]),
    );
  }
}

function planIndustrial(town: TownMap): void {
  const name = namesInTurn(numberedWords.works, 'Way');
  const easts = [2100, 3000, 3900, 4900];
  const zone = 'industrial';
  town.street(
    { name: 'Long Street', class: 'secondary', zone, main: newTrunk },
    eastWest(0, easts),
  );
  for (const north of [-1600, -960, 960]) {
    const pipe = north === -960 ? newTrunk : works;
    town.street({ name: name(), class: 'unclassified', zone, main: pipe }, eastWest(north, easts));
  }
  for (const east of [3000, 3900, 4900]) {
    const run = [-1600, -960, 0, 960];
    town.street({ name: name(), class: 'unclassified', zone, main: works }, northSouth(east, run));
  }
}

function planHill(town: TownMap): void {
  const name = namesInTurn(numberedWords.hill, 'Drive');
  const close = namesInTurn(numberedWords.hill, 'Court');
  const zone = 'hill';
  const easts = [-1680, -1260, -840, -420, 0, 420, 840, 1260, 1680];
  const road = (main_: Main, places: Point[]) =>
    town.street({ name: name(), class: 'residential', zone, main: main_ }, places);
  road(hillMain, eastWest(2200, easts));
  road(hillMain, eastWest(2900, easts));
  road(hillMain, eastWest(3700, easts.slice(2, 7)));
  road(usual, northSouth(0, [1600, 2200]));
  road(hillMain, northSouth(0, [2200, 2900, 3700]));
  road(hillMain, northSouth(-1680, [1600, 2200, 2900]));
  road(hillMain, northSouth(-840, [2200, 2900, 3700]));
  road(hillMain, northSouth(840, [2900, 3700]));
  road(hillMain, northSouth(1680, [1600, 2200, 2900]));
  const ends: [east: number, from: number, to: number][] = [
    [-1260, 2200, 2600],
    [420, 2200, 2620],
    [1260, 2200, 2580],
    [-420, 2900, 3340],
    [420, 2900, 3360],
    [-1260, 2900, 3350],
    [1260, 2900, 3330],
    [-420, 3700, 4150],
    [420, 3700, 4120],
  ];
  for (const [east, from, to] of ends) {
    town.street(
      { name: close(), class: 'residential', zone, main: hillEnd },
      northSouth(east, [from, to]),
    );
  }
}

function planCountry(town: TownMap): void {
  const zone = 'rural';
  const road = { class: 'unclassified', zone } as const;
  town.street({ ...road, name: 'West Road', main: branch }, [
    [-5400, 0],
    [-6300, -60],
  ]);
  town.street({ ...road, name: 'West Road' }, [
    [-6300, -60],
    [-7500, 120],
  ]);
  town.street({ ...road, name: 'East Road', main: suburban }, [
    [4900, 0],
    [5900, 60],
  ]);
  town.street({ ...road, name: 'East Road' }, [
    [5900, 60],
    [7500, -100],
  ]);
  town.street({ ...road, name: 'Pond Lane', main: branch }, [
    [-4500, 1600],
    [-4750, 2400],
  ]);
  town.street({ ...road, name: 'Pond Lane' }, [
    [-4750, 2400],
    [-5150, 3300],
    [-5100, 4100],
    [-5900, 5000],
    [-7000, 5300],
  ]);
  // Over the river, each by its bridge.
  town.street({ ...road, name: 'Market Avenue South', class: 'secondary', main: usual }, [
    [0, -1600],
    [0, -3500],
  ]);
  town.street({ ...road, name: 'Ferry Road' }, [
    [-3600, -1600],
    [-3600, -3500],
  ]);
  const south = { ...road, name: 'South Bank Road' };
  town.street(south, [
    [-6600, -3700],
    [-3600, -3500],
    [-1900, -3500],
  ]);
  town.street({ ...south, main: branch }, [
    [-1900, -3500],
    [0, -3500],
    [2100, -3500],
  ]);
  town.street(south, [
    [2100, -3500],
    [4800, -3600],
    [6600, -3300],
  ]);
  town.street({ ...road, name: 'Orchard Lane', class: 'track' }, [
    [0, -3500],
    [250, -4300],
    [-100, -5200],
  ]);
  town.street({ ...road, name: 'Mill Lane', class: 'track' }, [
    [-3600, -3500],
    [-4100, -4600],
  ]);
  town.street({ ...road, name: 'Meadow Lane', class: 'track' }, [
    [4800, -3600],
    [5200, -4700],
  ]);
  // Passes over both roads to the river without joining them.
  town.street({ name: 'Bypass', class: 'trunk', zone: 'open' }, [
    [-5400, -1600],
    [-4300, -1930],
    [-1800, -1960],
    [1700, -1940],
    [3800, -1930],
    [4900, -1600],
  ]);
}

/** The works in the east feed the mills through a wide main; the tank in the west is far and its main is old. */
export function waterSources(town: TownMap): WaterSource[] {
  return [
    { node: town.node([4900, -960]), headFt: 250, feed: main(12, 120), feedFt: 2600 },
    { node: town.node([-4500, 960]), headFt: 242, feed: main(8, 100), feedFt: 3000 },
  ];
}
