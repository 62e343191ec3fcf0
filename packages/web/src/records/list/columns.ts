/** A few columns of each kind's list: what tells one record from another. */
import {
  fitCoefficient,
  flowTestHistory,
  flowTestResult,
  isDatedAhead,
  parseHoseSize,
  pumpCurve,
  shownC,
} from '@plugside/fireground';
import { type Kind, type Stored, sortFields } from '@plugside/records/model';
import type { Units } from '../../editing/use-units.ts';
import { exactPressure } from '../../field-tests/exact-pressure.ts';
import { fieldTables } from '../fields/field-tables.ts';
import type { Values } from '../form/draft.ts';
import { recordTitle, valueWords, yesNoWords } from '../words.ts';
import type { More } from './more.ts';

export interface Cell {
  text: string;
  /** Class of NFPA 291: its colour stands before the text. */
  hydrantClass?: string;
  tone?: 'warning';
  /** As most of them are: left out where room is short. */
  usual?: true;
  /** Says what it is of without its column's head. */
  plain?: true;
}

export interface Column {
  head: string;
  /** The field that it shows, where it shows one. */
  field?: string;
  /** The field that the list is sorted by for it; left out where the server cannot. */
  sort?: string;
  /** A pressure [psi] that the head names as well, in the reader's unit. */
  headPsi?: number;
  /** Figures stand to the right. */
  figures?: true;
  /** A day, a yes or a no: nobody knows of what where its head does not stand over it. */
  bare?: true;
  /** Null where there is nothing to show; undefined while it is being fetched. */
  cell(
    record: Values,
    more: More | undefined,
    units: Units,
    today: string,
  ): Cell | null | undefined;
}

const words = (text: string | null | undefined): Cell | null => (text ? { text } : null);

const field = (kind: Kind, name: string, more: Partial<Column> = {}): Column => {
  const spec = fieldTables[kind].find((one) => one.field === name)!;
  const { is } = spec.type;
  return {
    head: spec.label,
    field: name,
    ...(sortFields(kind).includes(name) && { sort: name }),
    ...((is === 'quantity' || is === 'count') && { figures: true }),
    ...((is === 'date' || is === 'yes-no') && { bare: true }),
    cell: (record, _, units) => {
      const value = record[name];
      // Under one another: bar with as many digits in every row.
      const isBar = is === 'quantity' && spec.type.of === 'pressure' && units.system === 'si';
      if (isBar && typeof value === 'number') return { text: exactPressure(value, units) };
      return words(valueWords(spec, value, units));
    },
    ...more,
  };
};

const title = (kind: Kind, head = 'Name'): Column => ({
  head,
  sort: 'name',
  cell: (record, _, units) => ({ text: recordTitle(kind, record, units) }),
});

const testDay: Column = {
  head: 'Test',
  sort: 'testedOn',
  cell: ({ testedOn }, _, __, today) =>
    isDatedAhead(String(testedOn), today)
      ? { text: `${testedOn}, ahead of today`, tone: 'warning' }
      : { text: String(testedOn) },
};

const named = (head: string, name: string): Column => ({
  head,
  field: name,
  sort: name,
  cell: (record, more) => {
    const id = record[name];
    if (typeof id !== 'string') return null;
    return more && words(more.names.get(id));
  },
});

/** Names of all that a field refers to. */
const namedMany = (head: string, name: string): Column => ({
  head,
  field: name,
  cell: (record, more) => {
    const ids = (record[name] ?? []) as readonly string[];
    if (ids.length === 0) return null;
    return more && { text: ids.map((id) => more.names.get(id) || 'removed').join(', ') };
  },
});

const usedTest = (record: Values, more: More, today: string) =>
  flowTestHistory(more.flowTests.get(record.id as string) ?? [], {
    chosenId: record.planTestId as string | undefined,
    today,
  }).used;

const status: Column = {
  head: 'Status',
  sort: 'status',
  cell: ({ status: now }) =>
    now === 'out of service'
      ? { text: 'out of service', tone: 'warning' }
      : { text: String(now), usual: true },
};

const hydrantColumns: readonly Column[] = [
  title('hydrants'),
  {
    head: 'Class',
    sort: 'q20Gpm',
    cell: (record, more, _, today) => {
      if (!more) return undefined;
      const name = usedTest(record, more, today)?.result.class?.name;
      return name ? { text: name, hydrantClass: name } : null;
    },
  },
  {
    head: 'At',
    headPsi: 20,
    sort: 'q20Gpm',
    figures: true,
    cell: (record, more, units, today) => {
      if (!more) return undefined;
      const q20Gpm = usedTest(record, more, today)?.result.q20Gpm;
      return q20Gpm === undefined || q20Gpm === null ? null : { text: units.text(q20Gpm, 'flow') };
    },
  },
  {
    head: 'Tested on',
    sort: 'testedOn',
    bare: true,
    cell: (record, more, _, today) => {
      if (!more) return undefined;
      const used = usedTest(record, more, today);
      if (!used) return { text: 'not tested', tone: 'warning', plain: true };
      const { retestOn } = used.result;
      const due = retestOn !== null && retestOn <= today;
      return due
        ? { text: `${used.test.testedOn}, due`, tone: 'warning' }
        : { text: used.test.testedOn };
    },
  },
  field('hydrants', 'mainIn'),
  status,
];

