import type { AssistValveState } from '@plugside/fireground';
import { useUnits } from '../../editing/use-units.ts';

const MOST_STREAM_PX = 30;

/** A stream's width for its flow, by the greatest flow in the valve [px]. */
function streamPx(gpm: number, mostGpm: number): number {
  return gpm < 0.5 ? 0 : Math.max(4, (MOST_STREAM_PX * gpm) / Math.max(mostGpm, 1));
}

/** The valve cut open: four ports, the clapper, the plug that the handle turns. */
export function ValveDrawing({ valve, label }: { valve: AssistValveState; label: string }) {
  const units = useUnits();
  const most = Math.max(
    valve.clapperGpm + valve.suctionGpm,
    valve.clapperGpm + valve.dischargeGpm,
    1,
  );
  const through = streamPx(valve.clapperGpm, most);
  const suction = streamPx(valve.suctionGpm, most);
  const discharge = streamPx(valve.dischargeGpm, most);
  const inlet = streamPx(valve.clapperGpm + valve.suctionGpm, most);
  const outlet = streamPx(valve.clapperGpm + valve.dischargeGpm, most);
  const openClapper = valve.clapper === 'open';
  const boost = valve.handle === 'boost';
  const psi = (value: number | undefined) =>
    value === undefined ? '' : units.text(value, 'pressure');
  const gpm = (value: number) => (value < 0.5 ? 'no flow' : units.text(value, 'flow'));
  return (
    <svg className="valve-drawing" viewBox="0 0 560 300" role="img" aria-label={label}>
      <path
        className="chamber"
        d="M0 92H84V80H236V70H330V92H560V140H392V300H348V178H318V140H300V178H222V300H178V140H0Z"
      />
      <Stream d="M0 116H170" px={inlet} />
      <Stream d="M170 116H392" px={through} />
      <Stream d="M392 116H560" px={outlet} />
      <Stream d="M150 116Q200 116 200 160V300" px={suction} />
      <Stream d="M370 300V160Q370 116 420 116" px={discharge} />
      <path
        className="casting"
        d="M0 92H84V80H236V70H330V92H560M0 140H178V300M222 300V178H300V140H318V178H348V300M392 300V140H560"
      />
      <circle className="hinge" cx="270" cy="82" r="5" />
      <path
        className={openClapper ? 'clapper-leaf' : 'clapper-leaf clapper-leaf-shut'}
        d={openClapper ? 'M270 82L322 92' : 'M270 82V140'}
      />
      <g transform="translate(200 200)">
        <circle className="plug" r="25" />
        <path className="plug-bore" d={boost ? 'M-8 -25V25M8 -25V25' : 'M-25 -8H25M-25 8H25'} />
        <path className="lever" d={boost ? 'M0 0L-46 46' : 'M0 0H-62'} />
        <circle className="lever-knob" cx={boost ? -46 : -62} cy={boost ? 46 : 0} r="6" />
      </g>
      <text className="port-name" x="6" y="74">
        from the hydrant
      </text>
      <text className="port-number" x="6" y="162">
        {psi(valve.hydrantPsi)}
      </text>
      <text className="port-flow" x="6" y="182">
        {gpm(valve.clapperGpm + valve.suctionGpm)}
      </text>
      <text className="port-name" x="554" y="74" textAnchor="end">
        supply, to the fire
      </text>
      <text className="port-number" x="554" y="162" textAnchor="end">
        {psi(valve.supplyPsi)}
      </text>
      <text className="port-flow" x="554" y="182" textAnchor="end">
        {gpm(valve.clapperGpm + valve.dischargeGpm)}
      </text>
      <text className="port-name" x="166" y="262" textAnchor="end">
        pump suction
      </text>
      <text className="port-number" x="166" y="280" textAnchor="end">
        {psi(valve.suctionPsi)}
      </text>
      <text className="port-flow" x="166" y="297" textAnchor="end">
        {gpm(valve.suctionGpm)}
      </text>
      <text className="port-name" x="404" y="246">
        from pump discharge
      </text>
      <text className="port-number" x="404" y="266">
        {psi(valve.dischargePsi)}
      </text>
      <text className="port-flow" x="404" y="286">
        {gpm(valve.dischargeGpm)}
      </text>
      <text
        className={openClapper ? 'clapper-word' : 'clapper-word clapper-word-shut'}
        x="284"
        y="52"
        textAnchor="middle"
      >
        clapper {valve.clapper}
      </text>
      <text className="port-flow" x="130" y="222" textAnchor="end">
        handle: {valve.handle}
      </text>
    </svg>
  );
}

function Stream({ d, px }: { d: string; px: number }) {
  if (px === 0) return null;
  return (
    <g className="stream-in-valve">
      <path className="water" d={d} strokeWidth={px} />
      <path
        className="current"
        d={d}
        strokeWidth={Math.max(2, px * 0.2)}
        style={{ animationDuration: '0.9s' }}
      />
    </g>
  );
}
