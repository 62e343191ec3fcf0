import type { Plan, SupplyState } from '@plugside/fireground';
import { useMemo } from 'react';
import { useUnits } from '../../editing/use-units.ts';
import { laysInto } from '../../plan-store/edits/lay.ts';
import type { DrawingSizes } from '../scene/drawing-sizes.ts';
import { type EvolutionScene, evolutionScene } from '../scene/evolution-scene.ts';
import { LabelLayer } from '../scene/LabelLayer.tsx';
import type { Tracks } from '../scene/tracks.ts';
import { evolutionLabels } from './evolution-labels.ts';
import {
  AssistValveGlyph,
  FittingGlyph,
  HydrantGlyph,
  NozzleGlyph,
  RigGlyph,
  WaterGlyph,
} from './glyphs.tsx';
import { HoseShape } from './HoseShape.tsx';
import { LayHandle } from './LayHandle.tsx';

interface EvolutionDrawingProps {
  plan: Plan;
  state: SupplyState;
  tracks: Tracks;
  sizes: DrawingSizes;
  fontsReady: boolean;
  describedBy: string;
}

/** The evolution: the hookup expanded, the lay to scale on its ground, the lines past the scene. */
export function EvolutionDrawing(props: EvolutionDrawingProps) {
  const { plan, state, tracks, sizes, fontsReady, describedBy } = props;
  const units = useUnits();
  const scene = useMemo(() => evolutionScene(plan, tracks, sizes), [plan, tracks, sizes]);
  const written = useMemo(
    () => evolutionLabels(plan, state, scene, sizes, units),
    [plan, state, scene, sizes, units],
  );
  const bounds = useMemo(
    () => ({ x: 0, y: 0, width: sizes.widthPx, height: scene.height - 2 }),
    [sizes.widthPx, scene.height],
  );
  return (
    <div className="evolution">
      <svg
        width={sizes.widthPx}
        height={scene.height}
        viewBox={`0 0 ${sizes.widthPx} ${scene.height}`}
        role="img"
        aria-label="The evolution, from the hydrant to the nozzles"
        aria-describedby={describedBy}
      >
        <Ground scene={scene} />
        {scene.hoses.map((hose) => {
          const id = hose.line.split('#')[0]!;
          const line = plan.lines.find((one) => one.id === id);
          const found = state.lines.find((one) => one.id === id);
          return (
            <HoseShape
              key={hose.line}
              curve={hose.curve}
              widthPx={hose.widthPx}
              flowGpm={found?.flowGpm ?? throughValve(state, id)}
              velocityFtS={found?.velocityFtS ?? 8}
              shut={line?.valve === 'shut'}
              over={found !== undefined && found.greatestPsi > found.limitPsi + 0.05}
            />
          );
        })}
        <Fittings plan={plan} state={state} scene={scene} unit={sizes.compact ? 0.62 : 1} />
        {scene.rigs.map((rig) => {
          const found = state.rigs.find((one) => one.id === rig.id);
          const pumping = found !== undefined && found.netPsi > 0.5 && found.flowGpm > 0.5;
          return (
            <g key={rig.id} transform={`translate(${rig.x} ${rig.y})`}>
              <RigGlyph width={rig.width} height={rig.height} pumping={pumping} />
            </g>
          );
        })}
        <LabelLayer
          labels={written.labels}
          obstacles={written.obstacles}
          soft={written.soft}
          bounds={bounds}
          textPx={sizes.textPx}
          fontsReady={fontsReady}
        />
      </svg>
      {scene.rigs.flatMap((figure) => {
        // Each engine on the lay is held by the first lay that comes to it.
        const lay = laysInto(plan, figure.id)[0];
        const rig = plan.rigs.find((one) => one.id === figure.id);
        if (!lay || rig?.role === 'booster') return [];
        return [
          <LayHandle
            key={figure.id}
            plan={plan}
            lay={lay}
            figure={figure}
            pxPerFt={tracks.scale.pxPerFt}
            risePxPerFt={scene.ground.pxPerFt}
          />,
        ];
      })}
    </div>
  );
}

/** What enters a valve from the hydrant that it sits on [gpm]. */
function throughValve(state: SupplyState, id: string): number {
  const valve = state.assistValves.find((one) => `on:${one.id}` === id);
  return valve ? valve.clapperGpm + valve.suctionGpm : 0;
}

function Ground({ scene }: { scene: EvolutionScene }) {
  return (
    <g className="ground">
      {scene.tracks.map((track) => {
        const bottom = track.top + track.height - 1;
        const points = track.ground.map(([x, y]) => `${x} ${y}`).join('L');
        const startX = track.ground[0]?.[0] ?? 0;
        const endX = track.ground.at(-1)?.[0] ?? 0;
        return (
          <g key={track.sourceId}>
            <path className="earth" d={`M${startX} ${bottom}L${points}L${endX} ${bottom}Z`} />
            <path className="surface-line" d={`M${points}`} />
            <path className="fold" d={`M${track.hookupX[1]} ${track.top + 8}V${bottom}`} />
          </g>
        );
      })}
    </g>
  );
}

interface FittingsProps {
  plan: Plan;
  state: SupplyState;
  scene: EvolutionScene;
  unit: number;
}

function Fittings({ plan, state, scene, unit }: FittingsProps) {
  return scene.fittings.map((one) => {
    const valve = state.assistValves.find((found) => found.id === one.id);
    const nozzle = plan.nozzles.find((found) => found.id === one.id);
    const flow = state.nozzles.find((found) => found.id === one.id)?.flowGpm ?? 0;
    return (
      <g key={one.id} transform={`translate(${one.x} ${one.y})`}>
        {one.kind === 'hydrant' && <HydrantGlyph unit={unit} />}
        {one.kind === 'draft' && <WaterGlyph unit={unit} />}
        {one.kind === 'valve' && (
          <AssistValveGlyph unit={unit} clapperOpen={valve?.clapper === 'open'} />
        )}
        {one.kind === 'nozzle' && (
          <NozzleGlyph flowing={flow > 0.5} master={nozzle?.use === 'master stream'} />
        )}
        {['wye', 'manifold', 'siamese', 'monitor', 'system'].includes(one.kind) && (
          <FittingGlyph kind={one.kind} />
        )}
      </g>
    );
  });
}
