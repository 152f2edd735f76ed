/** Style sheets are imported for their effect; the build takes them out into files. */
declare module '*.css';
/** The text of a style sheet, for a page that is to stand by itself. */
declare module '*.css?inline' {
  const text: string;
  export default text;
}
