import { Encoder, Reflection, StateView, schema, t, type Decoder } from '@colyseus/schema';
import { createPaperKind } from '../../server/schema/paperKind.ts';
import { createReader } from '../../server/schema/reader.ts';
import type { GroupShape } from '../../server/schema/shapes.ts';
import type { ViewOf } from '../../server/schema/viewOf.ts';

interface Member {
  readonly sight: StateView;
  readonly decoder: Decoder;
}

/**
 * The schema library's own encoder with a common paper and one for each member, and a decoder a member who was sent what that member may see.
 */
export interface PaperWire<Common, Own> {
  /** One more member, who is sent the whole state as it is now, and what changed since the last sending only with the next. */
  join(own: Own): void;
  writeCommon(view: Common): void;
  write(member: number, own: Own): void;
  /** What goes to each member now. */
  encode(): readonly Uint8Array[];
  /** Sends everybody what changed; the bytes that went to each. */
  send(): readonly number[];
  readCommon(member: number): Common | undefined;
  read(member: number): Own | undefined;
  /** Papers of members that came to this member. */
  known(member: number): readonly string[];
}

export function openPaperWire<Common extends GroupShape, Own extends GroupShape>(
  commonShape: Common,
  ownShape: Own,
): PaperWire<ViewOf<Common>, ViewOf<Own>> {
  const common = createPaperKind(commonShape, 'Common');
  const own = createPaperKind(ownShape, 'Own');
  const [readCommon, readOwn] = [createReader(commonShape), createReader(ownShape)];
  const Papers = schema({ common: t.ref(common.Class), papers: t.map(own.Class).view() }, 'Papers');
  const state = new Papers();
  const encoder = new Encoder(state);
  const members: Member[] = [];
  const stateAt = (member: number) => members[member]?.decoder.state as typeof state | undefined;
  const encode = () => {
    const start = { offset: 0 };
    encoder.encode(start);
    const { offset } = start;
    const parts = members.map(({ sight }) => encoder.encodeView(sight, offset, start).slice());
    encoder.discardChanges();
    return parts;
  };
  return {
    join(view) {
      const paper = new own.Class();
      own.write(paper, view);
      state.papers.set(`m${members.length}`, paper);
      const sight = new StateView();
      sight.add(paper);
      const decoder = Reflection.decode(Reflection.encode(encoder));
      const all = { offset: 0 };
      encoder.encodeAll(all);
      decoder.decode(encoder.encodeAllView(sight, all.offset, all));
      members.push({ sight, decoder });
    },
    writeCommon: (view) => common.write(state.common, view),
    write(member, view) {
      const paper = state.papers.get(`m${member}`);
      if (paper !== undefined) own.write(paper, view);
    },
    encode,
    send() {
      const parts = encode();
      for (const [at, bytes] of parts.entries()) members[at]?.decoder.decode(bytes);
      return parts.map(({ length }) => length);
    },
    readCommon(member) {
      const at = stateAt(member);
      return at && readCommon(at.common);
    },
    read(member) {
      const paper = stateAt(member)?.papers.get(`m${member}`);
      return paper === undefined ? undefined : readOwn(paper);
    },
    known: (member) => [...(stateAt(member)?.papers.keys() ?? [])],
  };
}
