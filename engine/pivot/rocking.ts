/**
 * Free rocking of a rigid body between two edges: the model and its closed forms. The body turns about one edge, strikes
 * flat, and turns on about the other; no sliding, no bouncing. rockingMotion.ts steps it through time.
 *
 *   θ'' = −p² sin(α − θ),  p² = m g L / I_P            [Housner1963]
 *
 * θ    tilt toward an edge, from flat on the ground [rad]     α    tilt at which the center of mass is over that edge [rad]
 * L    center of mass to edge [m]                             I_P  inertia about the edge [kg·m²]
 *
 * A slope and a steady horizontal acceleration of the ground turn and stretch gravity as the body feels it, so they only
 * change α and p. Tilt is signed: + toward the tip edge of the PivotBody, − toward the opposite edge.
 */
import { assert } from '../assert.ts';
import { atan, atan2, carlsonRf, cos, hypot2, log, sin } from '../math/index.ts';
import type { PivotBody } from './tripLimit.ts';

interface RockingCondition {
  /** [m/s²] */
  readonly gravity: number;
  /** Fall of the ground toward the tip edge [rad]. Default 0. */
  readonly slope?: number;
  /** Steady horizontal acceleration of the ground away from the tip edge, which throws the body toward it [m/s²]. Default 0. */
  readonly groundAcceleration?: number;
}

export interface RockingModel {
  readonly toward: RockingSide;
  readonly away: RockingSide;
}

/** Turning about one of the two edges. */
export interface RockingSide {
  /** α: tilt at which the body stands over the edge; 0 or less where it cannot stand [rad]. */
  readonly balance: number;
  /** p [1/s] */
  readonly frequency: number;
  /** I_P [kg·m²] */
  readonly inertia: number;
  /** Share of the rate that is left when the turn passes from the other edge to this one; 0 or less: it stops flat [-]. */
  readonly carryOver: number;
}

/** What a body does between its edges, in one field of gravity. */
export function rockingModel(body: PivotBody, condition: RockingCondition): RockingModel {
  const { gravity, slope = 0, groundAcceleration = 0 } = condition;
  const { halfStance, oppositeHalfStance = body.halfStance } = body;
  assert(
    body.mass > 0 && body.centerHeight > 0 && body.inertia >= 0,
    'mass and center height are above 0, inertia is 0 or more',
  );
  assert(halfStance > 0 && oppositeHalfStance > 0, 'half stances are above 0');
  assert(gravity > 0 && Math.abs(slope) < Math.PI / 2, 'gravity is above 0, slope between -90 and 90 degrees');
  const felt = hypot2(gravity, groundAcceleration);
  const lean = slope + atan2(groundAcceleration, gravity);
  return {
    toward: rockingSide(body, { near: halfStance, far: oppositeHalfStance, felt, lean }),
    away: rockingSide(body, { near: oppositeHalfStance, far: halfStance, felt, lean: -lean }),
  };
}

function rockingSide(
  body: PivotBody,
  {
    near,
    far,
    felt,
    lean,
  }: { readonly near: number; readonly far: number; readonly felt: number; readonly lean: number },
): RockingSide {
  const { mass, centerHeight, inertia } = body;
  const edgeInertia = inertia + mass * (near * near + centerHeight * centerHeight);
  return {
    balance: atan(near / centerHeight) - lean,
    frequency: Math.sqrt((mass * felt * hypot2(near, centerHeight)) / edgeInertia),
    inertia: edgeInertia,
    carryOver: carryOver(body, near, far),
  };
}

/**
 * Share of the rate kept in the impact that passes the turn from the far edge to the near one [-].
 *
 *   e = (I + m (h² − b₁ b₂)) / I_P             equal half stances: e = 1 − 2 m b²/I_P     [Housner1963]
 *
 * I  inertia about the center of mass [kg·m²]   h  its height [m]   b₁, b₂  half stances to the far and near edge [m]
 *
 * Derivation: the impulse acts at the near edge, so angular momentum about it is kept. Before, the center moves at
 * ω (−h, b₁) and stands at (−b₂, h) from it: I ω + m ω (h² − b₁ b₂). After: I_P ω'. A rectangle has e = 1 − 1.5 sin² α.
 * e <= 0 says that the body would have to turn back before it is flat: a squat body stops.
 */
function carryOver(body: PivotBody, near: number, far: number): number {
  const { mass, centerHeight, inertia } = body;
  const square = centerHeight * centerHeight;
  return (inertia + mass * (square - far * near)) / (inertia + mass * (square + near * near));
}

