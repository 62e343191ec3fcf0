import {
  cardRigs,
  type HydrantCard,
  hydrantCardsFrom,
  pickedRig,
  readDepartment,
} from '@plugside/paper';
import {
  type District,
  districtStreets,
  inTurns,
  NotFoundError,
  planTest,
  planTests,
  type RecordStore,
  readDistrict,
  type Stored,
} from '@plugside/records';
import { ProblemError } from '../problem.ts';
import { type CardsBody, MOST_CARDS } from './cards-request.ts';
import type { PrintedAs } from './paper-query.ts';

/** Half the width of the country that neighbours are looked for in [degrees of latitude]: about 1.4 miles. */
const AROUND_DEGREES = 0.02;

export interface CardsOf {
  cards: AsyncGenerator<HydrantCard>;
  total: number;
  district: District;
}

/** One hydrant's card, its neighbours from the country around it. @throws NotFoundError */
export async function oneCard(
  store: RecordStore,
  hydrantId: string,
  { units }: PrintedAs,
): Promise<{ card: HydrantCard; district: District }> {
  const hydrant = await store.get('hydrants', hydrantId);
  if (!hydrant) throw new NotFoundError('hydrants', hydrantId.slice(0, 40));
  const { records: around } = await store.list('hydrants', { box: boxAround(hydrant), limit: 500 });
  const district = await readDistrict(store);
  const cards = hydrantCardsFrom({
    records: await readDepartment(store),
    hydrants: [hydrant],
    around,
    testOf: (one) => planTest(store, one),
    streets: await districtStreets(store),
    today: today(),
    invented: district.invented,
    units,
  });
  const { value } = await cards.next();
  return { card: value as HydrantCard, district };
}

/** Many cards, made one by one as they are read. @throws NotFoundError, ProblemError 422 */
export async function manyCards(store: RecordStore, body: CardsBody): Promise<CardsOf> {
  const around: Stored<'hydrants'>[] = [];
  for await (const hydrant of inTurns(store.all('hydrants'))) around.push(hydrant);
  const hydrants = body.hydrantIds
    ? pickedOf(around, body.hydrantIds)
    : [...around].sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
  if (hydrants.length === 0 || hydrants.length > MOST_CARDS) {
    throw new ProblemError({
      status: 422,
      title: 'Not accepted',
      detail:
        hydrants.length === 0
          ? 'There is no hydrant on record to print a card of. Enter or import them first.'
          : `There are ${hydrants.length} hydrants; one file holds ${MOST_CARDS} at most. Name some in hydrantIds.`,
    });
  }
  const records = await readDepartment(store);
  const rigOf = (id: string | undefined) => {
    if (id === undefined) return undefined;
    const rig = records.rigs.find((one) => one.id === id);
    if (!rig) throw new NotFoundError('rigs', id);
    return pickedRig(records, rig);
  };
  const usual = cardRigs(records);
  const district = await readDistrict(store);
  const tests = await planTests(store, around);
  return {
    cards: hydrantCardsFrom({
      records,
      hydrants,
      around,
      testOf: ({ id }) => tests.get(id),
      streets: await districtStreets(store),
      attack: rigOf(body.attackId) ?? usual.attack,
      booster: rigOf(body.boosterId) ?? usual.booster,
      today: today(),
      invented: district.invented,
      units: body.units,
    }),
    total: hydrants.length,
    district,
  };
}

function pickedOf(all: readonly Stored<'hydrants'>[], ids: readonly string[]) {
  const byId = new Map(all.map((hydrant) => [hydrant.id, hydrant]));
  return ids.map((id) => {
    const hydrant = byId.get(id);
    if (!hydrant) throw new NotFoundError('hydrants', id);
    return hydrant;
  });
}

function boxAround({ longitude, latitude }: Stored<'hydrants'>) {
  const across = AROUND_DEGREES / Math.max(0.05, Math.cos((latitude * Math.PI) / 180));
  return [
    Math.max(-180, longitude - across),
    Math.max(-90, latitude - AROUND_DEGREES),
    Math.min(180, longitude + across),
    Math.min(90, latitude + AROUND_DEGREES),
  ] as const;
}

const today = () => new Date().toISOString().slice(0, 10);
