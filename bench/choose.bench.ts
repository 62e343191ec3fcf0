/** How long choosing a supply takes, beside the solving that it cannot do without. */
import {
  chooseSupply,
  type HoseAboard,
  type HydrantAtHand,
  mishaps,
  mostWater,
  newDraft,
  newHydrant,
  newRig,
  type RespondingRig,
  type Situation,
  settingsFor,
  whenToBoost,
} from '@plugside/fireground';
import { measure, printTable, seededRandom } from './measure.ts';

const random = seededRandom(7);
const between = (low: number, high: number) => Math.round(low + (high - low) * random());

function engine(number: number, arrivesMin: number, hose: HoseAboard[]): RespondingRig {
  return {
    rig: newRig(`E${number}`, 'attack', {
      name: `Engine ${number}`,
      ratedGpm: number === 3 ? 2000 : 1500,
    }),
    kind: 'engine',
    arrivesMin,
    hose,
    assistValve: number === 2,
  };
}

function hydrant(number: number): HydrantAtHand {
  const staticPsi = between(45, 90);
  return {
    hydrant: newHydrant(`H-${number}`, {
      staticPsi,
      residualPsi: staticPsi - between(10, 20),
      testGpm: between(600, 1500),
      elevationFt: between(-20, 30),
      main: `main ${number % 4}`,
    }),
    steamer: true,
    lengthFt: 100 * between(3, 22),
    terrain: [{ alongFt: 150, elevationFt: between(-10, 40) }],
  };
}

const five = (lengthFt: number): HoseAboard => ({ hose: '5', lengthFt });
const three = (lengthFt: number): HoseAboard => ({ hose: '3', lengthFt });

/** Five engines, ten hydrants, a pond. */
const situation = (demandGpm: number): Situation => ({
  title: 'Bench',
  invented: true,
  scene: { name: 'Scene', elevationFt: 20 },
  demandGpm,
  rigs: [
    engine(1, 0, [five(800), three(800)]),
    engine(2, 3, [five(1000), three(1000)]),
    engine(3, 5, [five(1000)]),
    engine(4, 8, [{ hose: '4', lengthFt: 1000 }]),
    engine(5, 12, [five(1200)]),
  ],
  hydrants,
  waters: [
    { draft: newDraft('pond', { waterElevationFt: 0, name: 'Pond' }), liftFt: 8, lengthFt: 1200 },
  ],
  fillPlaces: [],
  department: {},
});
const hydrants = Array.from({ length: 10 }, (_, at) => hydrant(at + 1));

for (const demandGpm of [500, 1000, 1500, 2500]) {
  const asked = situation(demandGpm);
  const { ways } = chooseSupply(asked);
  const plans = ways.flatMap(({ plan, meetsDemand }) => (plan ? [{ plan, meetsDemand }] : []));
  printTable(
    `${demandGpm.toLocaleString('en-US')} gpm, 5 engines, 10 hydrants, a pond: ${ways.length} ways (ratio: to solving those alone)`,
    [
      measure('solving the ways that are shown', () =>
        plans.map(({ plan, meetsDemand }) => [
          mostWater(plan),
          meetsDemand && settingsFor(plan, demandGpm),
        ]),
      ),
      measure('choosing', () => chooseSupply(asked)),
    ],
  );
}

const [first] = chooseSupply(situation(1000)).ways;
const near = hydrants[0]!.hydrant;
const [one, two] = situation(1000).rigs as [RespondingRig, RespondingRig];
const lengths = Array.from({ length: 15 }, (_, at) => 200 * (at + 1));
printTable('What follows a choice (ratio: to one most water)', [
  measure('most water of the first way', () => mostWater(first!.plan!)),
  measure('its mishaps', () => mishaps(first!, 1000)),
  measure('when to boost, 15 lengths', () =>
    whenToBoost({ hydrant: near, hose: '5', rigs: [one, two], demandGpm: 750, lengths }),
  ),
]);
