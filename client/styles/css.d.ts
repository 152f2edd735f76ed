/** Style sheets are imported for their effect; the build takes them out into files. */
declare module '*.css';
