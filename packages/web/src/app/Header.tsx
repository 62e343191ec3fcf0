import { Button } from 'react-aria-components';
import { PlaceNav } from '../places/PlaceNav.tsx';
import { usePlan } from '../plan-store/plan-store.ts';
import { PlanMenu } from './PlanMenu.tsx';
import { PlanTitle } from './PlanTitle.tsx';
import { ViewSwitches } from './ViewSwitches.tsx';
import { Wordmark } from './Wordmark.tsx';

/** The places, name of the plan, the way back, the plan's menu, units and theme. */
export function Header() {
  const history = usePlan((state) => state.history);
  const undo = usePlan((state) => state.undo);
  const redo = usePlan((state) => state.redo);
  const before = history.past.at(-1)?.label;
  const after = history.future[0]?.label;
  return (
    <header className="header">
      <Wordmark />
      <PlaceNav />
      <PlanTitle />
      <div className="header-actions">
        <Button
          className="quiet-button"
          isDisabled={before === undefined}
          onPress={undo}
          aria-label={before === undefined ? 'Undo' : `Undo: ${before}`}
        >
          Undo
        </Button>
        <Button
          className="quiet-button"
          isDisabled={after === undefined}
          onPress={redo}
          aria-label={after === undefined ? 'Redo' : `Redo: ${after}`}
        >
          Redo
        </Button>
        <PlanMenu />
        <ViewSwitches />
      </div>
    </header>
  );
}
