export { LINK_STATES, type LinkListener, type LinkState, type TableLink } from './tableLink.ts';
