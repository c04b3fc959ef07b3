import { CanvasTexture, RepeatWrapping, SRGBColorSpace } from 'three';

/** The colours of what is drawn in space: the page's own. */
export const COLOURS = { paper: '#ffffff', b: '#ffffff', rim: '#dcd9d0', ink: '#1d2430', soft: '#b3b0a8', lit: '#8fc1e3', accent: '#0b5a8f', tool: '#dfe3e6', finger: '#c9d2d9', bed: '#efede6' } as const;

const canvas = (size: number): readonly [HTMLCanvasElement, CanvasRenderingContext2D] => {
  const sheet = document.createElement('canvas');
  [sheet.width, sheet.height] = [size, size];
  const pen = sheet.getContext('2d');
  if (!pen) throw new Error('a canvas without a pen');
  return [sheet, pen];
};

/** Hatching at 45 degrees, one line to the tile: the B side. */
export const hatchTexture = (): CanvasTexture => {
  const size = 64;
  const [sheet, pen] = canvas(size);
  pen.fillStyle = COLOURS.b;
  pen.fillRect(0, 0, size, size);
  pen.strokeStyle = '#6d7480';
  pen.lineWidth = 5;
  for (const by of [-size, 0, size]) {
    pen.beginPath();
    pen.moveTo(by - 4, -4);
    pen.lineTo(by + size + 4, size + 4);
    pen.stroke();
  }
  const texture = new CanvasTexture(sheet);
  texture.wrapS = texture.wrapT = RepeatWrapping;
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 8;
  return texture;
};

/** The letter of a side on a patch of paper. */
export const letterTexture = (letter: 'A' | 'B'): CanvasTexture => {
  const size = 128;
  const [sheet, pen] = canvas(size);
  pen.fillStyle = COLOURS.paper;
  pen.fillRect(0, 0, size, size);
  pen.fillStyle = COLOURS.ink;
  pen.font = `700 108px 'Source Sans 3', sans-serif`;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillText(letter, size / 2, size / 2 + 8);
  const texture = new CanvasTexture(sheet);
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 8;
  return texture;
};
