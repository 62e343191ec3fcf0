import { DEFERRAL } from '../settings/Cautions.tsx';
import { QuickEstimate } from './QuickEstimate.tsx';

/** The quick estimate as a place of its own in the app. */
export function QuickEstimatePlace() {
  return (
    <div className="quick-place">
      <h1>How many more lines?</h1>
      <p className="quick-lead">One line is flowing. The drop at the intake says what is left.</p>
      <QuickEstimate />
      <p className="deferral">{DEFERRAL}</p>
    </div>
  );
}
