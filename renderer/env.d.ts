/** Settled when the pages are built. */
interface ImportMetaEnv {
  /** `on` in the development build: the page of all parts is then there, at /week/parts. */
  readonly VITE_PARTS_PAGE: 'on' | 'off';
}
