/**
 * Coulomb friction with a tangential spring that sticks.
 *
 * The foot hangs on a spring from the spot where it stuck. The spring's force is the friction force as long as it stays
 * inside the cone; beyond it the spot is dragged along, which is the slide (return mapping, not a smear over speed). So
 * what stands, stands: a constant load below the cone moves nothing, however long it lasts. Sliding only loses energy:
 * the stretch of the spring is cut, never lengthened. Works for a signed scalar in a section and for the length of a
 * vector in space alike.
 */

/**
 * Share of its stretch that the spring keeps [-], 0 to 1: 1 sticks; less slides.
 *
 *   share = min(1, μ·N / |T|)                        Coulomb's law
 *
 * T  force of the stretched spring [N]      μ  friction [-], 0 or more      N  normal force [N]; 0 or less: no contact
 */
export function stickShare(springForce: number, friction: number, normalForce: number): number {
  const limit = normalForce > 0 ? friction * normalForce : 0;
  const magnitude = Math.abs(springForce);
  return magnitude <= limit ? 1 : limit / magnitude;
}

/** A tangential force cut down to what the friction cone allows, 0 or more, its sign kept [N]. */
export function withinCone(force: number, limit: number): number {
  return force > limit ? limit : force < -limit ? -limit : force;
}
