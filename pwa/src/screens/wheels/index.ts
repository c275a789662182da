import { later } from "../../ui/later.ts";

export const screen = later("wheels");
