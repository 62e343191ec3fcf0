import type { ValveView } from '@plugside/drill';
import { nameOf, pieceOf } from '@plugside/fireground';
import { HoseEndList } from './HoseEndList.tsx';
import { shownPorts } from './shown-ports.ts';
import { useStage } from './stage-context.ts';
import { ValveControl } from './ValveControl.tsx';

/** Everything at hand as a list: what the drawing offers, for keyboard and screen reader too. */
export function ControlList({ all }: { all: boolean }) {
  const { scene, view } = useStage();
  const shown = shownPorts(scene, view, all);
  const portOfValve = ({ id, kind }: ValveView) =>
    kind === 'bleeder' ? id.slice(0, id.lastIndexOf('.')) : id;
  const isPort = (ref: string) => view.ports.some(({ port }) => port === ref);
  const valves = view.valves.filter((valve) => {
    const port = portOfValve(valve);
    return !isPort(port) || shown.has(port);
  });
  const pieces = [...new Set(valves.map(({ pieceId }) => pieceId))];
  return (
    <div className="control-list">
      <section aria-labelledby="hose-at-hand">
        <h2 className="section-name" id="hose-at-hand">
          Hose at hand
        </h2>
        <HoseEndList />
      </section>
      {pieces.map((id) => {
        const piece = pieceOf(scene.plan, id);
        const name = piece ? nameOf(piece) : id;
        return (
          <section key={id} aria-label={`Valves of ${name}`}>
            <h2 className="section-name">{name}</h2>
            {valves
              .filter(({ pieceId }) => pieceId === id)
              .map((valve) => (
                <ValveControl key={valve.id} valve={valve} name={valve.label} />
              ))}
          </section>
        );
      })}
    </div>
  );
}
