import { playTanks, type TankPlay } from './play-tanks.ts';

/** No fireground flow is greater [gpm]. */
const MOST_GPM = 10_000;

/**
 * Greatest steady flow that the tanks, and what of the supply comes sooner, hold up until the supply
 * is there.
 *   Q = tank/(supply − start), without nursing tanks and with nothing sooner
 * @param play tanks and supply; the flow's own steps count only for when water first flows
 * @param supplyAtMin when the supply is there [min]; null without one
 * @returns flow [gpm], to 0.001, 10,000 where more would hold; null without a supply, or where it is there before water flows
 * Valid: until the supply arrives; after that the supply's own flow holds.
 * Source: the tanks played out at a steady flow, by bisection; without nursing tanks that is the
 * formula above.
 */
export function bridgeGpm(play: TankPlay, supplyAtMin: number | null): number | null {
  const { supply, attackFlow } = play;
  const startMin = attackFlow.find(({ flowGpm }) => flowGpm > 0)?.atMin;
  if (supplyAtMin === null || startMin === undefined || supplyAtMin <= startMin) return null;
  const sooner = supply.filter(({ atMin }) => atMin < supplyAtMin);
  const holds = (flowGpm: number) =>
    playTanks({
      ...play,
      attackFlow: [{ atMin: startMin, flowGpm }],
      supply: sooner,
      untilMin: supplyAtMin,
    }).runsDryAtMin === null;
  if (holds(MOST_GPM)) return MOST_GPM;
  let low = 0;
  let high = MOST_GPM;
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
