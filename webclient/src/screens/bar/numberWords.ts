import { knows, say } from "../../words/index.ts";

/** A number of the bar in words, or its own name where nobody gave it any. */
export function numberWords(quantity: string): string {
  return knows(`bar.n.${quantity}`) ? say({ key: `bar.n.${quantity}` }) : quantity;
}
