import { useUnits } from '../../editing/use-units.ts';
import { inUnits } from '../words.ts';
import { useStage } from './stage-context.ts';

/** Why what was touched here could not be done. */
export function StageRefusal({ mark }: { mark: string }) {
  const { refused } = useStage();
  const units = useUnits();
  if (!refused?.marks.includes(mark)) return null;
  return (
    <p className="refusal">
      <span className="caution-shape" aria-hidden="true" />
      {inUnits(refused.message, units)}
    </p>
  );
}
