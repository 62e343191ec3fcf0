import './field-tests.css';
import { DEFERRAL } from '../settings/Cautions.tsx';
import { QuickEstimate } from './QuickEstimate.tsx';

/** The quick estimate as a place of its own, for under the app's header. */
export function QuickEstimatePlace() {
  return (
    <div className="quick-place">
      <h1>How many more lines?</h1>
      <p className="quick-lead">
        One line is flowing. The drop at the intake says how many more like it the hydrant feeds.
      </p>
      <QuickEstimate />
      <p className="deferral">{DEFERRAL}</p>
    </div>
  );
}
