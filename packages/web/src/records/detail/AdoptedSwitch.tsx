import { fitCoefficient, isDatedAhead, parseHoseSize, shownC } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import { useState } from 'react';
import { Switch } from 'react-aria-components';
import { reasonOf } from '../../api/reason.ts';
import { todayIso } from '../../district/words.ts';
import { useUnits } from '../../editing/use-units.ts';
import type { Values } from '../form/draft.ts';
import { useSave } from '../save/use-save.tsx';
import { hoseWords } from '../words.ts';

/** Whether plans use a hose test's coefficient; the department says so, never the test by itself. */
export function AdoptedSwitch({ test }: { test: Values }) {
  const units = useUnits();
  const [failed, setFailed] = useState<string | null>(null);
  const { save, dialog } = useSave('hose-tests', test, () => setFailed(null));
  const { points, size, adopted, testedOn } = test as unknown as Stored<'hose-tests'>;
  const { coefficient, book } = fitCoefficient(points, parseHoseSize(size) ?? undefined);
  const isAhead = isDatedAhead(testedOn, todayIso());
  const hose = `${hoseWords(size, units)} hose`;
  const set = async (on: boolean) => {
    try {
      await save({ adopted: on });
    } catch (error) {
      setFailed(reasonOf(error));
    }
  };
  return (
    <section className="related-part" aria-label="Use in plans">
      <Switch
        className="adopted-switch"
        isSelected={adopted}
        isDisabled={coefficient === null && !adopted}
        onChange={(on) => void set(on)}
      >
        <span className="switch-track" aria-hidden="true" />
        Plans use this coefficient
      </Switch>
      <p className="soft-text">
        {coefficient === null
          ? 'These readings give no coefficient, so there is none to use. Mend the readings first.'
          : isAhead
            ? `Plans leave this test aside until its date is corrected, switched on or not.`
            : adopted
              ? `Every plan with ${hose} takes C ${shownC(coefficient)} from this test${book ? ` instead of ${shownC(book.coefficient)} out of the book` : ''}. Of several adopted tests of one size the newest counts.`
              : `Plans with ${hose} take ${book ? `C ${shownC(book.coefficient)} out of the book` : 'the book’s coefficient'} or another adopted test. Switched on, they take C ${shownC(coefficient)} from this one.`}
      </p>
      <p role="alert" className="form-missing">
        {failed && `Not saved. ${failed}`}
      </p>
      {dialog}
    </section>
  );
}