const flowTestColumns: readonly Column[] = [
  testDay,
  named('Hydrant', 'hydrantId'),
  field('flow-tests', 'staticPsi'),
  field('flow-tests', 'residualPsi'),
  {
    head: 'At',
    headPsi: 20,
    sort: 'q20Gpm',
    figures: true,
    cell: (record, _, units) => {
      const { q20Gpm } = flowTestResult(record as unknown as Stored<'flow-tests'>);
      return q20Gpm === null ? null : { text: units.text(q20Gpm, 'flow') };
    },
  },
  field('flow-tests', 'by'),
];

const pumpCurveOf = (record: Values, more: More) =>
  pumpCurve(more.pumpTests.get(record.id as string) ?? [], record.ratedGpm as number | undefined);

const rigColumns: readonly Column[] = [
  title('rigs'),
  field('rigs', 'kind'),
  named('Station', 'stationId'),
  field('rigs', 'ratedGpm'),
  field('rigs', 'tankGal'),
  {
    head: 'Pump tested',
    bare: true,
    cell: (record, more) => {
      if (!more) return undefined;
      const test = pumpCurveOf(record, more).test;
      return test ? { text: test.testedOn } : { text: 'not tested', tone: 'warning', plain: true };
    },
  },
  {
    head: 'Of its rating',
    figures: true,
    cell: (record, more) => {
      if (!more) return undefined;
      const share = pumpCurveOf(record, more).shareOfRating;
      return share === null ? null : { text: `${Math.round(share * 100)} %` };
    },
  },
  {
    head: 'Status',
    sort: 'inService',
    cell: ({ inService }) =>
      inService === false
        ? { text: 'out of service', tone: 'warning' }
        : { text: 'in service', usual: true },
  },
];

export const listColumns: Readonly<Record<Kind, readonly Column[]>> = {
  hydrants: hydrantColumns,
  'flow-tests': flowTestColumns,
  'water-sources': [
    title('water-sources'),
    field('water-sources', 'kind'),
    field('water-sources', 'usableGal'),
    field('water-sources', 'liftFt'),
    field('water-sources', 'access'),
  ],
  rigs: rigColumns,
  'pump-tests': [
    testDay,
    named('Rig', 'rigId'),
    field('pump-tests', 'points'),
    field('pump-tests', 'by'),
  ],
  hose: [
    title('hose'),
    field('hose', 'size'),
    field('hose', 'lengthFt'),
    named('Carried on', 'rigId'),
    field('hose', 'inServiceOn'),
    field('hose', 'retiredOn'),
  ],
  'hose-tests': [
    testDay,
    field('hose-tests', 'size'),
    field('hose-tests', 'points'),
    {
      head: 'Coefficient',
      figures: true,
      cell: (record) => {
        const { points, size } = record as unknown as Stored<'hose-tests'>;
        const { coefficient } = fitCoefficient(points, parseHoseSize(size) ?? undefined);
        return coefficient === null ? null : { text: `C ${shownC(coefficient)}` };
      },
    },
    field('hose-tests', 'adopted', {
      head: 'In plans',
      cell: ({ adopted, testedOn }, _, __, today) =>
        adopted && isDatedAhead(String(testedOn), today)
          ? { text: 'not yet', tone: 'warning' }
          : { text: yesNoWords(adopted === true) },
    }),
    field('hose-tests', 'by'),
  ],
  nozzles: [
    title('nozzles'),
    field('nozzles', 'kind'),
    field('nozzles', 'use'),
    field('nozzles', 'ratedPsi'),
    field('nozzles', 'tipIn'),
  ],
  appliances: [title('appliances'), field('appliances', 'kind'), field('appliances', 'loss')],
  buildings: [
    title('buildings'),
    field('buildings', 'address'),
    field('buildings', 'occupancy'),
    field('buildings', 'storeys'),
    field('buildings', 'neededGpm'),
  ],
  streets: [title('streets'), field('streets', 'class'), field('streets', 'footOnly')],
  stations: [title('stations'), field('stations', 'elevationFt')],
  plans: [
    title('plans'),
    named('Building', 'buildingId'),
    namedMany('Hydrants', 'hydrantIds'),
    namedMany('Rigs', 'rigIds'),
  ],
  settings: [title('settings'), field('settings', 'value')],
};

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Tests newest first, all else by name as people count: H-2 before H-10. */
export function inShownOrder<R extends Values>(records: readonly R[]): R[] {
  return [...records].sort((a, b) => {
    if (typeof a.testedOn === 'string' && typeof b.testedOn === 'string') {
      return b.testedOn.localeCompare(a.testedOn);
    }
    return collator.compare(String(a.name ?? ''), String(b.name ?? ''));
  });
}

export const headText = ({ head, headPsi }: Column, units: Units): string =>
  headPsi === undefined ? head : `${head} ${units.text(headPsi, 'pressure')}`;
