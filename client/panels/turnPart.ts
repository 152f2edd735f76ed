import { FACING_RANGE, type SiteReadings, type TableView } from '../../engine/table/index.ts';
import { FACING_RATE, layOutSection, yawAt, type DescentSetup, type Facings } from '../../engine/world/index.ts';
import { TURN_PART } from '../text/facing.ts';
import { degrees, seconds } from '../text/numbers.ts';
import { button, element, pressIfShown, say } from './element.ts';
import { drawFootprintPlan } from './footprintDrawing.ts';
import { legPlaces, sideOf, uphillOf, type LegPlace } from './legPlaces.ts';
import { cardPart, createLiveDrawing, type Ask } from './seatCard.ts';
import { Wish } from './wish.ts';
import { term } from '../terms/term.ts';

interface TurnPart {
  readonly part: HTMLElement;
  refresh(view: TableView, readings: SiteReadings, isOpen: boolean): void;
  left(): void;
  right(): void;
}

/** For Site: the footprint from above with its legs and uphill, and a turn of the lander by one edge to either side. */
export function createTurnPart(ask: Ask, { lander, propellant }: DescentSetup): TurnPart {
  const { facings, halfStance } = layOutSection(lander, propellant);
  const wish = new Wish<number>();
  const plan = createLiveDrawing('footprint-plan');
  const status = element('p', { role: 'status' });
  const note = element('p', { class: 'card-note' });
  let ordered = 0;
  const turn = (by: 1 | -1) => {
    const steps = Math.max(FACING_RANGE.least, Math.min(FACING_RANGE.most, ordered + by));
    wish.ask(steps);
    ordered = steps;
    ask({ kind: 'orderFacing', steps });
  };
  const leftward = button(TURN_PART.left(''), () => turn(1));
  const rightward = button(TURN_PART.right(''), () => turn(-1));
  const advice = element('p', { class: 'card-note' });
  const words = element('div', { class: 'turn-words' }, status, note, advice);
  const buttons = element('div', { class: 'turn-buttons' }, leftward, rightward);
  const part = cardPart(
    term('footprint', TURN_PART.heading),
    element('div', { class: 'turn' }, plan.holder, words, buttons),
  );
  part.hidden = facings.length === 1;
  return {
    part,
    left: () => pressIfShown(leftward),
    right: () => pressIfShown(rightward),
    refresh(view, { locked, slope }, isOpen) {
      const { flight, site, margin } = view;
      const isDown = flight.phase === 'contact' || flight.phase === 'settling';
      ordered = wish.shown(site.facing ?? 0) ?? 0;
      const uphill = uphillOf(slope);
      const { yaw, rest } = flight.facing ?? { yaw: 0, rest: 0 };
      const left = yawAt(facings, ordered) - yaw;
      const legs = legPlaces(flight, locked, rest);
      const { markup, viewBox } = drawFootprintPlan({
        legs,
        uphill,
        ...(Math.abs(left) > HARDLY && { ordered: legPlaces(flight, locked, rest + left) }),
      });
      plan.show(
        markup,
        viewBox,
        TURN_PART.inWords(
          legs.map((one) => placeWords(one, halfStance)),
          uphill,
        ),
      );
      say(status, statusWords(yawAt(facings, ordered), left));
      say(note, isDown ? TURN_PART.down : timeWords(facings, left, margin.predicted?.seconds));
      say(advice, isDown ? '' : weakWords(legs, uphill, halfStance));
      for (const [one, by] of [
        [leftward, 1],
        [rightward, -1],
      ] as const) {
        const angle = degrees(Math.abs(yawAt(facings, ordered + by) - yawAt(facings, ordered)), 0);
        say(one, by > 0 ? TURN_PART.left(angle) : TURN_PART.right(angle));
        one.disabled = !isOpen || isDown || Math.abs(ordered + by) > FACING_RANGE.most;
      }
    },
  };
}

/** Of a turn, what is as good as nothing [rad]. */
const HARDLY = 1e-6;

function placeWords(place: LegPlace, halfStance: number): string {
  const words = TURN_PART.stands(place.leg, sideOf(place, halfStance));
  return place.isWeak ? TURN_PART.notLocked(words) : words;
}

/** On which side of the slope the legs stand that are not shown locked; nothing where all are, or there is no uphill. */
function weakWords(legs: readonly LegPlace[], uphill: 'left' | 'right' | undefined, halfStance: number): string {
  const weak = legs.filter(({ isWeak }) => isWeak);
  if (weak.length === 0 || uphill === undefined) return '';
  const sides = new Set(weak.map((place) => sideOf(place, halfStance)));
  const [side = 'amid'] = sides.size === 1 ? sides : [];
  const where = side === 'amid' ? 'amid' : side === uphill ? 'uphill' : 'downhill';
  return TURN_PART.weakLegs(
    weak.map(({ leg }) => leg),
    where,
  );
}

/** Where a turn is going, or where it has come to. */
function statusWords(goal: number, left: number): string {
  const [angle, way] = [degrees(Math.abs(goal), 0), goal > 0 ? ('left' as const) : ('right' as const)];
  const isBack = Math.abs(goal) < HARDLY;
  if (Math.abs(left) < HARDLY) return isBack ? TURN_PART.asStarted : TURN_PART.turned(angle, way);
  return isBack ? TURN_PART.turningBack : TURN_PART.turning(angle, way);
}

function timeOf(angle: number): string {
  return seconds(Math.ceil(Math.abs(angle) / FACING_RATE));
}

/** How long what is left of a turn takes, or a turn by one edge; beside it how long it is to the ground, where that is known. */
function timeWords(facings: Facings, left: number, ground: number | undefined): string {
  const turn = Math.abs(left) < HARDLY ? TURN_PART.takes(timeOf(yawAt(facings, 1))) : TURN_PART.togo(timeOf(left));
  return ground === undefined ? turn : `${turn} ${TURN_PART.ground(seconds(Math.floor(ground)))}`;
}
