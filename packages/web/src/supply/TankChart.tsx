import {
  QuantityError,
  type Situation,
  type SupplyWay,
  type TimelineAnswer,
  tanksOfWay,
} from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';
import { useMemo, useState } from 'react';
import { QuantityField } from '../editing/QuantityField.tsx';
import { type Units, useUnits } from '../editing/use-units.ts';
import { Axes, Graph } from '../field-tests/Graph.tsx';
import { EDGE, evenAxis } from '../field-tests/graph-frame.ts';
import { MinutesField } from './MinutesField.tsx';

interface TankChartProps {
  way: SupplyWay;
  situation: Situation;
}

/** Two lines of an initial attack: 300 gpm (NFPA 1410, from "Engine Evolutions", Fire Engineering). */
const INITIAL_ATTACK_GPM = 300;
const FLOW_RANGE = { min: 10, max: 3000 };
/** From arrival to water from the first line [min]; common practice, no source. */
const FIRST_WATER_MIN = 1.5;

/** The attack engine's tank against the supply's arrival. */
export function TankChart({ way, situation }: TankChartProps) {
  const units = useUnits();
  const [flowGpm, setFlowGpm] = useState(INITIAL_ATTACK_GPM);
  const [firstMin, setFirstMin] = useState(FIRST_WATER_MIN);
  const attack = attackRig(way, situation);
  const tankGal = attack?.rig.tankGal ?? 0;
  const answer = useMemo(
    () => tanksFor(way, situation, { flowGpm, firstMin }, units),
    [way, situation, flowGpm, firstMin, units],
  );
  if (!attack || tankGal === 0) return null;
  const name = attack.rig.name ?? attack.rig.id;
  return (
    <section aria-labelledby="tank" className="tank-part">
      <h3 className="section-name" id="tank">
        {name}&rsquo;s tank against the supply
      </h3>
      <div className="tank-given">
        <span>
          The lines take{' '}
          <QuantityField
            label="Attack flow on tank water"
            kind="flow"
            value={flowGpm}
            {...FLOW_RANGE}
            onChange={setFlowGpm}
          />
        </span>
        <span>
          from
          <MinutesField
            label="First water after arrival, minutes"
            value={firstMin}
            onChange={setFirstMin}
          />
          after arrival
        </span>
      </div>
      {typeof answer === 'string' && <p className="tone-warning">{answer}</p>}
      {answer && typeof answer !== 'string' && (
        <>
          <p className={answer.runsDryAtMin === null ? undefined : 'tone-warning'}>{answer.text}</p>
          <Graph
            summary={answer.text}
            caption={`Water in the tank, ${units.of(1, 'volume').unit}, against minutes from the call`}
          >
            {(widthPx, heightPx) => (
              <Level
                answer={answer}
                tankGal={tankGal}
                units={units}
                widthPx={widthPx}
                heightPx={heightPx}
              />
            )}
          </Graph>
        </>
      )}
    </section>
  );
}

/** The rig at the scene, in the situation's own words. */
function attackRig({ plan, duties }: SupplyWay, { rigs }: Situation) {
  const scene = plan?.rigs.find(({ id }) => id === plan.scene);
  return (
    rigs.find(({ rig }) => scene !== undefined && rig.name === scene.name) ??
    rigs.find(({ rig }) => rig.id === duties[0]?.rigId)
  );
}

function tanksFor(
  way: SupplyWay,
  situation: Situation,
  { flowGpm, firstMin }: { flowGpm: number; firstMin: number },
  units: Units,
): TimelineAnswer | string | null {
  const given = { flowGpm, firstWaterMin: firstMin };
  try {
    return tanksOfWay(way, situation, given, { units: units.system });
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}

interface LevelProps {
  answer: TimelineAnswer;
  tankGal: number;
  units: Units;
  widthPx: number;
  heightPx: number;
}

function Level({ answer, tankGal, units, widthPx, heightPx }: LevelProps) {
  const { tank, supplyAtMin } = answer;
  const base = heightPx - EDGE.bottom;
  const drawn = useMemo(() => {
    const endMin = Math.max(1, ...tank.map(({ atMin }) => atMin));
    const scale = scaleLinear([0, endMin], [EDGE.left, widthPx - EDGE.right]);
    const y = evenAxis(tankGal * 1.1, 'volume', units.system, [base, EDGE.top], 4);
    const corners = tank.map(({ atMin, gal }) => `${scale(atMin)} ${y.at(gal)}`);
    const last = tank.at(-1);
    return {
      at: (minutes: number) => scale(minutes),
      x: {
        at: (minutes: number) => scale(minutes),
        ticks: scale.ticks(6).map((value) => ({ value, text: String(value) })),
      },
      y,
      line: `M${corners.join('L')}`,
      area: `M${scale(tank[0]?.atMin ?? 0)} ${base}L${corners.join('L')}L${scale(last?.atMin ?? 0)} ${base}Z`,
    };
  }, [tank, tankGal, units.system, widthPx, base]);
  const supplyX = supplyAtMin === null ? null : drawn.at(supplyAtMin);
  return (
    <>
      <Axes widthPx={widthPx} heightPx={heightPx} x={drawn.x} y={drawn.y} />
      <path className="tank-area" d={drawn.area} />
      <path className="curve" d={drawn.line} />
      {supplyX !== null && (
        <>
          <path className="here-line" d={`M${supplyX} ${EDGE.top}V${base}`} />
          <text className="needed-text" x={supplyX - 6} y={EDGE.top + 8} textAnchor="end">
            supply
          </text>
        </>
      )}
    </>
  );
}
