// A bike that is not in the book, told by eye: at most six questions, each one tap, asked in the order in which they are seen.

import type { Side } from "../pressure/answer.ts";
import type { End } from "./hub.ts";

export type EyeQuestion = "side" | "size" | "brake" | "axle" | "rotor" | "speeds";

export interface EyeAnswers {
  readonly side?: Side;
  readonly size?: number; // bead seat, mm
  readonly brake?: "disc" | "rim";
  readonly axle?: string; // "12x142"
  readonly rotor?: number;
  readonly speeds?: number;
}

// Pairs of axle diameter and hub width (trade axle guides; the front 12 x 100 is common practice).
const axles: Readonly<Record<Side, Readonly<Record<"disc" | "rim", readonly string[]>>>> = {
  front: { disc: ["12x100", "15x100", "15x110", "20x110", "9x100"], rim: ["9x100", "12x100"] },
  rear: { disc: ["12x142", "12x148", "12x157", "10x135"], rim: ["10x130", "10x135", "12x142"] },
};

// eyeChoices are the answers to a question, the likeliest first.
export function eyeChoices(question: EyeQuestion, answers: EyeAnswers): readonly string[] {
  switch (question) {
    case "side": return ["rear", "front"];
    case "size": return ["622", "584", "559"];
    case "brake": return ["disc", "rim"];
    case "axle": return axles[answers.side ?? "rear"][answers.brake ?? "disc"];
    case "rotor": return ["160", "140", "180", "203", "200", "220"];
    case "speeds": return ["12", "11", "13", "10", "9", "8"];
  }
}

// nextQuestion is what still has to be asked; undefined once all is said. A rim brake has no rotor, a front wheel no sprockets.
export function nextQuestion(answers: EyeAnswers): EyeQuestion | undefined {
  const order: readonly EyeQuestion[] = ["side", "size", "brake", "axle", "rotor", "speeds"];
  return order.find((question) => {
    if (question === "rotor" && answers.brake === "rim") return false;
    if (question === "speeds" && answers.side === "front") return false;
    return answers[question] === undefined;
  });
}

// answered adds one answer.
export function answered(answers: EyeAnswers, question: EyeQuestion, value: string): EyeAnswers {
  switch (question) {
    case "side": return { ...answers, side: value === "front" ? "front" : "rear" };
    case "brake": return { ...answers, brake: value === "rim" ? "rim" : "disc" };
    case "axle": return { ...answers, axle: value };
    default: return { ...answers, [question]: Number(value) };
  }
}

// eyeEnd is the end that was told by eye. Room and the biggest sprocket were not asked: the verdict says to look.
export function eyeEnd({ side = "rear", size, brake = "disc", axle = "", rotor, speeds }: EyeAnswers): End {
  const [axleMm, width] = axle.split("x").map(Number);
  return {
    side, brake, ...(size !== undefined && { bead_seat_mm: size }), ...(axleMm && { axle_mm: axleMm }), ...(width && { hub_width_mm: width }),
    ...(rotor !== undefined && { rotor_mm: rotor }), ...(speeds !== undefined && { speeds }),
  };
}
