import createQr from 'qrcode-generator';
import { LOBBY } from '../text/en.ts';
import { drawing } from './element.ts';

/** Light modules around the code, without which cameras do not find it. */
const QUIET = 4;

/** The address as a QR code, in ink on card. */
export function drawQr(address: string): HTMLElement {
  const code = createQr(0, 'M');
  code.addData(address);
  code.make();
  const count = code.getModuleCount();
  let path = '';
  for (let row = 0; row < count; row += 1) {
    for (let column = 0; column < count; column += 1) {
      if (code.isDark(row, column)) path += `M${column + QUIET} ${row + QUIET}h1v1h-1z`;
    }
  }
  const side = count + 2 * QUIET;
  return drawing(`<path d="${path}" fill="var(--ink)" shape-rendering="crispEdges"/>`, {
    viewBox: `0 0 ${side} ${side}`,
    label: LOBBY.qr,
    class: 'qr-code',
  });
}
