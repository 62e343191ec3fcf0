import { fiveInchSpread, nameOf, pieceOf } from '@plugside/fireground';
import { type Units, useUnits } from '../editing/use-units.ts';
import type { CoefficientBand } from '../plan-store/pictures.ts';
import { groundScale } from './scene/ground.ts';
import type { Tracks } from './scene/tracks.ts';

interface DrawingNotesProps {
  id: string;
  band: CoefficientBand | null;
  tracks: Tracks;
}

/** One line each for what the drawings leave to be said. */
export function DrawingNotes({ id, band, tracks }: DrawingNotesProps) {
  const units = useUnits();
  const ground = groundScale(tracks, 96);
  const times = Math.round(ground.exaggeration);
  return (
    <div className="drawing-notes" id={id}>
      {band && (
        <p>
          <span className="key key-band" aria-hidden="true" /> The band is 5 in hose at C{' '}
          {fiveInchSpread.low.toFixed(2)} to {fiveInchSpread.high.toFixed(2)}: {spread(band, units)}
          . Hose differs; measuring your own settles it.
        </p>
      )}
      <p>
        Hatching marks where not to be: stay under the ceiling over hose, and on top of the steps
        under intakes and the main. Drag an engine to change its lay and rise, and a ring on the
        profile to set its pump.
        {times > 1 && ` Heights are drawn about ${times} times taller than distances.`}
      </p>
    </div>
  );
}

/** What the hose's spread does to the answer: to the flow, or to the source pump's setting for a flow. */
function spread(band: CoefficientBand, units: Units): string {
  if (band.low.question !== 'set') {
    const [low, high] = [band.low.state.sceneGpm, band.high.state.sceneGpm];
    if (units.number(low, 'flow') === units.number(high, 'flow')) return intakeSpread(band, units);
    return `${units.number(Math.min(low, high), 'flow')} to ${units.text(Math.max(low, high), 'flow')}`;
  }
  const order = band.low.orders[0];
  const other = band.high.orders.find((one) => one.id === order?.id);
  if (!order || !other) return '';
  const [low, high] = [order.pdpPsi, other.pdpPsi];
  const piece = pieceOf(band.low.plan, order.id);
  return `${piece ? nameOf(piece) : order.id} at ${units.number(Math.min(low, high), 'pressure')} to ${units.text(Math.max(low, high), 'pressure')}`;
}

/** Where the flow is the nozzles' own, the hose shows in what is left for the attack engine. */
function intakeSpread(band: CoefficientBand, units: Units): string {
  const [low, high] = [band.low.state.sceneIntakePsi, band.high.state.sceneIntakePsi];
  const scene = pieceOf(band.low.plan, band.low.plan.scene);
  const numbers = [Math.min(low, high), Math.max(low, high)].map((psi) =>
    units.of(psi, 'pressure'),
  );
  if (numbers[0]!.number === numbers[1]!.number) return 'the same answer at both ends';
  return `${numbers[0]!.number} to ${numbers[1]!.number} ${numbers[1]!.unit} at ${scene ? nameOf(scene) : 'the scene'}'s intake`;
}
