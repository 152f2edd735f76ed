/** Public door of control inputs. */
export { equalsControlInput, MAX_TILT_DEG, parseControlInput, quantizeControls } from './controlInput.ts';
