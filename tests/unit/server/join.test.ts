import { describe, expect, it } from 'vitest';
import { parseEntering } from '../../../server/messages/index.ts';
import { choiceOf } from '../../support/planChoice.ts';

function refusal(choice: unknown): string {
  const parsed = parseEntering({ name: 'Wren', choice });
  return parsed.ok ? '' : parsed.error.reason;
}

describe('what a client sends to open a table', () => {
  it('may be a choice of a landing, which is handed on as it was read', () => {
    const choice = choiceOf({ lander: 'steeple', site: 'coombe-ledge', start: 'low', mode: 'by orders', pace: 0.25 });
    expect(parseEntering({ name: 'Wren', choice })).toEqual({
      ok: true,
      value: { code: undefined, join: { name: 'Wren', choice } },
    });
    expect(parseEntering({ code: 'HKTVRQ', name: 'Wren' })).toEqual({
      ok: true,
      value: { code: 'HKTVRQ', join: { name: 'Wren' } },
    });
  });

  it('is refused with the field, before any table is opened, when the choice is wrong or cannot be flown', () => {
    expect(refusal({ ...choiceOf({}), site: 'nowhere' })).toMatch(/cannot be laid out. site: expected one of/);
    expect(refusal(choiceOf({ lander: 'bolster', world: 'mars' }))).toMatch(/world: expected one that Bolster can fly/);
    expect(refusal('steeple')).toMatch(/expected an object/);
    expect(refusal(null)).toMatch(/expected an object/);
  });
});
