// A photo drawn anew, small enough to travel. Only the drawing is kept: where and when it was taken and whatever
// else a camera writes into its file stays behind.

export const LONGEST_SIDE_PX = 1600;
const MOST_BYTES = 2 * 1024 * 1024;
const QUALITIES = [0.8, 0.6, 0.4];

export interface Shrunk {
  bytes: ArrayBuffer;
  width_px: number;
  height_px: number;
}

/** The size at which the longer side has at most `most` px; never larger than it was. */
export function fitted(width: number, height: number, most = LONGEST_SIDE_PX): { width_px: number; height_px: number } {
  const scale = Math.min(1, most / Math.max(width, height));
  return { width_px: Math.max(1, Math.round(width * scale)), height_px: Math.max(1, Math.round(height * scale)) };
}

/** Rejects where the browser cannot read the file as a picture. */
export async function shrink(file: Blob): Promise<Shrunk> {
  const picture = await createImageBitmap(file); // upright, as the camera was held
  const size = fitted(picture.width, picture.height);
  const canvas = document.createElement("canvas");
  canvas.width = size.width_px;
  canvas.height = size.height_px;
  canvas.getContext("2d")!.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  for (const quality of QUALITIES) {
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", quality));
    if (blob && blob.size <= MOST_BYTES) return { bytes: await blob.arrayBuffer(), ...size };
  }
  throw new Error("no drawing of this picture is small enough");
}
