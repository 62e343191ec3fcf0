import type { DrillScene, DrillView } from '@plugside/drill';
import { Gauge } from '../stage/Gauge.tsx';
import { gaugeGroups } from '../stage/gauge-groups.ts';

/** Every gauge that a view has, by engine, large enough to be read from afar. */
export function AllGauges({ scene, view }: { scene: DrillScene; view: DrillView }) {
  return (
    <section className="all-gauges" aria-label="Gauges">
      {gaugeGroups(view).map(({ name, gauges }) => (
        <div className="all-gauges-group" key={gauges[0]!.id}>
          <h2 className="section-name">{name ?? 'Nozzles'}</h2>
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
