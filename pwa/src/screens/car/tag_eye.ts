// Reads a tag with the camera, where the browser has a detector of its own.

interface Detector {
  detect(from: HTMLVideoElement): Promise<readonly { readonly rawValue: string }[]>;
}

type DetectorMaker = new (options: { readonly formats: readonly string[] }) => Detector;

function maker(): DetectorMaker | undefined {
  const { BarcodeDetector } = globalThis as { readonly BarcodeDetector?: DetectorMaker };
  return BarcodeDetector;
}

export function canSee(): boolean {
  return maker() !== undefined && navigator.mediaDevices !== undefined;
}

// watch shows the camera and hears what it reads, until the signal ends it. It rejects when there is no camera to be had.
export async function watch(video: HTMLVideoElement, ended: AbortSignal, heard: (text: string) => void): Promise<void> {
  const Maker = maker();
  if (Maker === undefined) return;
  const detector = new Maker({ formats: ["qr_code"] });
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  const stop = (): void => stream.getTracks().forEach((track) => track.stop());
  if (ended.aborted) return stop();
  ended.addEventListener("abort", stop);
  video.srcObject = stream;
  await video.play();
  while (!ended.aborted) {
    const [found] = await detector.detect(video).catch(() => []);
    if (found !== undefined && !ended.aborted) heard(found.rawValue);
    await new Promise((resolve) => setTimeout(resolve, pause));
  }
}

const pause = 200; // ms between two looks
