import type { Hatch, Shape } from '../../api/print/printed-document.ts';

/** The hatches that a sheet's shapes are filled with, each kept once, found by name in what is drawn. */
export class HatchesOf {
  readonly list: Hatch[] = [];
  readonly #known = new Map<Element, number>();
  readonly #root: Element;
  readonly #shapesOf: (pattern: Element) => readonly Shape[];

  constructor(root: Element, shapesOf: (pattern: Element) => readonly Shape[]) {
    this.#root = root;
    this.#shapesOf = shapesOf;
  }

  /** The place in the list of the pattern a fill names; undefined when there is none of that name. */
  place(fill: string): number | undefined {
    const id = /url\(["']?#([^"')]+)["']?\)/.exec(fill)?.[1];
    if (id === undefined) return undefined;
    const pattern = this.#root.querySelector(`#${CSS.escape(id)}`) ?? document.getElementById(id);
    if (!(pattern instanceof SVGPatternElement)) return undefined;
    const known = this.#known.get(pattern);
    if (known !== undefined) return known;
    const transform = pattern.getAttribute('patternTransform');
    const at = this.list.length;
    this.#known.set(pattern, at);
    this.list.push({
      width: pattern.width.baseVal.value,
      height: pattern.height.baseVal.value,
      shapes: this.#shapesOf(pattern),
      ...(transform === null ? {} : { transform }),
    });
    return at;
  }
}
