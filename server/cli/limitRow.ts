import type { AzimuthTrip, LeastTrip, SpeedLimit, TripLimit } from '../../engine/pivot/index.ts';
import { toAzimuthDeg, toDegrees } from '../../engine/math/index.ts';
import type { LeastTipFields } from '../../engine/study/index.ts';

/** Speed limits toward one azimuth, or that the lander falls over without moving. Speeds in m/s. With the tip limit where it was simulated. */
export type LimitRow =
  | (Partial<LeastTipFields> & {
      readonly azimuthDeg: number;
      readonly stands: true;
      /** Along the ground. */
      readonly plastic: number;
      /** null: descent and rotation alone carry the energy to fall, or crushing legs take up the descent. */
      readonly lossless: number | null;
      readonly plasticHorizontal: number;
      readonly losslessHorizontal: number | null;
      readonly criticalFriction: number;
      /** Numbers of the legs at the ends of the edge it trips over; absent for plain geometry. */
      readonly legs?: readonly number[];
      /** Where the least lossless limit lies, in the row of least limits. */
      readonly losslessAzimuthDeg?: number;
    })
  | { readonly azimuthDeg: number; readonly stands: false; readonly staticTiltDeg: number };

export function limitRow(azimuthDeg: number, limit: TripLimit | AzimuthTrip): LimitRow {
  if (limit.kind === 'cannotStand') return { azimuthDeg, stands: false, staticTiltDeg: toDegrees(limit.staticTilt) };
  return {
    azimuthDeg,
    stands: true,
    ...speeds(limit),
    criticalFriction: limit.criticalFriction,
    ...legsOf(limit.plastic),
  };
}

export function leastRow(least: LeastTrip): LimitRow {
  if (least.kind === 'cannotStand')
    return { azimuthDeg: toAzimuthDeg(least.azimuth), stands: false, staticTiltDeg: toDegrees(least.staticTilt) };
  const { plastic, lossless, criticalFriction } = least;
  return {
    azimuthDeg: toAzimuthDeg(plastic.azimuth),
    stands: true,
    ...speeds(least),
    ...(lossless === undefined ? {} : { losslessAzimuthDeg: toAzimuthDeg(lossless.azimuth) }),
    criticalFriction,
    ...legsOf(plastic),
  };
}

function speeds({ plastic, lossless }: { readonly plastic: SpeedLimit; readonly lossless: SpeedLimit | undefined }): {
  plastic: number;
  lossless: number | null;
  plasticHorizontal: number;
  losslessHorizontal: number | null;
} {
  return {
    plastic: plastic.alongGround,
    lossless: lossless?.alongGround ?? null,
    plasticHorizontal: plastic.horizontal,
    losslessHorizontal: lossless?.horizontal ?? null,
  };
}

function legsOf(limit: SpeedLimit | (SpeedLimit & { readonly from: number; readonly to: number })): {
  legs?: readonly number[];
} {
  return 'from' in limit ? { legs: [limit.from + 1, limit.to + 1] } : {};
}
