import { fiveInchSpread } from '@plugside/fireground';
import { useUnits } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';
import type { CoefficientBand } from '../plan-store/pictures.ts';
import { groundScale } from './scene/ground.ts';
import type { Tracks } from './scene/tracks.ts';

interface DrawingNotesProps {
  id: string;
  band: CoefficientBand | null;
  tracks: Tracks;
  answered: Answered;
}

/** One line each for what the drawings leave to be said. */
export function DrawingNotes({ id, band, tracks, answered }: DrawingNotesProps) {
  const units = useUnits();
  const ground = groundScale(tracks, 96);
  const times = Math.round(ground.exaggeration);
  return (
    <div className="drawing-notes" id={id}>
      {band && (
        <p>
          <span className="key key-band" aria-hidden="true" /> The band is 5 in hose at C{' '}
          {fiveInchSpread.low.toFixed(2)} to {fiveInchSpread.high.toFixed(2)}
          {answered.question !== 'set' && (
            <>
              : {units.text(Math.max(band.lowGpm, band.highGpm), 'flow')} to{' '}
              {units.text(Math.min(band.lowGpm, band.highGpm), 'flow')}
            </>
          )}
          . Hose differs; measuring your own settles it.
        </p>
      )}
      <p>
        Hatching marks where not to be: stay under the ceiling over hose, and on top of the steps
        under intakes and the main.
        {times > 1 && ` Heights are drawn about ${times} times taller than distances.`}
      </p>
    </div>
  );
}
