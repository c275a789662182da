// Photos are made small on the phone: they travel over a phone's signal, and what the camera notes beside them (the place,
// the owner) stays here, since only the picture itself is written anew.

const longest = 1600; // pixels of the longest side
const quality = 0.85;

export type PhotoFault = "type" | "unreadable";

export class PhotoTrouble extends Error {
  constructor(readonly fault: PhotoFault) {
    super(fault);
  }
}

export interface Shrunk {
  readonly blob: Blob;
  readonly width: number;
  readonly height: number;
}

// shrunk makes a JPEG of any picture that the browser can read.
export async function shrunk(file: Blob): Promise<Shrunk> {
  if (!file.type.startsWith("image/") || file.type.startsWith("image/svg")) throw new PhotoTrouble("type");
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    throw new PhotoTrouble("unreadable");
  }
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/jpeg", quality));
  if (blob === null) throw new PhotoTrouble("unreadable");
  return { blob, width: canvas.width, height: canvas.height };
}
