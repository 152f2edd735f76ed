import type { Client } from '@colyseus/core';
import { askTable } from '../../engine/record/index.ts';
import { accept, refuse, type Result } from '../../engine/result.ts';
import { askForDrill, judgeChoosing, type MemberId, type Refusal } from '../../engine/table/index.ts';
import { parseChoice, parseCommand, type CommandAnswer } from '../messages/index.ts';
import type { Allowances } from './allowances.ts';
import type { Crew } from './crew.ts';
import type { Places } from './places.ts';
import type { RecordedTable } from './recordedTable.ts';
import type { RoomServices } from './roomServices.ts';

/** What is needed to answer. */
interface Parts {
  readonly recorded: RecordedTable;
  readonly crew: Crew;
  readonly places: Places;
  readonly allowances: Allowances;
  readonly plan: RoomServices['plan'];
  /** Somebody asked for something. */
  readonly onAsked: () => void;
}

/** What clients ask of a table, carried out or refused with a reason. */
export class Requests {
  readonly #parts: Parts;

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  /** Carries out a command, or says why not. */
  command(client: Client, message: unknown): CommandAnswer {
    const asking = this.#whoAsks(client);
    if (!asking.ok) return asking;
    const command = parseCommand(message);
    if (!command.ok) return command;
    const { recorded, crew, allowances } = this.#parts;
    const tooDear = command.value.kind === 'again' ? allowances.spendDear(asking.value) : undefined;
    if (tooDear !== undefined) return refuse(tooDear);
    const answer = askTable(recorded.kept, asking.value, command.value);
    if (!answer.ok) return answer;
    if (command.value.kind === 'remove') crew.sendAway(command.value.member);
    if (command.value.kind === 'handOverTable') crew.tell(command.value.member, 'runKey', recorded.runKey);
    return answer;
  }

  /** Lays out something else to play before the first descent, or says why not. Everybody keeps their place. */
  choose(client: Client, message: unknown): CommandAnswer {
    const asking = this.#whoAsks(client);
    if (!asking.ok) return asking;
    const { recorded, places, allowances, plan } = this.#parts;
    const refusal = judgeChoosing(recorded.kept.table.state, asking.value) ?? allowances.spendDear(asking.value);
    if (refusal !== undefined) return refuse(refusal);
    const choice = parseChoice(message);
    if (!choice.ok) return choice;
    recorded.layAnew(plan(choice.value));
    places.keepIn(recorded.journal);
    return accept(undefined);
  }

  /** The record of this table for a member, once nothing in it is to stay hidden. */
  record(client: Client): Result<string, Refusal> {
    const asking = this.#whoAsks(client);
    if (!asking.ok) return asking;
    const { recorded, allowances } = this.#parts;
    if (recorded.kept.table.state.stage !== 'resolved')
      return refuse({ code: 'table/stage', reason: 'The record can be saved when the descent is at rest.' });
    const tooDear = allowances.spendDear(asking.value);
    if (tooDear !== undefined) return refuse(tooDear);
    const text = recorded.journal.text();
    return text === undefined
      ? refuse({ code: 'table/no-record', reason: 'This server keeps no record of this table.' })
      : accept(text);
  }

  /** The whole drill, as JSON, for facilitator and evaluator, and for everybody once nothing in it is to stay hidden. */
  drill(client: Client): Result<string, Refusal> {
    const asking = this.#whoAsks(client);
    if (!asking.ok) return asking;
    const { recorded, allowances } = this.#parts;
    const tooDear = allowances.spendDear(asking.value);
    if (tooDear !== undefined) return refuse(tooDear);
    const drill = askForDrill(recorded.kept.table, asking.value);
    return drill.ok ? accept(JSON.stringify(drill.value)) : drill;
  }

  /** Whose message it is, unless they have no line any more or send too much. */
  #whoAsks(client: Client): Result<MemberId, Refusal> {
    const { crew, allowances, onAsked } = this.#parts;
    const memberId = crew.memberOf(client);
    if (memberId === undefined)
      return refuse({ code: 'table/not-here', reason: 'This place was opened in another window.' });
    const refusal = allowances.spend(memberId);
    if (refusal !== undefined) return refuse(refusal);
    onAsked();
    return accept(memberId);
  }
}
