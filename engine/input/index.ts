/** Public door of control inputs. */
export { equalsControlInput, parseControlInput, quantizeControls } from './controlInput.ts';
