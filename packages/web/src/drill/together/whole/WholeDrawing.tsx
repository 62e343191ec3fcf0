import type { DrillScene, DrillView } from '@plugside/drill';
import { useMemo, useRef } from 'react';
import { useUnits } from '../../../editing/use-units.ts';
import { useWidth } from '../../../lay/use-drawing.ts';
import { inUnits } from '../../words.ts';
import { boxHeight, pieceFacts } from './piece-facts.ts';
import { sitsLooks } from './sits-looks.ts';
import { WholeHose } from './WholeHose.tsx';
import { frameOf, scaleFor } from './whole-frame.ts';
import { layoutWhole } from './whole-layout.ts';
import './whole.css';

interface WholeDrawingProps {
  scene: DrillScene;
  /** Of one who sees all. */
  view: DrillView;
  /** As large as the width allows up to so many times, to be read from afar. */
  most?: number;
}

/** The whole drill at a glance, from the water to the fire, with the truth at every piece and hose. */
export function WholeDrawing({ scene, view, most = 1 }: WholeDrawingProps) {
  const units = useUnits();
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const layout = useMemo(() => layoutWhole(scene), [scene]);
  const scale = Math.min(most, scaleFor(layout, width));
  const frame = useMemo(
    () => (width > 0 ? frameOf(layout, width / scale, (id) => boxHeight(scene, id)) : null),
    [scene, layout, width, scale],
  );
  const faulty = new Set(
    view.truth?.state.faults.flatMap((fault) =>
      Object.entries(fault).flatMap(([key, value]) =>
        ['hydrant', 'valve', 'hose', 'rig'].includes(key) ? [String(value)] : [],
      ),
    ),
  );
  return (
    <section
      className="whole"
      ref={place}
      data-large={scale > 1 || undefined}
      aria-label="The whole drill"
      // Wider than its place it is scrolled, by keys too.
      {...(frame && frame.width > width + 1 && scale === 1 && { tabIndex: 0 })}
    >
      {frame && view.truth && (
        <div
          className="whole-sheet"
          data-narrow={frame.narrow || undefined}
          style={{
            width: frame.width,
            height: frame.height,
            ...(scale > 1 && {
              transform: `scale(${scale})`,
              transformOrigin: '0 0',
              margin: `0 0 ${frame.height * (scale - 1)}px`,
            }),
          }}
        >
          <svg width={frame.width} height={frame.height} aria-hidden="true">
            {layout.sits.map(({ piece, on }) => (
              <path
                key={piece}
                className="whole-sits"
                data-looks={sitsLooks(view.truth!, piece, on)}
                d={frame.between(on, piece, { lane: 0, lanes: 1 }).d}
              />
            ))}
            {(['line', 'words'] as const).flatMap((part) =>
              view.truth!.state.hoses.map((hose) => (
                <WholeHose
                  key={`${part} ${hose.id}`}
                  part={part}
                  scene={scene}
                  hose={hose}
                  all={view.truth!.state.hoses}
                  share={view.truth!.hoses.find(({ id }) => id === hose.id)?.fillShare ?? 0}
                  frame={frame}
                  faulty={faulty.has(hose.id)}
                />
              )),
            )}
          </svg>
          {layout.spots.map((spot) => {
            const { x, y, width, height } = frame.at(spot.id);
            const facts = pieceFacts(spot.id, view, scene.benchmarks.intakePsi, units);
            return (
              <div
                key={spot.id}
                className="whole-piece"
                data-faulty={faulty.has(spot.id) || undefined}
                style={{ left: x, top: y, width, minHeight: height }}
              >
                <p className="whole-name">{inUnits(spot.name, units)}</p>
                <dl>
                  {facts.map(({ label, text, warns }) => (
                    <div key={label} data-warns={warns || undefined}>
                      <dt>{label}</dt>
                      <dd className="figures">
                        {warns && <span className="hidden-text">out of bounds: </span>}
                        {text}
                      </dd>
                    </div>
                  ))}
                </dl>
              </div>
            );
          })}
        </div>
      )}
    </section>
  );
}
