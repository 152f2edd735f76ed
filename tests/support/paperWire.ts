import { Encoder, Reflection, StateView, schema, t, type Decoder } from '@colyseus/schema';
import { createPaperKind } from '../../server/schema/paperKind.ts';
import { createReader } from '../../server/schema/reader.ts';
import type { GroupShape } from '../../server/schema/shapes.ts';
import type { ViewOf } from '../../server/schema/viewOf.ts';

interface Member {
  readonly sight: StateView;
  readonly decoder: Decoder;
}

/** The schema library's own encoder with a paper a member, and a decoder a member who was sent what that member may see. */
interface PaperWire<View> {
  /** One more member, who is sent the whole state as it is now, and what changed since the last sending only with the next. */
  join(view: View): void;
  write(member: number, view: View): void;
  /** Sends everybody what changed; the bytes that went to each. */
  send(): readonly number[];
  read(member: number): View | undefined;
  /** Papers that came to this member. */
  known(member: number): readonly string[];
}

export function openPaperWire<Shape extends GroupShape>(shape: Shape): PaperWire<ViewOf<Shape>> {
  const kind = createPaperKind(shape, 'Paper');
  const read = createReader(shape);
  const Papers = schema({ papers: t.map(kind.Class).view() }, 'Papers');
  const state = new Papers();
  const encoder = new Encoder(state);
  const members: Member[] = [];
  const papersAt = (member: number) => {
    const decoded = members[member]?.decoder.state;
    return decoded instanceof Object ? (Reflect.get(decoded, 'papers') as typeof state.papers | undefined) : undefined;
  };
  return {
    join(view) {
      const paper = new kind.Class();
      kind.write(paper, view);
      state.papers.set(`m${members.length}`, paper);
      const sight = new StateView();
      sight.add(paper);
      const decoder = Reflection.decode(Reflection.encode(encoder));
      const all = { offset: 0 };
      encoder.encodeAll(all);
      decoder.decode(encoder.encodeAllView(sight, all.offset, all));
      members.push({ sight, decoder });
    },
    write(member, view) {
      const paper = state.papers.get(`m${member}`);
      if (paper !== undefined) kind.write(paper, view);
    },
    send() {
      const common = { offset: 0 };
      encoder.encode(common);
      const { offset } = common;
      const sizes = members.map(({ sight, decoder }) => {
        const bytes = encoder.encodeView(sight, offset, common);
        decoder.decode(bytes);
        return bytes.length;
      });
      encoder.discardChanges();
      return sizes;
    },
    read(member) {
      const paper = papersAt(member)?.get(`m${member}`);
      return paper === undefined ? undefined : read(paper);
    },
    known: (member) => [...(papersAt(member)?.keys() ?? [])],
  };
}
