import { PlaceNav } from '../places/PlaceNav.tsx';
import { usePlan } from '../plan-store/plan-store.ts';
import { PlanMenu } from './PlanMenu.tsx';
import { PlanTitle } from './PlanTitle.tsx';
import { UndoButtons } from './UndoButtons.tsx';
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
        <UndoButtons before={before} after={after} undo={undo} redo={redo} />
        <PlanMenu />
        <ViewSwitches />
      </div>
    </header>
  );
}
