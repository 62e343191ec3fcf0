import { profileOf } from '@plugside/fireground';
import { useId, useMemo, useRef } from 'react';
import { useUnits } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';
import type { CoefficientBand } from '../plan-store/pictures.ts';
import { Captions } from './captions/Captions.tsx';
import { DrawingNotes } from './DrawingNotes.tsx';
import { EvolutionDrawing } from './evolution/EvolutionDrawing.tsx';
import { ProfileDrawing } from './profile/ProfileDrawing.tsx';
import { drawingSizes } from './scene/drawing-sizes.ts';
import { placeTracks } from './scene/tracks.ts';
import type { UnassistedPicture } from './unassisted.ts';
import { useFontsReady, useWidth } from './use-drawing.ts';

interface LayViewProps {
  answered: Answered;
  unassisted: UnassistedPicture | null;
  band: CoefficientBand | null;
}

/** The two drawings on their one axis, with what is given written over them. */
export function LayView({ answered, unassisted, band }: LayViewProps) {
  const frame = useRef<HTMLDivElement>(null);
  const widthPx = useWidth(frame);
  const fontsReady = useFontsReady();
  const describedBy = useId();
  const units = useUnits();
  const { plan } = answered;
  const bareSource =
    plan.drafts.length === 0 &&
    plan.rigs.every((rig) => rig.role !== 'booster') &&
    plan.appliances.every((one) => one.kind !== 'assist-valve');
  const sizes = useMemo(
    () => drawingSizes(Math.max(widthPx, 280), bareSource),
    [widthPx, bareSource],
  );
  const profile = useMemo(() => profileOf(answered.plan, answered.state), [answered]);
  const tracks = useMemo(() => placeTracks(profile, sizes), [profile, sizes]);
  const alone = useMemo(() => {
    if (!unassisted) return null;
    const text = `hydrant pressure alone: ${units.text(unassisted.flowGpm, 'flow')}`;
    return { tracks: placeTracks(unassisted.profile, sizes), text };
  }, [unassisted, sizes, units]);
  const range = useMemo(() => {
    if (!band) return null;
    const placed = (one: Answered) => placeTracks(profileOf(one.plan, one.state), sizes);
    return { low: placed(band.low), high: placed(band.high) };
  }, [band, sizes]);
  return (
    <div className="lay-view" ref={frame}>
      {widthPx > 0 && (
        <>
          <Captions answered={answered} tracks={tracks} sizes={sizes} />
          <div className="drawings">
            <EvolutionDrawing
              plan={answered.plan}
              state={answered.state}
              tracks={tracks}
              sizes={sizes}
              fontsReady={fontsReady}
              describedBy={describedBy}
            />
            <p className="drawing-name" aria-hidden="true">
              Pressure along the lay, {units.of(1, 'pressure').unit}
            </p>
            <ProfileDrawing
              answered={answered}
              tracks={tracks}
              sizes={sizes}
              unassisted={alone}
              band={range}
              fontsReady={fontsReady}
              describedBy={describedBy}
            />
          </div>
          <DrawingNotes id={describedBy} band={band} tracks={tracks} />
        </>
      )}
    </div>
  );
}