/**
 * Time from rest at a tilt to flat [s], exact.
 *
 *   t = (1/p) √(sin(θ₀/2) sin(α − θ₀/2)) R_F(s₀² c², s₀² c₀², s² c₀²)
 *
 * θ₀  tilt [rad], 0 < θ₀ < α      s₀, c₀  sine and cosine of (α − θ₀)/2      s, c  of α/2
 *
 * Derivation: ½ θ'² = p² (cos(α − θ₀) − cos(α − θ)). With u = sin((α − θ)/2) the time is
 * (1/p) ∫ du / √((1 − u²)(u² − s₀²)) from s₀ to s, an elliptic integral of the first kind: amplitude φ, modulus c₀,
 * with sin φ = √(1 − s₀²/s²)/c₀. F(φ, c₀) = sin φ R_F(cos² φ, s₀²/s², 1) [Carlson1995], and R_F scales.
 */
export function quarterPeriod(side: RockingSide, tilt: number): number {
  assertTilt(side, tilt);
  const { balance, frequency } = side;
  const [s0, c0] = [sin((balance - tilt) / 2), cos((balance - tilt) / 2)];
  const [s, c] = [sin(balance / 2), cos(balance / 2)];
  const factor = Math.sqrt(sin(tilt / 2) * sin(balance - tilt / 2));
  return (factor * carlsonRf(s0 * s0 * c * c, s0 * s0 * c0 * c0, s * s * c0 * c0)) / frequency;
}

/**
 * The same time for a slender body, sin(α − θ) taken as α − θ [s].
 *
 *   t = (1/p) arcosh(1/(1 − θ₀/α))                     [Housner1963]
 */
export function slenderQuarterPeriod(side: RockingSide, tilt: number): number {
  assertTilt(side, tilt);
  const share = tilt / side.balance;
  return log((1 + Math.sqrt(share * (2 - share))) / (1 - share)) / side.frequency;
}

type NextPeak =
  /** It swings to this tilt over the other edge [rad], given as a magnitude. */
  | { readonly kind: 'peak'; readonly tilt: number }
  /** It falls over the other edge: possible only where that edge is the nearer one or lies downhill. */
  | { readonly kind: 'fallsOver' }
  /** It stops flat. */
  | { readonly kind: 'stops' };

/**
 * Largest tilt over the next edge after rest at a tilt over this one and one impact, exact.
 *
 *   cos(α₂ − θ₂) − cos α₂ = D = (e p₁/p₂)² (cos(α₁ − θ₁) − cos α₁)        energy between impacts, e at the impact
 *   tan(θ₂/2) = D / (sin α₂ + √((1 − cos α₂ − D)(1 + cos α₂ + D)))        solved for θ₂
 */
export function peakAfterImpact(from: RockingSide, tilt: number, to: RockingSide): NextPeak {
  assertTilt(from, tilt);
  if (to.carryOver <= 0) return { kind: 'stops' };
  if (to.balance <= 0) return { kind: 'fallsOver' };
  const share = (to.carryOver * from.frequency) / to.frequency;
  const climb = share * share * 2 * sin(tilt / 2) * sin(from.balance - tilt / 2);
  const half = sin(to.balance / 2);
  const left = 2 * half * half - climb;
  if (left <= 0) return { kind: 'fallsOver' };
  const root = Math.sqrt(left * (1 + cos(to.balance) + climb));
  return { kind: 'peak', tilt: 2 * atan(climb / (sin(to.balance) + root)) };
}

/**
 * Largest tilt of a slender symmetric body after n impacts, over α [-].
 *
 *   θ_n/α = 1 − √(1 − e^(2n) (1 − (1 − θ₀/α)²))       [Housner1963] (from memory)
 */
export function slenderPeakShare(startShare: number, carryOver: number, impacts: number): number {
  assert(
    startShare > 0 && startShare < 1 && carryOver > 0,
    'the start lies between flat and balance, and rocking goes on',
  );
  let kept = startShare * (2 - startShare);
  for (let i = 0; i < impacts; i++) kept *= carryOver * carryOver;
  return kept / (1 + Math.sqrt(1 - kept));
}

/**
 * Shortest steady push that overturns a slender body at rest: p times its duration [-].
 *
 *   p t₁ = ln(A/(A − 1))                               [Housner1963], there as a cosh, the same
 *
 * A  acceleration of the ground over g α, above 1 (below, the body does not even lift) [-]
 *
 * Derivation: pushed, θ'' − p² θ = p² α (A − 1) gives θ = α (A − 1)(cosh pt − 1). Free, it falls over if the growing part
 * θ + θ'/p − α is not negative at t₁: (A − 1)(e^(p t₁) − 1) = 1.
 */
export function slenderOverturningPulse(accelerationShare: number): number {
  assert(accelerationShare > 1, `a push that lifts the body is above 1, got ${accelerationShare}`);
  return log(accelerationShare / (accelerationShare - 1));
}

function assertTilt(side: RockingSide, tilt: number): void {
  assert(tilt > 0 && tilt < side.balance, 'the tilt lies between flat and balance');
}
