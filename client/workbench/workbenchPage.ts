import { formatLander } from '../../engine/lander/index.ts';
import { toDegrees } from '../../engine/math/index.ts';
import { rigidRound, stanceStudy, type StudyCase } from '../../engine/study/index.ts';
import { findWorld, type World } from '../../engine/worlds.ts';
import { button, element, say } from '../panels/element.ts';
import { exerciseLine } from '../panels/titleBlock.ts';
import { saveFile } from '../saveFile.ts';
import { BENCH } from '../text/workbench.ts';
import { createBenchDrawing } from './benchDrawing.ts';
import { copyText } from './benchCard.ts';
import { addressOfState, stateInAddress, studyOf, type BenchState } from './benchState.ts';
import { createBoardPart } from './boardPart.ts';
import { createBesidePart } from './besidePart.ts';
import { CAMPAIGN_FILE, commandFor, isShelf, landerFile, landerWord } from './commandLine.ts';
import { degreesOf, metersPerSecond } from './figures.ts';
import { createGridCard } from './gridCard.ts';
import { createInputsPart } from './inputsPart.ts';
import { createLyingCard } from './lyingCard.ts';
import { createMatrixCard, matrixSlopes } from './matrixCard.ts';
import { createPlaneCard } from './planeCard.ts';
import { createLimitCard, createTiltCard, type RoundAnswers } from './roundCards.ts';
import { createSensitivityCard } from './sensitivityCard.ts';
import { createSpreadCard } from './spreadCard.ts';
import { openStudyThreads } from './studyThreads.ts';
import { createTradeCard } from './tradeCard.ts';
import { createWatchPart } from './watchPart.ts';
import { createWorldsCard } from './worldsCard.ts';
import type { MatrixCell } from './studies.ts';
import '../styles/workbench.css';

const JSON_FILE = 'application/json';

/** Between azimuths of what needs no simulation [deg]. */
const RIGID_STEP = 5;

const WORLDS_SHOWN = ['moon', 'mars', 'earth'].flatMap((id): World[] => {
  const world = findWorld(id);
  return world === undefined ? [] : [world];
});

/** Files that a report reads and writes. */
function reportFiles(): readonly string[] {
  return [`--campaign ${CAMPAIGN_FILE}`, '--out report.html'];
}

