import type { DrillScene, DrillView } from '@plugside/drill';
import { Gauge } from '../stage/Gauge.tsx';
import { gaugeGroups } from '../stage/gauge-groups.ts';

/** Every gauge that a view has, by engine, large enough to be read from afar. */
export function AllGauges({ scene, view }: { scene: DrillScene; view: DrillView }) {
  const groups = gaugeGroups(view);
  const [pump] = view.pumps;
  const rest = groups.length > 1 || !pump ? 'Nozzles' : `${pump.label} and nozzles`;
  return (
    <section className="all-gauges" aria-label="Gauges">
      {groups.map(({ name, gauges }) => (
        <div className="all-gauges-group" key={gauges[0]!.id}>
          <h2 className="section-name">{name ?? rest}</h2>
          <div className="all-gauges-row">
            {gauges.map((gauge) => (
              <Gauge key={gauge.id} scene={scene} view={view} gauge={gauge} readings={undefined} />
            ))}
          </div>
        </div>
      ))}
    </section>
  );
}
