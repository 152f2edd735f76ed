import type { Page } from 'playwright';

/** Measures what a page sends to the loudspeaker; before the page is opened. */
export async function watchSound(page: Page): Promise<void> {
  await page.addInitScript(listenIn);
}

/** How loud the page is now, as the root of the mean square of its samples; undefined where nothing was ever sent to a loudspeaker. */
export function loudness(page: Page): Promise<number | undefined> {
  return page.evaluate(() => {
    const { soundGauge: gauge } = window as unknown as { readonly soundGauge?: AnalyserNode };
    if (gauge === undefined) return undefined;
    const samples = new Float32Array(gauge.fftSize);
    gauge.getFloatTimeDomainData(samples);
    return Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length);
  });
}

/** Runs in the page: whatever is connected to the loudspeaker goes through a gauge. */
function listenIn(): void {
  // eslint-disable-next-line typescript/unbound-method -- called on its node below
  const { connect } = AudioNode.prototype as { connect: (this: AudioNode, to: AudioNode) => AudioNode };
  AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode) {
    if (!(to instanceof AudioDestinationNode)) return connect.call(this, to);
    const gauge = new AnalyserNode(this.context, { fftSize: 16_384 });
    Object.assign(window, { soundGauge: gauge });
    connect.call(this, gauge);
    return connect.call(gauge, to);
  } as typeof AudioNode.prototype.connect;
}
