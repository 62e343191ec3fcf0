import {
  QuantityError,
  type Situation,
  type SupplyWay,
  type TimelineAnswer,
  tanksOfWay,
} from '@plugside/fireground';
import { useMemo, useState } from 'react';
import { QuantityField } from '../editing/QuantityField.tsx';
import { type Units, useUnits } from '../editing/use-units.ts';
import { Graph } from '../field-tests/Graph.tsx';
import { LevelGraph } from './LevelGraph.tsx';
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
              <LevelGraph
                level={answer.tank}
                moment={
                  answer.supplyAtMin === null ? null : { atMin: answer.supplyAtMin, text: 'supply' }
                }
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
