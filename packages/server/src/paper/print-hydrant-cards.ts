import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import {
  hydrantCardsFrom,
  pickedRig,
  readDepartment,
  renderHydrantCard,
  renderHydrantCards,
  writePdf,
} from '@plugside/paper';
import {
  districtStreets,
  everyRecord,
  flowTestsAhead,
  NotFoundError,
  planTest,
  planTests,
  type RecordStore,
  readDistrict,
  type Stored,
} from '@plugside/records';
import { ProblemError } from '../problem.ts';
import type { RecordsAtHand } from '../threads/records-at-hand.ts';
import type { CardsBody } from './cards-request.ts';
import { MOST_CARDS } from './most-cards.ts';
import type { PrintedAs } from './paper-query.ts';
import { bytesOf, optionsFor } from './printed.ts';

/** Half the width of the country that neighbours are looked for in [degrees of latitude]: about 1.4 miles. */
const AROUND_DEGREES = 0.02;

/** One hydrant's card, its neighbours from the country around it. @throws NotFoundError */
export async function printHydrantCard(
  { hydrantId, printed }: { hydrantId: string; printed: PrintedAs },
  atHand: RecordsAtHand,
): Promise<Uint8Array> {
  const { store } = atHand;
  const hydrant = await store.get('hydrants', hydrantId);
  if (!hydrant) throw new NotFoundError('hydrants', hydrantId.slice(0, 40));
  const { records: around } = await store.list('hydrants', { box: boxAround(hydrant), limit: 500 });
  const { invented } = await readDistrict(store);
  const cards = hydrantCardsFrom({
    records: await readDepartment(store),
    hydrants: [hydrant],
    around,
    testOf: (one) => planTest(store, one),
    testsAheadOf: async ({ id }) => (await flowTestsAhead(store, id)).get(id),
    streets: await districtStreets(store),
    today: today(),
    invented,
    units: printed.units,
  });
  const { value: card } = await cards.next();
  return bytesOf(renderHydrantCard(card, await optionsFor(atHand, printed)));
}

/** How many cards are asked for, all of them there to be printed. @throws NotFoundError, ProblemError 422 */
export async function countCards(asked: CardsBody, { store }: RecordsAtHand): Promise<number> {
  return (await askedFor(store, asked)).hydrants.length;
}

/**
 * Many cards into a file, made one by one as they are read; tells how many are done.
 * @throws NotFoundError, ProblemError 422; the signal's reason, with no file
 */
export async function printCards(
  { asked, path }: { asked: CardsBody; path: string },
  atHand: RecordsAtHand<number>,
): Promise<void> {
  const { store, signal, tell } = atHand;
  const { hydrants, around, records, attack, booster } = await askedFor(store, asked);
  const { invented } = await readDistrict(store);
  const tests = await planTests(store, around);
  const ahead = await flowTestsAhead(store);
  const cards = hydrantCardsFrom({
    records,
    hydrants,
    around,
    testOf: ({ id }) => tests.get(id),
    testsAheadOf: ({ id }) => ahead.get(id),
    streets: await districtStreets(store),
    attack,
    booster,
    today: today(),
    invented,
    units: asked.units,
  });
  const options = await optionsFor(atHand, asked);
  const total = hydrants.length;
  await mkdir(dirname(path), { recursive: true });
  const pdf = renderHydrantCards(cards, { ...options, total, signal, onProgress: tell });
  await writePdf(path, pdf, signal);
}

async function askedFor(store: RecordStore, { hydrantIds, attackId, boosterId }: CardsBody) {
  const around = await everyRecord(store, 'hydrants');
  const hydrants = hydrantIds
    ? pickedOf(around, hydrantIds)
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
  return { hydrants, around, records, attack: rigOf(attackId), booster: rigOf(boosterId) };
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
