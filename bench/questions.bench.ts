/** How long a question takes, from a plan to an answer in words: what a person waits for after each edit. */
import {
  boostedAtHydrant,
  compareBoost,
  improvements,
  mostWater,
  type Plan,
  profileOf,
  relay,
  settingsFor,
  supplyCurves,
  sweep,
  twoHydrants,
  whatNow,
} from '@plugside/fireground';
import { measure, printTable, seededRandom } from './measure.ts';

const boosted = boostedAtHydrant({
  hydrant: { staticPsi: 62, residualPsi: 44, testGpm: 1060 },
  lay: { hose: '5', lengthFt: 900, riseFt: 35 },
  booster: { sideLines: [{ hose: '3' }, { hose: '5' }] },
  attackLines: [{}, {}],
});

/** Plans that differ from call to call, as they do under a drag, so that nothing is answered from memory. */
const random = seededRandom(1);
const dragged: Plan[] = Array.from({ length: 256 }, () =>
  boostedAtHydrant({
    lay: { hose: '5', lengthFt: Math.round(200 + 1800 * random()), riseFt: 40 * random() },
    attackLines: [{}, {}],
  }),
);
let turn = 0;
const next = () => dragged[turn++ % dragged.length]!;

printTable('One question of the boosted lay (ratio: to one solve as set)', [
  measure('what happens now', () => whatNow(boosted)),
  measure('most water', () => mostWater(boosted)),
  measure('settings for 1,000 gpm', () => settingsFor(boosted, 1000)),
  measure('boosted against hydrant alone', () => compareBoost(boosted)),
  measure('improvements', () => improvements(boosted)),
  measure('supply curves', () => supplyCurves(boosted)),
]);

const drawn = whatNow(boosted);
printTable('A drag of the attack engine (ratio: to most water alone)', [
  measure('most water', () => mostWater(next())),
  measure('most water and its profile', () => {
    const { plan, state } = mostWater(next());
    return profileOf(plan, state);
  }),
  measure('profile alone', () => profileOf(drawn.plan, drawn.state)),
]);

printTable('Most water of other evolutions (ratio: to the boosted lay)', [
  measure('boosted lay', () => mostWater(boosted)),
  measure('relay', () => mostWater(relay())),
  measure('two hydrants', () => mostWater(twoHydrants())),
]);

const lengths = Array.from({ length: 100 }, (_, i) => 100 + 20 * i);
printTable('A sweep of the lay over 100 lengths', [
  measure('most water', () => sweep(boosted, { vary: 'lay length', values: lengths }), {
    timedS: 2,
  }),
]);
