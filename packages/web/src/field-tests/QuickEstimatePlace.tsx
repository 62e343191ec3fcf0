import './field-tests.css';
import { PlaceHeader } from '../places/PlaceHeader.tsx';
import { DEFERRAL } from '../settings/Cautions.tsx';
import { QuickEstimate } from './QuickEstimate.tsx';

/** The quick estimate as a place of its own in the app. */
export function QuickEstimatePlace() {
  return (
    <div className="page">
      <PlaceHeader title="How many more lines?" />
      <main>
        <p className="quick-lead">
          One line is flowing. The drop at the intake says how many more like it the hydrant feeds.
        </p>
        <QuickEstimate />
      </main>
      <footer className="footer">{DEFERRAL}</footer>
    </div>
  );
}
