/** Where a new plan can start: the patterns, and three worked examples with invented data. */
import { type Plan, patternList, readPlan } from '@plugside/fireground';
import coldStore from '../../../../examples/cold-store.yaml?raw';
import hillRelay from '../../../../examples/hill-relay.yaml?raw';
import twoHydrants from '../../../../examples/two-hydrants.yaml?raw';

export interface Start {
  id: string;
  kind: 'pattern' | 'example';
  text: string;
  make(): Plan;
}

/** @throws Error where an example that ships with the app cannot be read */
function example(text: string, fileName: string): Plan {
  const read = readPlan(text, { fileName });
  if (!read.ok) throw new Error(read.issues[0]?.message ?? `${fileName} cannot be read.`);
  return read.plan;
}

/** What the app opens with the first time. */
export const firstPlan = (): Plan => example(coldStore, 'cold-store.yaml');

export const starts: readonly Start[] = [
  ...patternList.map(({ id, label, make }): Start => ({ id, kind: 'pattern', text: label, make })),
  {
    id: 'example-cold-store',
    kind: 'example',
    text: 'Cold store: a booster and side lines, uphill',
    make: firstPlan,
  },
  {
    id: 'example-hill-relay',
    kind: 'example',
    text: 'Hill relay: three pumps to a deck gun',
    make: () => example(hillRelay, 'hill-relay.yaml'),
  },
  {
    id: 'example-two-hydrants',
    kind: 'example',
    text: 'Two hydrants and a master stream',
    make: () => example(twoHydrants, 'two-hydrants.yaml'),
  },
];
