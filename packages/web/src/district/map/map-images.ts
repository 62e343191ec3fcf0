import type { MapColours } from './map-colours.ts';

const SIZE_PX = 22;
export const IMAGE_RATIO = 2;

/** Small drawings for stations and water sources, in the theme's colours. */
export function mapImages(colours: MapColours): Record<'station' | 'water-source', ImageData> {
  return {
    station: drawn((pen) => {
      // A house with a wide door: where rigs come out.
      pen.fillStyle = colours.ink;
      pen.strokeStyle = colours.paper;
      pen.lineWidth = 1.5;
      outline(pen, [
        [11, 2],
        [20, 8.5],
        [20, 20],
        [2, 20],
        [2, 8.5],
      ]);
      pen.fillStyle = colours.paper;
      pen.fillRect(6.5, 12, 9, 8);
    }),
    'water-source': drawn((pen) => {
      pen.fillStyle = colours.water;
      pen.strokeStyle = colours.paper;
      pen.lineWidth = 1.5;
      pen.beginPath();
      pen.moveTo(11, 1.5);
      pen.bezierCurveTo(15, 7.5, 18, 10.5, 18, 14);
      pen.arc(11, 14, 7, 0, Math.PI);
      pen.bezierCurveTo(4, 10.5, 7, 7.5, 11, 1.5);
      pen.fill();
      pen.stroke();
    }),
  };
}

function outline(pen: CanvasRenderingContext2D, corners: [number, number][]): void {
  pen.beginPath();
  for (const [x, y] of corners) pen.lineTo(x, y);
  pen.closePath();
  pen.fill();
  pen.stroke();
}

function drawn(draw: (pen: CanvasRenderingContext2D) => void): ImageData {
  const canvas = document.createElement('canvas');
  canvas.width = SIZE_PX * IMAGE_RATIO;
  canvas.height = SIZE_PX * IMAGE_RATIO;
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('This browser draws no canvas.');
  pen.scale(IMAGE_RATIO, IMAGE_RATIO);
  draw(pen);
  return pen.getImageData(0, 0, canvas.width, canvas.height);
}
