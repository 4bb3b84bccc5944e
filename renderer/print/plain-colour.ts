const known = new Map<string, { readonly hex: string; readonly share: number }>();
let canvas: CanvasRenderingContext2D | null = null;

/** Any colour of a style sheet as red, green, blue and how far it covers: a canvas reads them all. */
export function plainColour(colour: string): { readonly hex: string; readonly share: number } {
  const found = known.get(colour);
  if (found !== undefined) return found;
  canvas ??= document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  if (canvas === null) throw new Error('This window draws no canvas.');
  canvas.clearRect(0, 0, 1, 1);
  canvas.fillStyle = '#000';
  canvas.fillStyle = colour;
  canvas.fillRect(0, 0, 1, 1);
  const [red = 0, green = 0, blue = 0, cover = 255] = canvas.getImageData(0, 0, 1, 1).data;
  const hex = `#${[red, green, blue].map((part) => part.toString(16).padStart(2, '0')).join('')}`;
  const plain = { hex, share: cover / 255 };
  known.set(colour, plain);
  return plain;
}
