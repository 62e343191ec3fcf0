import { nameOf, pieceOf, splitPortRef } from '@plugside/fireground';
import { Button } from 'react-aria-components';
import { HoseEndControl } from './HoseEndList.tsx';
import { PumpControl } from './PumpControl.tsx';
import { useStage } from './stage-context.ts';
import { ValveControl } from './ValveControl.tsx';
import { valveName } from './valve-words.ts';

/** The controls of what was touched in the drawing. */
export function InHand() {
  const { scene, view, picked, pick } = useStage();
  const nameAt = (id: string) => {
    const piece = pieceOf(scene.plan, id);
    return piece ? nameOf(piece) : id;
  };
  const valves = (ids: readonly string[]) =>
    view.valves
      .filter(({ id }) => ids.includes(id))
      .map((valve) => (
        <ValveControl key={valve.id} valve={valve} name={valveName(valve, nameAt(valve.pieceId))} />
      ));
  let content = (
    <p className="soft-text">
      Touch a hose end and then a port to couple them; touch a valve, a port or a pump for its
      control.
    </p>
  );
  if (picked?.kind === 'end') {
    const end = view.hoseEnds.find(({ hose, end }) => hose === picked.hose && end === picked.end);
    if (end) content = <HoseEndControl end={end} />;
  } else if (picked?.kind === 'port') {
    const end = view.hoseEnds.find(({ port }) => port === picked.port);
    const { pieceId } = splitPortRef(picked.port);
    const own = valves([picked.port, `${picked.port}.bleeder`, `${pieceId}.bale`]);
    content = (
      <>
        {end ? (
          <HoseEndControl end={end} />
        ) : (
          <p>
            <b>{view.ports.find(({ port }) => port === picked.port)?.label}</b>{' '}
            <span className="soft-text">Nothing on it that a hand could take off.</span>
          </p>
        )}
        {own}
      </>
    );
  } else if (picked?.kind === 'valve') content = <div>{valves([picked.valve])}</div>;
  else if (picked?.kind === 'pump') {
    const pump = view.pumps.find(({ rigId }) => rigId === picked.rig);
    if (pump) content = <PumpControl pump={pump} />;
  }
  return (
    <section className="in-hand" aria-label="In hand" data-holds={picked !== null || undefined}>
      <div className="in-hand-head">
        <h2 className="section-name">In hand</h2>
        {picked && (
          <Button className="quiet-button" onPress={() => pick(null)}>
            Put down
          </Button>
        )}
      </div>
      {content}
    </section>
  );
}
