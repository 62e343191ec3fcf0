import type { Choice } from '@plugside/fireground';
import { Button } from 'react-aria-components';
import { Progress } from '../editing/Progress.tsx';
import { useUnits } from '../editing/use-units.ts';
import type { Stoppable } from './use-supply.ts';

interface WorkingStripProps {
  choosing: Stoppable<Choice>;
  shown: boolean;
  /** What the ways are worked out for [gpm]. */
  demandGpm: number;
  /** What those on the page are for [gpm]; null for none. */
  shownGpm: number | null;
}

/** While ways are long in the working out: what for, and a way to stop it; once stopped, to go on. */
export function WorkingStrip({ choosing, shown, demandGpm, shownGpm }: WorkingStripProps) {
  const units = useUnits();
  const asked = units.text(demandGpm, 'flow');
  const { stopped } = choosing;
  const told = stopped
    ? stoppedText(asked, shownGpm === null ? null : units.text(shownGpm, 'flow'))
    : `Working out the ways for ${asked}…`;
  return (
    <div className="working-strip" role="status">
      {shown && (
        <div className="working-line">
          {stopped ? <p>{told}</p> : <Progress label="Ways" done={0} total={0} text={told} />}
          <Button className="plain-button" onPress={stopped ? choosing.again : choosing.stop}>
            {stopped ? 'Work out' : 'Stop'}
          </Button>
        </div>
      )}
    </div>
  );
}

/** The same flow for both: something else was changed. */
function stoppedText(asked: string, shown: string | null): string {
  if (shown === null) return `Stopped: the ways for ${asked} are not worked out.`;
  const old = shown === asked ? 'from before the change' : `still for ${shown}`;
  return `Stopped: the ways for ${asked} are not worked out. Those shown are ${old}.`;
}
