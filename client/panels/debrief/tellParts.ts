import { DESCRIPTION, REACTIONS } from '../../text/debrief.ts';
import { surpriseWords } from '../beliefTable.ts';
import { element } from '../element.ts';
import { verdictOf } from '../verdict.ts';
import type { DebriefPart, KnownDescent } from './debriefPart.ts';
import { washedList } from './hotWash.ts';
import { timedMoment } from './momentWords.ts';
import { createRelaid } from './relaid.ts';

/** First step: how it was, before anybody explains. */
export function createReactions(): DebriefPart {
  const words = createRelaid(element('div', {}));
  return {
    part: element(
      'section',
      { class: 'debrief-part' },
      element('p', { class: 'why' }, REACTIONS.lead),
      words.holder,
      element('p', { class: 'quiet' }, REACTIONS.note),
    ),
    refresh({ review }) {
      words.lay(review?.hotWash, () => [washedList(review?.hotWash ?? [])]);
    },
  };
}

/** Second step: planned, happened, ended, from the record. */
export function createDescription({ plan, drill }: KnownDescent): DebriefPart {
  const lines = createRelaid(element('div', { class: 'told' }));
  return {
    part: element('section', { class: 'debrief-part' }, element('p', { class: 'why' }, DESCRIPTION.lead), lines.holder),
    refresh({ review, scorecard, flight, drill: brief }) {
      const moments = (review?.moments ?? []).filter(({ kind }) => kind !== 'lastChance');
      lines.lay([moments, drill()?.id, scorecard?.outcome], () => {
        const { siteName, setup } = plan();
        const verdict = scorecard && verdictOf(scorecard, flight);
        const contact = scorecard?.contacts[0];
        const surprise = scorecard?.belief && contact && surpriseWords(scorecard.belief, contact);
        return [
          element('h3', {}, DESCRIPTION.planned),
          element('p', {}, [brief?.title, setup.lander.name, siteName].filter(Boolean).join(' · ')),
          ...(brief?.objectives.length ? [list(brief.objectives.map(({ text }) => text))] : []),
          element('h3', {}, DESCRIPTION.happened),
          moments.length === 0
            ? element('p', {}, DESCRIPTION.nothing)
            : list(moments.map((moment) => timedMoment(moment, drill()))),
          element('h3', {}, DESCRIPTION.ended),
          element('p', {}, [verdict && `${verdict.headline}. ${verdict.why}`, surprise].filter(Boolean).join(' ')),
        ];
      });
    },
  };
}

function list(lines: readonly string[]): HTMLElement {
  return element('ul', { class: 'plain-list' }, ...lines.map((words) => element('li', {}, words)));
}
