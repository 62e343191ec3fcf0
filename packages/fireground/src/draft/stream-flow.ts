import { requirePositive, requireWithin } from '@plugside/hydraulics';
import { GAL_PER_FT3 } from './still-water.ts';

/** What a float at the surface outruns the stream as a whole by [-]. Source: Calculating a Flow Rate, Irrigation Supply Parts. */
export const FLOAT_FACTOR = 0.8;

/** A stream measured with a tape, a stick and a float. */
export interface StreamReading {
  widthFt: number;
  /** Mean of several depths across [ft]. */
  depthFt: number;
  /** The float's way [ft] and its time [s]. */
  floatFt: number;
  floatS: number;
  /** Mean over surface velocity [-]; 0.8 where left out. */
  factor?: number;
}

/**
 * Flow of a stream by width, depth and a float.
 *   gpm = width·depth·0.8·way/time·60·7.48
 * @param reading width and mean depth [ft], way [ft] and time [s] of the float
 * @returns velocity of the stream as a whole [ft/s], flow [gpm]
 * Valid: a straight, even reach; the mean of three floats or more. One cubic foot a second is 448.8 gpm.
 * Outside: throws QuantityError.
 * Source: Calculating a Flow Rate, Irrigation Supply Parts
 * (https://www.irrigationsupplyparts.com/calculating-a-flow-rate/); Conversions and Water
 * Measurements, Colorado Water Conservation Board document 26343.
 */
export function streamFlow(reading: StreamReading): { velocityFtS: number; flowGpm: number } {
  const { widthFt, depthFt, floatFt, floatS, factor = FLOAT_FACTOR } = reading;
  requirePositive('widthFt', widthFt, 'ft');
  requireWithin('widthFt', widthFt, [0, 5000], 'ft');
  requirePositive('depthFt', depthFt, 'ft');
  requireWithin('depthFt', depthFt, [0, 100], 'ft');
  requirePositive('floatFt', floatFt, 'ft');
  requirePositive('floatS', floatS, 's');
  requireWithin('factor', factor, [0.4, 1], '');
  const velocityFtS = (factor * floatFt) / floatS;
  return { velocityFtS, flowGpm: widthFt * depthFt * velocityFtS * 60 * GAL_PER_FT3 };
}
