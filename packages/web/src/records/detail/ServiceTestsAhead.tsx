import type { Stored } from '@plugside/records/model';
import { testsAhead } from '@plugside/records/planning';
import { todayIso } from '../../district/words.ts';
import { Findings } from '../../field-tests/index.ts';
import type { Values } from '../form/draft.ts';

/** Service tests of a length that cannot have been made yet: they neither pass nor fail it. */
export function ServiceTestsAhead({ hose }: { hose: Values }) {
  const { serviceTests } = hose as unknown as Stored<'hose'>;
  const found = testsAhead('The service test', serviceTests, todayIso());
  return found.length === 0 ? null : (
    <section className="related-part" aria-label="Service tests">
      <Findings findings={found} />
    </section>
  );
}