/** Lays the workbench in place of the start page. */
export function layWorkbench(holder: HTMLElement, leave: () => void): { end(): void } {
  document.title = BENCH.documentTitle;
  const read = stateInAddress(location);
  let state = read.state;
  let beside: { readonly state: BenchState; answers: RoundAnswers } | undefined;
  let own: RoundAnswers | undefined;
  const status = element('p', { class: 'bench-fault', role: 'alert' }, read.problems.join(' '));
  const threads = openStudyThreads(() => say(status, BENCH.failed));

  const under = () => [`${own?.asked.lander.name ?? ''}: ${arrivalWords(state)}`, location.href.slice(0, 200)];
  const command = (verb: Parameters<typeof commandFor>[0], more: readonly string[] = []) => ({
    line: commandFor(verb, state, more),
    hint: isShelf(state) ? '' : BENCH.saveFirst(landerFile(state)),
  });
  const change = (part: Partial<BenchState>) => {
    state = { ...state, ...part };
    refresh();
  };
  const drawing = createBenchDrawing({
    shape: (field, value) => change({ shape: { ...state.shape, [field]: value } }),
    arrival: (name, value) => change({ arrival: { ...state.arrival, [name]: value } }),
  });
  const saveLander = () => {
    const asked = studyOf(state);
    if (!asked.ok) return;
    saveFile(`${JSON.stringify(formatLander(asked.value.lander), undefined, 2)}\n`, landerFile(state), JSON_FILE);
  };
  const inputs = createInputsPart(change, saveLander, drawing.node);
  const tilt = createTiltCard({ under, command: () => command('stand') });
  const limit = createLimitCard({ under, command: () => command('limit', ['--step 15']) });
  const watch = createWatchPart(under);
  const plane = createPlaneCard(
    {
      under,
      command: () => {
        const { speedTo, descentTo, steps, yaws } = plane.grid();
        return command('envelope', [
          `--from ${-speedTo} --to ${speedTo} --descent-from 0 --descent-to ${descentTo} --steps ${steps} --yaws ${yaws}`,
        ]);
      },
    },
    {
      again: () => askPlane(),
      watch(touchdown) {
        if (own === undefined) return;
        const { asked } = own;
        const yawDeg = Number(toDegrees(touchdown.yaw).toFixed(3));
        threads.ask('touchdown', { asked, touchdown }, (answer) => {
          const arrival = { ...state.arrival, descentRate: touchdown.descentRate };
          const line = commandFor('touchdown', { ...state, arrival }, [
            `--horizontal ${touchdown.horizontalSpeed}`,
            ...(yawDeg === 0 ? [] : [`--yaw ${yawDeg}`]),
          ]);
          watch.show(asked, answer, line);
          watch.node.scrollIntoView({ block: 'nearest' });
          watch.node.focus({ preventScroll: true });
        });
      },
    },
  );
  const worlds = createWorldsCard({
    under,
    command: () => {
      const legs = state.missing.length === 0 ? '' : ` --missing ${state.missing.map((leg) => leg + 1).join(',')}`;
      const line = `npx kilter stance ${landerWord(state)} --slope ${state.arrival.slopeDeg}${legs}`;
      return { ...command('limit'), line };
    },
  });
  const matrix = createMatrixCard({
    under,
    command: () => {
      const slopes = own === undefined ? [] : matrixSlopes(own.asked).toSorted((a, b) => a - b);
      const ids = WORLDS_SHOWN.map(({ id }) => id).join(',');
      return command('report', [`--worlds ${ids} --slopes ${slopes.join(',')}`, ...reportFiles()]);
    },
  });
  const lying = createLyingCard({ under, command: () => command('compare') });
  const spread = createSpreadCard(
    { under, command: () => ({ line: `npx kilter disperse ${CAMPAIGN_FILE}`, hint: BENCH.saveFirst(CAMPAIGN_FILE) }) },
    {
      work: () => threads.ask('spread', spread.document(state), (answer, isDone) => spread.show(answer, isDone)),
      stop: () => threads.drop('spread'),
      changed: () => sensitivity.clear(),
    },
  );
  const trade = createTradeCard(
    { under, command: () => command('trade') },
    {
      work: () => {
        if (own === undefined) return;
        const { asked } = own;
        threads.ask('trades', asked, (answer, isDone) => {
          if (typeof answer !== 'string') trade.show(answer, asked.horizontalSpeed, isDone);
        });
      },
      stop: () => threads.drop('trades'),
    },
  );
  const grid = createGridCard(
    {
      under,
      command: () => {
        const { vary, against } = grid.axes();
        return command('trade', [`--vary ${vary} --against ${against}`]);
      },
    },
    {
      work: () => {
        if (own === undefined) return;
        const { asked } = own;
        threads.ask('grid', { asked, axes: grid.axes() }, (answer, isDone) => {
          if (typeof answer !== 'string') grid.show(answer, asked.horizontalSpeed, isDone);
        });
      },
      stop: () => threads.drop('grid'),
    },
  );
  const sensitivity = createSensitivityCard(
    { under, command: () => command('report', reportFiles()) },
    {
      work: () => {
        if (own === undefined) return;
        const question = { asked: own.asked, document: spread.document(state) };
        threads.ask('sensitivities', question, (answer, isDone) => sensitivity.show(answer, isDone));
      },
      stop: () => threads.drop('sensitivities'),
    },
  );
  const board = createBoardPart({
    command: () => commandFor('report', state, reportFiles()),
    landerFile: () => (isShelf(state) ? undefined : landerFile(state)),
    saveLander,
    saveCampaign: () => saveFile(`${JSON.stringify(spread.document(state), undefined, 2)}\n`, CAMPAIGN_FILE, JSON_FILE),
  });
  const besidePart = createBesidePart({
    keep: () => {
      if (own === undefined) return;
      beside = { state, answers: own };
      askBeside();
      refresh();
    },
    swap: () => {
      if (beside === undefined || own === undefined) return;
      const before = { state, answers: own };
      ({ state } = beside);
      beside = before;
      askBeside();
      refresh();
    },
    drop: () => {
      beside = undefined;
      threads.drop('beside');
      refresh();
    },
  });

  const askPlane = () => {
    if (own === undefined) return;
    const { asked } = own;
    plane.show(asked, undefined);
    threads.ask('plane', { asked, grid: plane.grid() }, (map) => plane.show(asked, map));
  };
  const askBeside = () => {
    if (beside === undefined) return;
    const held = beside;
    threads.ask('beside', held.answers.asked, (limits) => {
      held.answers = { ...held.answers, limits };
      if (beside === held) showRound();
    });
  };
  const showRound = () => {
    if (own === undefined) return;
    tilt.show(own, beside?.answers);
    limit.show(own, beside?.answers);
    besidePart.show([state, own], beside === undefined ? undefined : [beside.state, beside.answers]);
  };
  const refresh = () => {
    const asked = studyOf(state);
    const fault = asked.ok ? '' : `${BENCH.wrong}: ${asked.error}`;
    inputs.show(state, asked.ok ? asked.value : own?.asked, fault);
    keepAddress(state, beside?.state);
    if (!asked.ok) return;
    const now: RoundAnswers = { asked: asked.value, rigid: rigidRound(asked.value, RIGID_STEP), limits: undefined };
    own = now;
    drawing.show(now.asked);
    watch.close();
    board.clear();
    showRound();
    threads.ask('limits', now.asked, (limits) => {
      own = { ...now, limits };
      showRound();
    });
    showWorlds(now.asked);
    threads.ask('lying', now.asked, (found) => lying.show(found));
    askPlane();
    spread.clear(state);
    threads.drop('trades');
    trade.clear();
    grid.clear();
    sensitivity.clear();
  };
  const showWorlds = (asked: StudyCase) => {
    const found = stanceStudy(asked, WORLDS_SHOWN);
    if (found === undefined) return;
    const show = (cells: readonly MatrixCell[]) => {
      worlds.show(
        found,
        cells.filter(({ slopeDeg }) => slopeDeg === asked.slopeDeg),
      );
      matrix.show(asked, WORLDS_SHOWN, cells);
    };
    show([]);
    threads.ask('matrix', { asked, worlds: WORLDS_SHOWN, slopesDeg: matrixSlopes(asked) }, (cells) => {
      if (typeof cells !== 'string') show(cells);
    });
  };

  const copied = element('span', { role: 'status' });
  const page = element(
    'div',
    { class: 'bench' },
    element(
      'header',
      { class: 'bench-head' },
      button(BENCH.back, leave),
      element('h1', { tabindex: -1 }, BENCH.title),
      element('p', { class: 'why' }, BENCH.lead),
      button(BENCH.link, () => void copyText(location.href, copied, BENCH.linkCopied)),
      copied,
    ),
    status,
    element(
      'div',
      { class: 'bench-main' },
      inputs.node,
      element(
        'main',
        { class: 'bench-answers', 'aria-label': BENCH.answers },
        tilt.card.node,
        limit.card.node,
        plane.card.node,
        watch.node,
        matrix.card.node,
        element('div', { class: 'bench-column' }, worlds.card.node, spread.card.node),
        element('div', { class: 'bench-column' }, besidePart.node, lying.card.node),
        sensitivity.card.node,
        trade.card.node,
        grid.card.node,
        board.node,
      ),
    ),
    element('footer', { class: 'bench-foot' }, exerciseLine()),
  );
  holder.replaceChildren(page);
  page.querySelector('h1')?.focus();
  if (read.beside !== undefined) {
    const asked = studyOf(read.beside);
    if (asked.ok) {
      const answers = { asked: asked.value, rigid: rigidRound(asked.value, RIGID_STEP), limits: undefined };
      beside = { state: read.beside, answers };
    }
  }
  refresh();
  askBeside();
  return {
    end() {
      watch.close();
      threads.end();
    },
  };
}

/** The address follows what is set, so that a link, a reload and a bookmark open exactly this. */
function keepAddress(state: BenchState, beside: BenchState | undefined): void {
  const { search, hash } = addressOfState(state, beside);
  history.replaceState(history.state, '', location.pathname + search + hash);
}

function arrivalWords({ arrival, world }: BenchState): string {
  const { slopeDeg, descentRate, horizontalSpeed, friction } = arrival;
  return `${findWorld(world)?.name ?? world}, slope ${degreesOf(slopeDeg)}, ${metersPerSecond(descentRate)} down, ${metersPerSecond(horizontalSpeed)} sideways, friction ${friction}`;
}
