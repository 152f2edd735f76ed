import type { TableView } from '../../engine/table/index.ts';
import type { CallView, LogLineView } from '../../engine/talk/index.ts';
import { LOG, NAMED_CAUSE_WORDS, PACE, POLL, SEAT_NAMES, SOURCE_NAMES, SOURCES_CARD, TALK } from '../text/en.ts';
import { clock, percent, speed } from '../text/numbers.ts';
import { element } from './element.ts';
import { addresseeWords, callWords, groundWords } from './sentenceWords.ts';

/** What was said and done so far, newest first, as far as this seat was told. */
export function createTalkLog(): { readonly part: HTMLElement; refresh(view: TableView): void } {
  const list = element('ol', { class: 'talk-log' });
  const part = element('details', { class: 'talk-log-part' }, element('summary', {}, TALK.log), list);
  let shown = '';
  return {
    part,
    refresh({ talk }) {
      const lines = talk.log.flatMap((line) => lineWords(line, talk.calls)).toReversed();
      const key = lines.join('\n');
      if (key === shown && list.childElementCount > 0) return;
      shown = key;
      list.replaceChildren(...(lines.length === 0 ? [TALK.logEmpty] : lines).map((words) => element('li', {}, words)));
    },
  };
}

/** A line of the log in words. None for a line about a callout that is no longer shown. */
export function lineWords(line: LogLineView, calls: readonly CallView[]): readonly string[] {
  const did = didWords(line, calls);
  if (did === undefined) return [];
  const who = line.seat === undefined ? (line.name ?? LOG.table) : SEAT_NAMES[line.seat];
  return [`${clock(line.after)} ${who} ${did}`];
}

function didWords(line: LogLineView, calls: readonly CallView[]): string | undefined {
  const call = calls.find(({ id }) => id === line.call);
  const said = call === undefined ? undefined : callWords(call);
  const source = line.source === undefined ? '' : SOURCE_NAMES[line.source].toLowerCase();
  const figure = line.figure ?? 0;
  switch (line.kind) {
    case 'callOut':
    case 'say':
      return call && `→ ${addresseeWords(call.to)}: ${callWords(call)}`;
    case 'readBack':
    case 'confirm':
      return said && LOG[line.kind](said);
    case 'callPoll':
      return line.answer && LOG.callPoll(line.answer === 'stay' ? POLL.asks.stay : POLL.asks.go);
    case 'answerPoll':
    case 'decide':
      return line.answer && LOG[line.kind](POLL.answers[line.answer]);
    case 'acknowledge':
      return LOG.acknowledge;
    case 'judgeSource':
      return line.judgment && LOG.judged(source, SOURCES_CARD.judgments[line.judgment].toLowerCase());
    case 'nameCause':
      return line.cause && LOG.judged(source, NAMED_CAUSE_WORDS[line.cause]);
    case 'setCeiling':
      return LOG.ceiling(percent(figure / 100));
    case 'armCutOff':
      return LOG.armed(line.on ?? true);
    case 'setCutAtContact':
      return LOG.cutAtContact(line.on ?? true);
    case 'shutLine':
      return LOG.line(line.on ?? true);
    case 'declareGround':
      return line.ground && groundWords(line.ground);
    case 'stateLimit':
      return LOG.limit(speed(figure / 100));
    case 'orderFacing':
      return LOG.facing(figure);
    case 'markSpot':
      return LOG.spot;
    case 'clearSpot':
      return LOG.noSpot;
    case 'fireCutOff':
      return LOG.fired;
    case 'realign':
    case 'abort':
    case 'hold':
    case 'resume':
    case 'stop':
    case 'liftStop':
      return LOG[line.kind];
    case 'setPace':
      return LOG.pace(PACE.short(figure / 100));
    case 'setConduct':
      return line.conduct && LOG.conduct[line.conduct];
  }
  return line.kind satisfies never;
}
