import { fitCoefficient, parseHoseSize } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import { useMemo } from 'react';
import { todayIso } from '../../district/words.ts';
import {
  aheadFindings,
  Findings,
  HoseTestGraph,
  HoseTestNumbers,
} from '../../field-tests/index.ts';
import type { Values } from '../form/draft.ts';

/** A hose test's coefficient beside the book's. */
export function HoseTestResult({ test }: { test: Values }) {
  const { points, size, testedOn } = test as unknown as Stored<'hose-tests'>;
  const fit = useMemo(
    () => fitCoefficient(points, parseHoseSize(size) ?? undefined),
    [points, size],
  );
  return (
    <section className="related-part" aria-label="What the test says">
      <Findings findings={aheadFindings(testedOn, todayIso())} />
      <HoseTestGraph fit={fit} readings={points} />
      <HoseTestNumbers fit={fit} />
    </section>
  );
}
